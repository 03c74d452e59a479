import type { StepBudget } from './budget.ts';
import type { Vector } from './front.ts';
import { type Canonical, canonicalAssignment, FEW_LEAVES, floorsOf, type Objectives, runByPromise } from './pareto.ts';
import type { Problem } from './problem.ts';
import { Search, type SearchEnd } from './search.ts';

/** The first vector in an order of the objectives, with its canonical assignment. */
export interface Least {
  readonly vector: Vector;
  readonly values: readonly number[];
}

/**
 * Of all vectors the one that comes first where the objectives are compared one after the other in the order of `priority`, with its canonical assignment. It lies on the
 * front; the rest of the front is not looked for, so it is found sooner. No part of a floor is above the true one, so neither is the floor as a whole in that order.
 * `none`: there is no vector. `stopped`: the steps ran out.
 */
export function leastVector(
  problem: Problem,
  objectives: Objectives,
  priority: readonly number[],
  canonical: Canonical,
  budget: StepBudget,
): Least | 'none' | 'stopped' {
  const search = new Search(problem, () => true, canonical.order);
  const { end, best, leaves } = leastShown(search, objectives, priority, budget, null);
  if (end === 'stopped') return 'stopped';
  if (best === null) return 'none';
  const values = canonicalAssignment(search, objectives, canonical, best, budget, leaves >= FEW_LEAVES);
  return values === null ? 'stopped' : { vector: best.vector, values };
}

/** Where a search begins: a solution that is known, and variables that have one value and no other. */
export interface From {
  readonly known: readonly number[] | null;
  readonly settled?: ReadonlyMap<number, number>;
}

/** The same vector where nobody asks for its canonical assignment. With a known solution nothing is looked at that does not come before it. */
export function leastValue(
  problem: Problem,
  objectives: Objectives,
  priority: readonly number[],
  { order }: Pick<Canonical, 'order'>,
  { known, settled }: From,
  budget: StepBudget,
): Vector | 'none' | 'stopped' {
  const search = new Search(problem, () => true, order, settled);
  const { end, best } = leastShown(search, objectives, priority, budget, known);
  return end === 'stopped' ? 'stopped' : (best?.vector ?? 'none');
}

/** The first vector with an assignment that has it, whichever the search came upon, and how many leaves it saw. */
function leastShown(
  search: Search,
  objectives: Objectives,
  priority: readonly number[],
  budget: StepBudget,
  known: readonly number[] | null,
): { readonly end: SearchEnd; readonly best: Least | null; readonly leaves: number } {
  const found: { best: Least | null } = { best: null };
  let leaves = 0;
  const isWorse = (vector: Vector): boolean => found.best !== null && compare(found.best.vector, vector, priority) <= 0;
  const offer = (values: readonly number[]): void => {
    for (const vector of objectives.vectors(values)) if (!isWorse(vector)) found.best = { vector, values };
  };
  const [first = 0] = priority;
  const isAlike = objectives.alike?.includes(first) ?? false;
  // one of the set is less than the best in the part that is compared first, if the one floor is
  const mayCut = (floor: Vector): boolean => !isAlike || floor[first] === found.best?.vector[first];
  if (known) offer(known);
  const end = runByPromise(search, objectives, budget, {
    cut: (domains) => {
      const floor = objectives.floor(domains);
      return isWorse(floor) || (leaves >= FEW_LEAVES && mayCut(floor) && floorsOf(objectives, domains).every(isWorse));
    },
    leaf: (values) => {
      leaves++;
      offer(values);
      return true;
    },
  });
  return { end, best: found.best, leaves };
}

/** Below 0 where `a` comes first. */
function compare(a: Vector, b: Vector, priority: readonly number[]): number {
  for (const at of priority) {
    const [one, other] = [a[at] ?? 0, b[at] ?? 0];
    if (one !== other) return one < other ? -1 : 1;
  }
  return 0;
}
