import { StepBudget } from '../solve/index.ts';
import { withoutDominated } from './dominated.ts';
import { fixedBy, type Proof } from './fixing.ts';
import { greedyCover } from './greedy.ts';
import { evenPrices, type Priced, priced } from './multipliers.ts';
import { type Programme, weighed } from './programme.ts';
import { type Residue, reduced, residueOf } from './residue.ts';

/** A cover and what it costs. */
export interface Least {
  readonly packs: readonly number[];
  readonly cost: number;
}

/** The least cover found; `proved` where no other costs less (or, without one, where there is none). */
export interface LeastResult {
  readonly least: Least | null;
  readonly proved: boolean;
}

/** What is asked of a search: covers that cost at most `most`; one that costs `enough` or less ends it. */
export interface LeastBounds {
  readonly most: number;
  readonly enough: number;
}

const UNBOUNDED: LeastBounds = { most: Number.POSITIVE_INFINITY, enough: Number.NEGATIVE_INFINITY };

/**
 * A cover of least cost, within bounds: branch and bound over rows, each node bounded by Lagrangian prices, columns fixed by what they add to
 * the bound. Complete: a branch is left only where every cover in it costs as much as one that is known, or more. One step is one node.
 * Which of several equal covers is found is not settled.
 */
export function leastCover(
  programme: Programme,
  budget: StepBudget = new StepBudget(Number.POSITIVE_INFINITY),
  bounds: LeastBounds = UNBOUNDED,
): LeastResult {
  const search = new LeastSearch(programme, budget, bounds);
  return { proved: search.run(), least: search.least };
}

/** The most of each column that any cover within a cost can have, as far as prices at the root tell. Empty where they tell that there is no such cover. */
export function usable(programme: Programme, most: number): readonly number[] {
  const residue = residueOf(programme);
  if (!residue) return [];
  const prices = evenPrices(residue, programme.needs.length);
  const found = priced(residue, prices, Number.POSITIVE_INFINITY, ROUNDS_AT_ROOT);
  const room = most - found.bound;
  if (room < 0) return [];
  const fixed = fixedBy(residue, [{ prices: found, room }]);
  const limits = typeof fixed === 'string' ? residue.limit : fixed.limits;
  const usableOf = programme.columns.map(() => 0);
  residue.column.forEach((column, place) => {
    usableOf[column] = limits[place] ?? 0;
  });
  return usableOf;
}

const ROUNDS_AT_ROOT = 400;
/** Rounds for better prices in a branch; where caps bind the bound pays for more of them. */
const ROUNDS_BELOW = 24;
const ROUNDS_BELOW_CAPPED = 64;
/** Nodes from one try for a better cover by greed to the next. */
const GREEDY_EVERY = 8;
/** Weights that a cost may have beside a column's own while a first cover is looked for that keeps the caps. */
const LEANINGS = [0, 0.25, 0.5, 1, 2, 4, 8, 16, 64];

/** A branch of the search: what is left, what was taken for it, and the prices to go on from, for the cost and for each cap. */
interface Branch {
  readonly residue: Residue;
  readonly taken: readonly (readonly [column: number, packs: number])[];
  readonly paid: number;
  readonly prices: Prices;
  readonly capPrices: readonly Prices[];
}
type Prices = Pick<Priced, 'rowPrice' | 'capPrice'>;

class LeastSearch {
  least: Least | null = null;
  private readonly programme: Programme;
  private readonly budget: StepBudget;
  private readonly costs: readonly number[];
  /** What a cover must not pass to be of interest. */
  private goal: number;
  private readonly enough: number;
  private readonly rounds: number;

  constructor(programme: Programme, budget: StepBudget, { most, enough }: LeastBounds) {
    this.programme = programme;
    this.budget = budget;
    this.costs = programme.columns.map(({ cost }) => cost);
    this.goal = most;
    this.enough = enough;
    this.rounds = programme.caps.length > 0 ? ROUNDS_BELOW_CAPPED : ROUNDS_BELOW;
  }

  /** True where the whole space was seen. */
  run(): boolean {
    const whole = residueOf(this.programme);
    const residue = whole && reduced(whole, [], withoutDominated(whole));
    if (!residue) return true;
    const rows = this.programme.needs.length;
    const root: Branch = {
      residue,
      taken: [],
      paid: 0,
      prices: evenPrices(residue, rows),
      capPrices: residue.caps.map((_cap, at) => evenPrices(byWeight(residue, at), rows)),
    };
    if (residue.caps.length > 0) this.lean(root);
    return this.node(root, ROUNDS_AT_ROOT);
  }

  /** Tries for a first cover by greed for cost and, more and more, for what the caps count. */
  private lean(root: Branch): void {
    const { cost, caps } = root.residue;
    for (const leaning of LEANINGS) {
      const mixed = cost.map((one, place) =>
        caps.reduce((sum, { weight, left }) => sum + (leaning * (weight[place] ?? 0) * 100) / Math.max(1, left), one),
      );
      this.tryGreedy(root, mixed);
    }
  }

