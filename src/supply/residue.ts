import type { Programme } from './programme.ts';

/** What is left of a programme after some packs are taken and some columns closed: open rows and columns alone, packed for speed. */
export interface Residue {
  /** What each open row still needs, above 0. */
  readonly need: Float64Array;
  /** Where the entries of each column begin and end. */
  readonly start: Int32Array;
  /** The rows of each column, in ascending order. */
  readonly row: Int32Array;
  /** What a pack gives to the row, no more than it needs: more is of no use. */
  readonly amount: Float64Array;
  readonly cost: Float64Array;
  readonly limit: Int32Array;
  /** The number that each column has in the programme. */
  readonly column: Int32Array;
  /** The number that each row has in the programme. */
  readonly rows: Int32Array;
  readonly caps: readonly ResidueCap[];
}

export interface ResidueCap {
  readonly weight: Float64Array;
  readonly left: number;
}

/** The whole programme as a residue; null where a row cannot be covered. */
export function residueOf({ needs, columns, caps }: Programme): Residue | null {
  const start = new Int32Array(columns.length + 1);
  columns.forEach(({ gives }, at) => {
    start[at + 1] = (start[at] ?? 0) + gives.length;
  });
  const entries = columns.flatMap(({ gives }) => [...gives].sort(([a], [b]) => a - b));
  return reduced(
    {
      need: Float64Array.from(needs),
      start,
      row: Int32Array.from(entries, ([row]) => row),
      amount: Float64Array.from(entries, ([, amount]) => amount),
      cost: Float64Array.from(columns, ({ cost }) => cost),
      limit: Int32Array.from(columns, ({ limit }) => Math.min(limit, MOST_PACKS)),
      column: Int32Array.from(columns, (_column, at) => at),
      rows: Int32Array.from(needs, (_need, at) => at),
      caps: caps.map(({ weights, most }) => ({ weight: Float64Array.from(weights), left: most })),
    },
    [],
    null,
  );
}

const MOST_PACKS = 2 ** 30;

/**
 * A residue after so many packs of some columns (by place) are taken and the limits are what `limits` says (null: as they were). Rows that are covered and columns
 * that are closed, of no use or too much for a cap are left out. Null where a row can no longer be covered or a cap is passed.
 */
export function reduced(
  residue: Residue,
  taken: readonly (readonly [place: number, packs: number])[],
  limits: Int32Array | null,
): Residue | null {
  const { start, row, amount } = residue;
  const need = residue.need.slice();
  const limit = (limits ?? residue.limit).slice();
  const left = residue.caps.map((cap) => cap.left);
  for (const [place, packs] of taken) {
    for (let at = start[place] ?? 0; at < (start[place + 1] ?? 0); at++) {
      const to = row[at] ?? 0;
      need[to] = (need[to] ?? 0) - packs * (amount[at] ?? 0);
    }
    limit[place] = (limit[place] ?? 0) - packs;
    residue.caps.forEach(({ weight }, at) => {
      left[at] = (left[at] ?? 0) - packs * (weight[place] ?? 0);
    });
  }
  if (left.some((room) => room < 0)) return null;
  return packed(residue, need, limit, left);
}

function packed(residue: Residue, need: Float64Array, limit: Int32Array, left: readonly number[]): Residue | null {
  const { start, row, amount } = residue;
  const newRow = new Int32Array(need.length).fill(-1);
  let rows = 0;
  for (let at = 0; at < need.length; at++) if ((need[at] ?? 0) > 0) newRow[at] = rows++;
  const reach = new Float64Array(rows);
  const kept: number[] = [];
  let entries = 0;
  for (let place = 0; place < limit.length; place++) {
    let most = limit[place] ?? 0;
    for (const [at, { weight }] of residue.caps.entries()) {
      const each = weight[place] ?? 0;
      if (each > 0) most = Math.min(most, Math.floor((left[at] ?? 0) / each));
    }
    limit[place] = most;
    if (most <= 0) continue;
    const before = entries;
    for (let at = start[place] ?? 0; at < (start[place + 1] ?? 0); at++) {
      const to = newRow[row[at] ?? 0] ?? -1;
      if (to < 0 || (amount[at] ?? 0) <= 0) continue;
      entries++;
      reach[to] = (reach[to] ?? 0) + most * (amount[at] ?? 0);
    }
    if (entries > before) kept.push(place);
  }
  const openNeed = need.filter((one) => one > 0);
  for (let at = 0; at < rows; at++) if ((reach[at] ?? 0) < (openNeed[at] ?? 0)) return null;
  return {
    need: openNeed,
    ...entriesOf(residue, need, newRow, kept, entries),
    cost: Float64Array.from(kept, (place) => residue.cost[place] ?? 0),
    limit: Int32Array.from(kept, (place) => limit[place] ?? 0),
    column: Int32Array.from(kept, (place) => residue.column[place] ?? 0),
    rows: residue.rows.filter((_row, at) => (need[at] ?? 0) > 0),
    caps: residue.caps.map(({ weight }, at) => ({
      weight: Float64Array.from(kept, (place) => weight[place] ?? 0),
      left: left[at] ?? 0,
    })),
  };
}

function entriesOf(
  { start, row, amount }: Residue,
  need: Float64Array,
  newRow: Int32Array,
  kept: readonly number[],
  entries: number,
): Pick<Residue, 'start' | 'row' | 'amount'> {
  const made = {
    start: new Int32Array(kept.length + 1),
    row: new Int32Array(entries),
    amount: new Float64Array(entries),
  };
  let end = 0;
  for (let place = 0; place < kept.length; place++) {
    const from = kept[place] ?? 0;
    for (let at = start[from] ?? 0; at < (start[from + 1] ?? 0); at++) {
      const old = row[at] ?? 0;
      const to = newRow[old] ?? -1;
      if (to < 0 || (amount[at] ?? 0) <= 0) continue;
      made.row[end] = to;
      made.amount[end++] = Math.min(amount[at] ?? 0, need[old] ?? 0);
    }
    made.start[place + 1] = end;
  }
  return made;
}
