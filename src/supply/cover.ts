import { multiplyDivide } from '../quantity/index.ts';
import { StepBudget } from '../solve/index.ts';
import { canonicalCover } from './canonical-cover.ts';
import type { Cover, CoverColumn } from './programme.ts';

/**
 * The exact cover of needs by packs: whole packs, each giving amounts to one or several rows, at least cost.
 * Knows nothing of parts: rows and columns are numbers.
 */

/** What is left uncovered of a row may be measured out at a price per so much, rounded half up; a price of null makes a line without a price. */
export interface Dosing {
  readonly price: number | null;
  readonly per: number;
}

/**
 * The covers that no other beats in (cost, unpriced columns), each the canonical one of its vector: fewest packs, then
 * the list of (column, packs) compared element by element, columns in the given order. Empty where the needs cannot be covered.
 */
export function cheapestCovers(
  needs: readonly number[],
  columns: readonly CoverColumn[],
  dosing: readonly (Dosing | null)[] = [],
): readonly Cover[] {
  const only = columns.length === 1 ? columns[0] : undefined;
  if (only && needs.length === 1 && !dosing[0]) return ofOneColumn(needs[0] ?? 0, only);
  const free = cheapestCover(needs, columns, dosing, columns.length + needs.length);
  if (!free) return [];
  const covers: Cover[] = [free];
  for (let most = free.unpriced - 1; most >= 0; most--) {
    const priced = cheapestCover(needs, columns, dosing, most);
    if (!priced) break;
    covers.push(priced);
    most = Math.min(most, priced.unpriced);
  }
  return covers;
}

/** The cover of one need by the one thing that gives it: nothing is to be searched. Most needs of a fork are of this kind. */
function ofOneColumn(need: number, { gives, cost, limit, unpriced }: CoverColumn): readonly Cover[] {
  const given = gives[0]?.[1] ?? 0;
  const packs = need <= 0 ? 0 : given > 0 ? Math.ceil(need / given) : Number.POSITIVE_INFINITY;
  return packs > limit ? [] : [{ packs: [packs], cost: packs * cost, unpriced: unpriced && packs > 0 ? 1 : 0 }];
}

/** Nodes after which the plain search leaves a cover to the one with the better bound: what a fork needs is covered in far fewer. */
const PLAIN_NODES = 5_000;

/**
 * The cheapest cover that uses at most `mostUnpriced` columns without a price: complete branch and bound. Null where there is none. A cover that is too big for the
 * plain search is found by `canonicalCover`, unless something may be measured out or several packs without a price be taken: then the plain search goes on.
 */
function cheapestCover(
  needs: readonly number[],
  columns: readonly CoverColumn[],
  dosing: readonly (Dosing | null)[],
  mostUnpriced: number,
): Cover | null {
  const search = new CoverSearch(needs, columns, dosing, mostUnpriced);
  const plain = dosing.some((one) => one !== null) || columns.some(({ unpriced, limit }) => unpriced && limit > 1);
  if (search.run(new StepBudget(plain ? Number.POSITIVE_INFINITY : PLAIN_NODES))) return search.best;
  return canonicalCover(needs, columns, mostUnpriced);
}

class CoverSearch {
  best: Cover | null = null;
  private readonly left: number[];
  private readonly limits: number[];
  private readonly packs: number[];
  private readonly byRow: readonly (readonly number[])[];
  private readonly rate: readonly number[];
  private readonly columns: readonly CoverColumn[];
  private readonly dosing: readonly (Dosing | null)[];
  /** Rows of which the rest is measured out: nothing more is packed for them. */
  private readonly settled: boolean[];
  private readonly mostUnpriced: number;

  constructor(
    needs: readonly number[],
    columns: readonly CoverColumn[],
    dosing: readonly (Dosing | null)[],
    mostUnpriced: number,
  ) {
    this.columns = columns;
    this.dosing = needs.map((_need, row) => dosing[row] ?? null);
    this.settled = needs.map(() => false);
    this.mostUnpriced = mostUnpriced;
    this.left = [...needs];
    this.limits = columns.map(({ limit }) => limit);
    this.packs = columns.map(() => 0);
    const byRow: number[][] = needs.map(() => []);
    for (const [at, { gives }] of columns.entries())
      for (const [row, amount] of gives) if (amount > 0) byRow[row]?.push(at);
    this.byRow = byRow;
    const prices = dualPrices(needs, columns);
    this.rate = prices.map((price, row) => Math.min(price, dosingRate(this.dosing[row] ?? null)));
  }

  /** True where the whole space was seen. */
  run(budget: StepBudget): boolean {
    return this.descend(0, 0, budget);
  }