  private node(from: Branch, rounds: number): boolean {
    if (!this.budget.take()) return false;
    const { residue, taken, paid } = from;
    if (paid > this.goal) return true;
    if (residue.need.length === 0) {
      this.keep(from, null);
      return true;
    }
    const proofs = this.proofs(from, rounds);
    if (!proofs) return true;
    const [first, ...others] = proofs;
    const prices = first?.prices;
    if (!prices) return true;
    if (rounds !== ROUNDS_AT_ROOT && (this.least === null || this.budget.used % GREEDY_EVERY === 0))
      this.tryGreedy(from, prices.reduced);
    const fixed = fixedBy(residue, proofs);
    const next: Branch = { ...from, prices, capPrices: others.map((proof) => proof.prices) };
    if (fixed === 'no-cover') return true;
    if (fixed === 'none') return this.branch(next, prices);
    const left = reduced(residue, fixed.taken, fixed.limits);
    if (!left) return true;
    const smaller: Branch = {
      ...next,
      residue: left,
      taken: [...taken, ...fixed.taken.map(([place, packs]) => [residue.column[place] ?? 0, packs] as const)],
      paid: paid + fixed.taken.reduce((sum, [place, packs]) => sum + packs * (residue.cost[place] ?? 0), 0),
    };
    if (left.cost.length < residue.cost.length * 0.9 || fixed.taken.length > 0) return this.node(smaller, this.rounds);
    return this.branch(smaller, priced(left, prices, this.goal - paid, 0));
  }

  /** Bounds on the cost and on what each cap counts, with the room above them; null where one shows that nothing of interest lies below. */
  private proofs({ residue, paid, prices, capPrices }: Branch, rounds: number): readonly Proof[] | null {
    const cost = priced(residue, prices, this.goal - paid, rounds, (costs) => {
      if (rounds === ROUNDS_AT_ROOT) this.tryGreedy({ residue, taken: [], paid, prices, capPrices }, costs);
    });
    const found: Proof[] = [{ prices: cost, room: this.goal - paid - cost.bound }];
    for (const [at, { left }] of residue.caps.entries()) {
      if ((found[0]?.room ?? 0) < 0) return null;
      const light = priced(byWeight(residue, at), capPrices[at] ?? prices, left, rounds);
      found.push({ prices: light, room: left - light.bound });
    }
    return found.some(({ room }) => room < 0) ? null : found;
  }

  /** The row with the fewest columns: one pack of each in turn, those before it closed, so that no cover is seen twice. */
  private branch(from: Branch, prices: Priced): boolean {
    const { residue, taken, paid } = from;
    if (residue.need.length === 0) {
      this.keep(from, null);
      return true;
    }
    const columns = columnsOf(residue, tightestRow(residue, prices, this.goal - paid - prices.bound)).sort(
      (a, b) => (prices.reduced[a] ?? 0) - (prices.reduced[b] ?? 0),
    );
    const limits = residue.limit.slice();
    let bound = paid + prices.bound;
    for (const place of columns) {
      if (bound > this.goal) return true;
      const next = reduced(residue, [[place, 1]], limits);
      const more = Math.max(0, prices.reduced[place] ?? 0);
      if (next && bound + more <= this.goal) {
        const below: Branch = {
          ...from,
          residue: next,
          taken: [...taken, [residue.column[place] ?? 0, 1]],
          paid: paid + (residue.cost[place] ?? 0),
          prices,
        };
        if (!this.node(below, this.rounds)) return false;
      }
      bound += Math.max(0, -(prices.reduced[place] ?? 0)) * (limits[place] ?? 0);
      limits[place] = 0;
    }
    return true;
  }

  private tryGreedy(from: Branch, costs: Float64Array): void {
    const packs = greedyCover(from.residue, costs);
    if (packs) this.keep(from, packs);
  }

  private keep({ residue, taken }: Branch, more: Int32Array | null): void {
    const packs = this.costs.map(() => 0);
    for (const [column, count] of taken) packs[column] = (packs[column] ?? 0) + count;
    more?.forEach((count, place) => {
      const column = residue.column[place] ?? 0;
      packs[column] = (packs[column] ?? 0) + count;
    });
    const cost = weighed(this.costs, packs);
    if (cost > this.goal) return;
    this.least = { packs, cost };
    this.goal = cost <= this.enough ? Number.NEGATIVE_INFINITY : cost - 1;
  }
}

/** The residue with what a cap counts for its cost. */
const byWeight = (residue: Residue, cap: number): Residue => ({
  ...residue,
  cost: residue.caps[cap]?.weight ?? residue.cost,
  caps: [],
});

/** The row with the fewest branches, each counted for less the more of the room its column's reduced cost takes. */
function tightestRow({ need, row, start, cost }: Residue, prices: Priced, room: number): number {
  const open = new Float64Array(need.length);
  const known = Number.isFinite(room) && room > 0;
  for (let place = 0; place < cost.length; place++) {
    const each = Math.max(0, prices.reduced[place] ?? 0);
    const counts = known ? Math.max(0.05, 1 - each / room) : 1;
    for (let at = start[place] ?? 0; at < (start[place + 1] ?? 0); at++) {
      const to = row[at] ?? 0;
      open[to] = (open[to] ?? 0) + counts;
    }
  }
  let best = 0;
  for (let at = 1; at < open.length; at++) if ((open[at] ?? 0) < (open[best] ?? 0)) best = at;
  return best;
}

function columnsOf({ start, row, cost }: Residue, wanted: number): number[] {
  const found: number[] = [];
  for (let place = 0; place < cost.length; place++)
    for (let at = start[place] ?? 0; at < (start[place + 1] ?? 0); at++) if (row[at] === wanted) found.push(place);
  return found;
}
