import type { StepBudget } from './budget.ts';
import type { Domains } from './domains.ts';
import { noWorse, sameVector, type Vector } from './front.ts';
import type { Problem } from './problem.ts';
import { Search, type SearchEnd, type Visitor } from './search.ts';

/** Several things to keep small at once. */
export interface Objectives {
  /** A vector that no leaf below is under in any part. The tighter, the faster; never above a true one. */
  readonly floor: (domains: Domains) => Vector;
  /** Every vector that a whole assignment can have (one assignment may be paid for in several ways). */
  readonly vectors: (values: readonly number[]) => readonly Vector[];
}

/** How equal vectors are decided: the assignment with the least rank, then the first in the order of the variables. */
export interface Canonical {
  /** Variables in the order in which they are compared; the value 0 comes first. */
  readonly order: readonly number[];
  /** Variables whose values other than 0 count as a change. */
  readonly counted: readonly number[];
}

export interface FrontResult {
  readonly entries: readonly { readonly vector: Vector; readonly values: readonly number[] }[];
  readonly end: SearchEnd;
}

/**
 * Every vector that no other beats, each with its canonical assignment. Two passes: the vectors first, in whatever order the search finds
 * them; then for each vector the canonical assignment, so that the order of the search never shows in the answer.
 */
export function paretoFront(
  problem: Problem,
  objectives: Objectives,
  canonical: Canonical,
  budget: StepBudget,
): FrontResult {
  const search = new Search(problem, () => true, canonical.order);
  const vectors: Vector[] = [];
  const end = runByPromise(search, objectives, budget, {
    cut: (domains) => {
      const floor = objectives.floor(domains);
      return vectors.some((vector) => noWorse(vector, floor));
    },
    leaf: (values) => {
      for (const vector of objectives.vectors(values)) insert(vectors, vector);
      return true;
    },
  });
  const entries: { vector: Vector; values: readonly number[] }[] = [];
  for (const vector of vectors) {
    const values = canonicalAssignment(search, objectives, canonical, vector, budget);
    if (values === null) return { entries, end: 'stopped' };
    entries.push({ vector, values });
  }
  return { entries, end };
}

/** Leaves after which a search begins again where the floors are least. */
const FEW_LEAVES = 24;

/**
 * A whole search whose order does not matter. One that is long begins anew with the values in the order of the floors that they leave: good leaves come early, and what
 * is known of them cuts the rest.
 */
export function runByPromise(search: Search, objectives: Objectives, budget: StepBudget, visitor: Visitor): SearchEnd {
  let leaves = 0;
  const end = search.run(budget, {
    ...visitor,
    leaf: (values) => {
      leaves++;
      return visitor.leaf(values) && leaves < FEW_LEAVES;
    },
  });
  if (end !== 'enough' || leaves < FEW_LEAVES) return end;
  const ranked = search.ranked((domains) => objectives.floor(domains));
  return search.run(budget, { ...visitor, valuesOf: (variable) => ranked[variable] ?? [] });
}

/** Keeps only unbeaten vectors, each once. */
function insert(vectors: Vector[], vector: Vector): void {
  if (vectors.some((known) => noWorse(known, vector))) return;
  for (let at = vectors.length - 1; at >= 0; at--) {
    const known = vectors[at];
    if (known && noWorse(vector, known)) vectors.splice(at, 1);
  }
  vectors.push(vector);
}

/** The first assignment of a vector with the fewest changes: changes are capped at 0, 1, 2 ... so that the first leaf found is the one. Null where steps ran out. */
export function canonicalAssignment(
  search: Search,
  objectives: Objectives,
  canonical: Canonical,
  vector: Vector,
  budget: StepBudget,
): readonly number[] | null {
  for (let most = 0; most <= canonical.counted.length; most++) {
    let found: readonly number[] | null = null;
    const end = search.run(budget, {
      cut: (domains) => changesSoFar(domains, canonical.counted) > most || !noWorse(objectives.floor(domains), vector),
      leaf: (values) => {
        if (!objectives.vectors(values).some((one) => sameVector(one, vector))) return true;
        found = values;
        return false;
      },
    });
    if (found) return found;
    if (end === 'stopped') return null;
  }
  return null;
}

const changesSoFar = (domains: Domains, counted: readonly number[]): number =>
  counted.filter((variable) => !domains.has(variable, 0)).length;
