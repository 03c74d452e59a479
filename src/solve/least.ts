import type { StepBudget } from './budget.ts';
import type { Vector } from './front.ts';
import { type Canonical, canonicalAssignment, FEW_LEAVES, floorsOf, type Objectives, runByPromise } from './pareto.ts';
import type { Problem } from './problem.ts';
import { Search } from './search.ts';

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
  let best: Least | null = null;
  let leaves = 0;
  const isWorse = (vector: Vector): boolean => best !== null && compare(best.vector, vector, priority) <= 0;
  const end = runByPromise(search, objectives, budget, {
    cut: (domains) =>
      isWorse(objectives.floor(domains)) || (leaves >= FEW_LEAVES && floorsOf(objectives, domains).every(isWorse)),
    leaf: (values) => {
      leaves++;
      for (const vector of objectives.vectors(values)) if (!isWorse(vector)) best = { vector, values };
      return true;
    },
  });
  if (end === 'stopped') return 'stopped';
  if (best === null) return 'none';
  const shown: Least = best;
  const values = canonicalAssignment(search, objectives, canonical, shown, budget, leaves >= FEW_LEAVES);
  return values === null ? 'stopped' : { vector: shown.vector, values };
}

/** Below 0 where `a` comes first. */
function compare(a: Vector, b: Vector, priority: readonly number[]): number {
  for (const at of priority) {
    const [one, other] = [a[at] ?? 0, b[at] ?? 0];
    if (one !== other) return one < other ? -1 : 1;
  }
  return 0;
}
