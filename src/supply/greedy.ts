import type { Residue } from './residue.ts';

/**
 * A cover of a residue, good but not proved best: the pack of least cost for what it still gives, again and again; then packs that nothing needs are put back,
 * the dear ones first. `cost` is what each pack counts for while choosing. Null where this leads to none within the caps.
 */
export function greedyCover(residue: Residue, cost: Float64Array): Int32Array | null {
  const { start, row, amount, need, limit, caps } = residue;
  const packs = new Int32Array(limit.length);
  const left = need.slice();
  let open = left.length;
  const take = (place: number, sign: 1 | -1): void => {
    packs[place] = (packs[place] ?? 0) + sign;
    for (let at = start[place] ?? 0; at < (start[place + 1] ?? 0); at++) {
      const to = row[at] ?? 0;
      const before = left[to] ?? 0;
      left[to] = before - sign * (amount[at] ?? 0);
      if (before > 0 && (left[to] ?? 0) <= 0) open--;
      else if (before <= 0 && (left[to] ?? 0) > 0) open++;
    }
  };
  while (open > 0) {
    let [best, least] = [-1, Number.POSITIVE_INFINITY];
    for (let place = 0; place < limit.length; place++) {
      if ((packs[place] ?? 0) >= (limit[place] ?? 0)) continue;
      let gives = 0;
      for (let at = start[place] ?? 0; at < (start[place + 1] ?? 0); at++) {
        const to = row[at] ?? 0;
        const lack = left[to] ?? 0;
        if (lack > 0) gives += Math.min(lack, amount[at] ?? 0) / (need[to] ?? 1);
      }
      if (gives <= 0) continue;
      const each = cost[place] ?? 0;
      const score = each > 0 ? each / gives : each * gives;
      if (score < least) [best, least] = [place, score];
    }
    if (best < 0) return null;
    take(best, 1);
  }
  const dearFirst = [...packs.keys()]
    .filter((place) => (packs[place] ?? 0) > 0)
    .sort((a, b) => (residue.cost[b] ?? 0) - (residue.cost[a] ?? 0));
  for (const place of dearFirst) {
    while ((packs[place] ?? 0) > 0 && isSpare(residue, left, place)) take(place, -1);
  }
  const within = caps.every(
    ({ weight, left: room }) => packs.reduce((sum, count, place) => sum + count * (weight[place] ?? 0), 0) <= room,
  );
  return within ? packs : null;
}

function isSpare({ start, row, amount }: Residue, left: Float64Array, place: number): boolean {
  for (let at = start[place] ?? 0; at < (start[place + 1] ?? 0); at++)
    if ((left[row[at] ?? 0] ?? 0) + (amount[at] ?? 0) > 0) return false;
  return true;
}
