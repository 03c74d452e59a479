/**
 * The exact cover of needs by packs: whole packs, each giving amounts to one or several rows, at least cost.
 * Knows nothing of parts: rows and columns are numbers.
 */
export interface CoverColumn {
  /** Amount given to rows by one pack, each row once. */
  readonly gives: readonly (readonly [row: number, amount: number])[];
  readonly cost: number;
  /** Most packs that may be taken. */
  readonly limit: number;
  /** True where taking any of it makes a line without a price. */
  readonly unpriced: boolean;
  /** True where taking it buys nothing: it is at hand and counts as no pack. */
  readonly free: boolean;
}

/** How many packs of each column; the sum of their costs; how many columns without a price are used. */
export interface Cover {
  readonly packs: readonly number[];
  readonly cost: number;
  readonly unpriced: number;
}

/**
 * The covers that no other beats in (cost, unpriced columns), each the canonical one of its vector: fewest packs, then
 * the list of (column, packs) compared element by element, columns in the given order. Empty where the needs cannot be covered.
 */
export function cheapestCovers(needs: readonly number[], columns: readonly CoverColumn[]): readonly Cover[] {
  const free = cheapestCover(needs, columns, columns.filter((column) => column.unpriced).length);
  if (!free) return [];
  const covers: Cover[] = [free];
  for (let most = free.unpriced - 1; most >= 0; most--) {
    const priced = cheapestCover(needs, columns, most);
    if (!priced) break;
    covers.push(priced);
    most = Math.min(most, priced.unpriced);
  }
  return covers;
}

/** The cheapest cover that uses at most `mostUnpriced` columns without a price: complete branch and bound. Null where there is none. */
function cheapestCover(needs: readonly number[], columns: readonly CoverColumn[], mostUnpriced: number): Cover | null {
  const search = new CoverSearch(needs, columns, mostUnpriced);
  search.run();
  return search.best;
}

class CoverSearch {
  best: Cover | null = null;
  private readonly left: number[];
  private readonly limits: number[];
  private readonly packs: number[];
  private readonly byRow: readonly (readonly number[])[];
  private readonly rate: readonly number[];
  private readonly columns: readonly CoverColumn[];
  private readonly mostUnpriced: number;

  constructor(needs: readonly number[], columns: readonly CoverColumn[], mostUnpriced: number) {
    this.columns = columns;
    this.mostUnpriced = mostUnpriced;
    this.left = [...needs];
    this.limits = columns.map(({ limit }) => limit);
    this.packs = columns.map(() => 0);
    this.byRow = needs.map((_need, row) =>
      columns.flatMap(({ gives }, at) => (gives.some(([to, amount]) => to === row && amount > 0) ? [at] : [])),
    );
    this.rate = needs.map((need, row) => dualPrice(needs, columns, row, need));
  }

  run(): void {
    this.descend(0, 0);
  }

  /** Branches on the uncovered row with the fewest columns; column k of it is tried with columns before k closed, so that no set of packs is seen twice. */
  private descend(cost: number, unpriced: number): void {
    if (this.best && Math.ceil(cost + this.bound() - 1e-9) > this.best.cost) return;
    const row = this.nextRow();
    if (row === null) {
      this.keep(cost, unpriced);
      return;
    }
    const closed: [number, number][] = [];
    for (const at of this.byRow[row] ?? []) {
      const column = this.columns[at];
      const used = this.packs[at] ?? 0;
      if (!column || used >= (this.limits[at] ?? 0)) continue;
      const newlyUnpriced = column.unpriced && used === 0 ? 1 : 0;
      if (unpriced + newlyUnpriced <= this.mostUnpriced) {
        this.add(at, column, 1);
        this.descend(cost + column.cost, unpriced + newlyUnpriced);
        this.add(at, column, -1);
      }
      closed.push([at, this.limits[at] ?? 0]);
      this.limits[at] = used;
    }
    for (const [at, limit] of closed) this.limits[at] = limit;
  }

  private add(at: number, column: CoverColumn, sign: 1 | -1): void {
    this.packs[at] = (this.packs[at] ?? 0) + sign;
    for (const [row, amount] of column.gives) this.left[row] = (this.left[row] ?? 0) - sign * amount;
  }

  private nextRow(): number | null {
    let best: number | null = null;
    let fewest = Number.POSITIVE_INFINITY;
    for (let row = 0; row < this.left.length; row++) {
      if ((this.left[row] ?? 0) <= 0) continue;
      const open = (this.byRow[row] ?? []).filter((at) => (this.packs[at] ?? 0) < (this.limits[at] ?? 0)).length;
      if (open < fewest) {
        best = row;
        fewest = open;
      }
    }
    return best;
  }

  /** A lower bound on what the uncovered rest costs: the rest of each row at its dual price. */
  private bound(): number {
    let sum = 0;
    for (let row = 0; row < this.left.length; row++) sum += Math.max(0, this.left[row] ?? 0) * (this.rate[row] ?? 0);
    return sum;
  }

  private keep(cost: number, unpriced: number): void {
    const cover: Cover = { packs: [...this.packs], cost, unpriced };
    if (!this.best || compareCovers(this.columns, cover, this.best) < 0) this.best = cover;
  }
}

/**
 * A price per unit of a row such that no pack is worth more than it costs: each column's cost is shared evenly among the rows it serves,
 * amounts counted only up to the need. A feasible dual solution, so the bound never exceeds the true cost.
 */
function dualPrice(needs: readonly number[], columns: readonly CoverColumn[], row: number, need: number): number {
  let least = Number.POSITIVE_INFINITY;
  for (const { gives, cost } of columns) {
    const serving = gives.filter(([to, amount]) => amount > 0 && (needs[to] ?? 0) > 0);
    const mine = serving.find(([to]) => to === row);
    if (mine) least = Math.min(least, cost / serving.length / Math.min(mine[1], need));
  }
  return Number.isFinite(least) ? least : 0;
}

/** Canonical order of covers: cost, unpriced lines, packs bought, then the list of (column, packs). */
function compareCovers(columns: readonly CoverColumn[], a: Cover, b: Cover): number {
  const bought = (cover: Cover): number =>
    cover.packs.reduce((sum, packs, at) => sum + (columns[at]?.free ? 0 : packs), 0);
  return a.cost - b.cost || a.unpriced - b.unpriced || bought(a) - bought(b) || compareLists(a.packs, b.packs);
}

function compareLists(a: readonly number[], b: readonly number[]): number {
  for (let at = 0; at < a.length; at++) {
    const [mine, theirs] = [a[at] ?? 0, b[at] ?? 0];
    if (mine === theirs) continue;
    // the list that has this column here is compared by packs; the one that has not by its next column, which comes later
    if (mine > 0 && theirs > 0) return mine - theirs;
    const rest = mine > 0 ? b : a;
    const ends = rest.slice(at).every((packs) => packs === 0);
    return (mine > 0 ? -1 : 1) * (ends ? -1 : 1);
  }
  return 0;
}
