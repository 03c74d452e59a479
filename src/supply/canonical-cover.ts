import { type Least, leastCover, usable } from './least-cover.ts';
import { type Cap, type Cover, type CoverColumn, type Programme, weighed } from './programme.ts';

/**
 * The cheapest cover that uses at most `mostUnpriced` columns without a price, of equal ones the canonical one: found by settling one thing after the other, each with
 * what was settled before as a cap. Columns without a price must have a limit of 1, so that packs count them. Null where there is no cover.
 */
export function canonicalCover(
  needs: readonly number[],
  columns: readonly CoverColumn[],
  mostUnpriced: number,
): Cover | null {
  const count = (counts: (column: CoverColumn) => boolean): number[] => columns.map((one) => (counts(one) ? 1 : 0));
  const unpriced = count((column) => column.unpriced);
  const costs = columns.map(({ cost }) => cost);
  const caps: Cap[] = unpriced.includes(1) ? [{ weights: unpriced, most: mostUnpriced }] : [];
  let found = leastBy({ needs, columns, caps }, costs);
  if (!found) return null;
  const cost = found.cost;
  caps.push({ weights: costs, most: cost });
  for (const weights of [unpriced, count(({ free }) => !free)]) {
    found = leastBy({ needs, columns, caps }, weights) ?? found;
    caps.push({ weights, most: found.cost });
  }
  const limits = usable({ needs, columns, caps }, cost);
  const fixing = new Fixing({ needs, columns, caps }, cost, limits, found.packs);
  fixing.settle(count(({ free }) => !free));
  const taken = count(({ free }) => free);
  if (taken.includes(1)) {
    fixing.fewest(taken);
    fixing.settle(taken);
  }
  return { packs: fixing.packs, cost, unpriced: weighed(unpriced, fixing.packs) };
}

const leastBy = (programme: Programme, weights: readonly number[]): Least | null =>
  leastCover({
    ...programme,
    columns: programme.columns.map((column, at) => ({ ...column, cost: weights[at] ?? 0 })),
  }).least;

/** Settles the packs of one column after the other, with a cover at hand that shows that what is settled can be had. */
class Fixing {
  packs: readonly number[];
  private readonly programme: Programme;
  private readonly cost: number;
  private readonly settled = new Map<number, number>();
  private readonly caps: Cap[];
  private readonly limits: readonly number[];

  constructor(programme: Programme, cost: number, limits: readonly number[], packs: readonly number[]) {
    this.programme = programme;
    this.cost = cost;
    this.limits = limits;
    this.packs = packs;
    this.caps = [...programme.caps];
  }

  /** In the order of the columns that count: some packs rather than none, and of these the fewest. */
  settle(counted: readonly number[]): void {
    counted.forEach((counts, at) => {
      if (counts === 0) return;
      const shown = this.packs[at] ?? 0;
      const most = shown > 0 ? shown - 1 : Math.min(this.limits[at] ?? 0, this.programme.columns[at]?.limit ?? 0);
      for (let packs = 1; packs <= most; packs++) {
        if (this.have(at, packs)) return;
      }
      this.settled.set(at, shown);
    });
  }

  /** Caps packs that count at the fewest that can be had beside what is settled. */
  fewest(counted: readonly number[]): void {
    const { programme, spare } = this.rest();
    const found = leastBy(programme, counted);
    if (!found) return;
    this.packs = spare(found.packs);
    this.caps.push({ weights: counted, most: weighed(counted, this.packs) });
  }

  private have(at: number, packs: number): boolean {
    this.settled.set(at, packs);
    const { programme, spare } = this.rest();
    const most = this.cost - this.spent(programme.columns.map(({ cost }) => cost));
    const open = programme.caps.every((cap) => cap.most >= 0);
    const found = open ? leastCover(programme, undefined, { most, enough: most }).least : null;
    if (found) this.packs = spare(found.packs);
    else this.settled.delete(at);
    return found !== null;
  }

  /** What is left to cover once the settled packs are taken, and the way back from its cover to one of the whole. */
  private rest(): { readonly programme: Programme; readonly spare: (packs: readonly number[]) => number[] } {
    const needs = [...this.programme.needs];
    for (const [at, packs] of this.settled)
      for (const [row, amount] of this.programme.columns[at]?.gives ?? [])
        needs[row] = (needs[row] ?? 0) - packs * amount;
    return {
      programme: {
        needs,
        columns: this.programme.columns.map((column, at) => ({
          ...column,
          limit: this.settled.has(at) ? 0 : column.limit,
        })),
        caps: this.caps.map(({ weights, most }) => ({ weights, most: most - this.spent(weights) })),
      },
      spare: (packs) => packs.map((count, at) => this.settled.get(at) ?? count),
    };
  }

  /** The sum of weights over what is settled. */
  private spent(weights: readonly number[]): number {
    return [...this.settled].reduce((sum, [at, packs]) => sum + packs * (weights[at] ?? 0), 0);
  }
}