  /** Branches on the uncovered row with the fewest columns; column k of it is tried with columns before k closed, so that no set of packs is seen twice. */
  private descend(cost: number, unpriced: number, budget: StepBudget): boolean {
    if (!budget.take()) return false;
    const bound = this.bound();
    if (this.best && Math.ceil(cost + bound - 1e-9) > this.best.cost) return true;
    if (bound === Number.POSITIVE_INFINITY) return true;
    const row = this.nextRow();
    if (row === null) {
      this.keep(cost, unpriced);
      return true;
    }
    let whole = true;
    const closed: [number, number][] = [];
    for (const at of this.byRow[row] ?? []) {
      const column = this.columns[at];
      const used = this.packs[at] ?? 0;
      if (!column || used >= (this.limits[at] ?? 0)) continue;
      const newlyUnpriced = column.unpriced && used === 0 ? 1 : 0;
      if (unpriced + newlyUnpriced <= this.mostUnpriced) {
        this.add(at, column, 1);
        whole = this.descend(cost + column.cost, unpriced + newlyUnpriced, budget) && whole;
        this.add(at, column, -1);
      }
      closed.push([at, this.limits[at] ?? 0]);
      this.limits[at] = used;
    }
    if (this.dosing[row]) {
      this.settled[row] = true;
      whole = this.descend(cost, unpriced, budget) && whole;
      this.settled[row] = false;
    }
    for (const [at, limit] of closed) this.limits[at] = limit;
    return whole;
  }

  private add(at: number, column: CoverColumn, sign: 1 | -1): void {
    this.packs[at] = (this.packs[at] ?? 0) + sign;
    for (const [row, amount] of column.gives) this.left[row] = (this.left[row] ?? 0) - sign * amount;
  }

  /** The open row with the fewest columns; rows that can be measured out come last. */
  private nextRow(): number | null {
    let best: number | null = null;
    let fewest = Number.POSITIVE_INFINITY;
    for (let row = 0; row < this.left.length; row++) {
      if ((this.left[row] ?? 0) <= 0 || this.settled[row]) continue;
      let open = 0;
      for (const at of this.byRow[row] ?? []) if ((this.packs[at] ?? 0) < (this.limits[at] ?? 0)) open++;
      const rank = this.dosing[row] ? this.columns.length + 1 + open : open;
      if (rank < fewest) {
        best = row;
        fewest = rank;
      }
    }
    return best;
  }

  /** A lower bound on what the uncovered rest costs: the rest of each row at its dual price; half a minor unit less where it may be rounded down. */
  private bound(): number {
    let sum = 0;
    for (let row = 0; row < this.left.length; row++) {
      const left = Math.max(0, this.left[row] ?? 0);
      if (left > 0) sum += Math.max(0, left * (this.rate[row] ?? 0) - (this.dosing[row] ? 0.5 : 0));
    }
    return sum;
  }

  private keep(cost: number, unpriced: number): void {
    let [whole, without] = [cost, unpriced];
    this.dosing.forEach((dosing, row) => {
      const left = this.left[row] ?? 0;
      if (!dosing || left <= 0) return;
      if (dosing.price === null) without++;
      else whole += multiplyDivide(left, dosing.price, dosing.per);
    });
    if (without > this.mostUnpriced) return;
    const cover: Cover = { packs: [...this.packs], cost: whole, unpriced: without };
    if (!this.best || compareCovers(this.columns, cover, this.best) < 0) this.best = cover;
  }
}

const dosingRate = (dosing: Dosing | null): number =>
  dosing === null ? Number.POSITIVE_INFINITY : (dosing.price ?? 0) / dosing.per;

/**
 * A price per unit of each row such that no pack is worth more than it costs: each column's cost is shared evenly among the rows it serves,
 * amounts counted only up to the need. A feasible dual solution, so the bound never exceeds the true cost. Infinity where nothing serves the row.
 */
function dualPrices(needs: readonly number[], columns: readonly CoverColumn[]): number[] {
  const prices = needs.map(() => Number.POSITIVE_INFINITY);
  for (const { gives, cost } of columns) {
    let serving = 0;
    for (const [row, amount] of gives) if (amount > 0 && (needs[row] ?? 0) > 0) serving++;
    for (const [row, amount] of gives) {
      const need = needs[row] ?? 0;
      if (amount > 0 && need > 0) prices[row] = Math.min(prices[row] ?? 0, cost / serving / Math.min(amount, need));
    }
  }
  return prices;
}

/** Canonical order of covers: cost, lines without a price, packs bought, the list of what is bought, packs taken, the list of what is taken. */
function compareCovers(columns: readonly CoverColumn[], a: Cover, b: Cover): number {
  const some = (cover: Cover, free: 'bought' | 'taken'): number[] =>
    cover.packs.map((packs, at) => ((columns[at]?.free ? 'taken' : 'bought') === free ? packs : 0));
  const all = (packs: readonly number[]): number => packs.reduce((sum, one) => sum + one, 0);
  const byList = (free: 'bought' | 'taken'): number => {
    const [mine, theirs] = [some(a, free), some(b, free)];
    return all(mine) - all(theirs) || compareLists(mine, theirs);
  };
  return a.cost - b.cost || a.unpriced - b.unpriced || byList('bought') || byList('taken');
}

/** Compares lists of equally many packs, as (column, packs) without columns of which there is none, element by element. */
function compareLists(a: readonly number[], b: readonly number[]): number {
  for (let at = 0; at < a.length; at++) {
    const [mine, theirs] = [a[at] ?? 0, b[at] ?? 0];
    if (mine === theirs) continue;
    if (mine > 0 && theirs > 0) return mine - theirs;
    // one list has this column here; the other goes on with a later one, since both have equally many packs
    return mine > 0 ? -1 : 1;
  }
  return 0;
}
