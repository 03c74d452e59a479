import type { Residue } from './residue.ts';

/**
 * Limits without the columns that no least cover needs: one pack of another column meets the whole need of every row that the column serves, and costs and weighs
 * no more. In a cover with both the column can be left out; in one without the other it can be exchanged for a pack of it.
 */
export function withoutDominated(residue: Residue): Int32Array {
  const { start, row, cost } = residue;
  const limits = residue.limit.slice();
  const byRow = columnsByRow(residue);
  for (let place = 0; place < cost.length; place++) {
    let rarest = row[start[place] ?? 0] ?? 0;
    for (let at = start[place] ?? 0; at < (start[place + 1] ?? 0); at++)
      if ((byRow[row[at] ?? 0]?.length ?? 0) < (byRow[rarest]?.length ?? 0)) rarest = row[at] ?? 0;
    const better = byRow[rarest]?.some(
      (other) => other !== place && (limits[other] ?? 0) > 0 && serves(residue, other, place),
    );
    if (better) limits[place] = 0;
  }
  return limits;
}

function columnsByRow({ start, row, cost, need }: Residue): readonly number[][] {
  const byRow: number[][] = Array.from(need, () => []);
  for (let place = 0; place < cost.length; place++)
    for (let at = start[place] ?? 0; at < (start[place + 1] ?? 0); at++) byRow[row[at] ?? 0]?.push(place);
  return byRow;
}

/** True where one pack of `one` does all that packs of `other` can do, for no more. Rows stand in ascending order in both. */
function serves({ start, row, amount, need, cost, caps }: Residue, one: number, other: number): boolean {
  if ((cost[one] ?? 0) > (cost[other] ?? 0)) return false;
  if (caps.some(({ weight }) => (weight[one] ?? 0) > (weight[other] ?? 0))) return false;
  let at = start[one] ?? 0;
  const end = start[one + 1] ?? 0;
  for (let place = start[other] ?? 0; place < (start[other + 1] ?? 0); place++) {
    const wanted = row[place] ?? 0;
    while (at < end && (row[at] ?? 0) < wanted) at++;
    if (at >= end || row[at] !== wanted || (amount[at] ?? 0) < (need[wanted] ?? 0)) return false;
  }
  return true;
}
