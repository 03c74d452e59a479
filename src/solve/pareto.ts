import type { StepBudget } from './budget.ts';
import type { Domains } from './domains.ts';
import { noWorse, sameVector, type Vector } from './front.ts';
import type { Problem } from './problem.ts';
import { Search, type SearchEnd, type Visitor } from './search.ts';

/** Several things to keep small at once. */
export interface Objectives {
  /** A vector that no leaf below is under in any part. The tighter, the faster; never above a true one. */
  readonly floor: (domains: Domains) => Vector;
  /** Vectors of which each leaf below has one that it is under in no part; asked where a search is long, for one vector may be far too low. */
  readonly floors?: (domains: Domains) => readonly Vector[];
  /** Parts in which the least of `floors` is no greater than that of `floor`: by these alone the set cuts nothing that the one does not. */
  readonly alike?: readonly number[];
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
  const found: Shown[] = [];
  const isBeaten = (floor: Vector): boolean => found.some(({ vector }) => noWorse(vector, floor));
  let leaves = 0;
  const end = runByPromise(search, objectives, budget, {
    cut: (domains) =>
      isBeaten(objectives.floor(domains)) || (leaves >= FEW_LEAVES && floorsOf(objectives, domains).every(isBeaten)),
    leaf: (values) => {
      leaves++;
      for (const vector of objectives.vectors(values)) insert(found, { vector, values });
      return true;
    },
  });
  const entries: { vector: Vector; values: readonly number[] }[] = [];
  for (const { vector, values: shown } of found) {
    const values = canonicalAssignment(
      search,
      objectives,
      canonical,
      { vector, values: shown },
      budget,
      leaves >= FEW_LEAVES,
    );
    if (values === null) return { entries, end: 'stopped' };
    entries.push({ vector, values });
  }
  return { entries, end };
}

/** The floors of a node where the objectives have them; else the one floor, which was not enough. */
export const floorsOf = ({ floor, floors }: Objectives, domains: Domains): readonly Vector[] =>
  floors?.(domains) ?? [floor(domains)];

/** Leaves after which a search begins again where the floors are least. */
export const FEW_LEAVES = 8;

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
  if (leaves < FEW_LEAVES) return end;
  const ranked = search.ranked((domains) => objectives.floor(domains));
  return search.run(budget, { ...visitor, ...ranked });
}

/** A vector with an assignment that has it. */
interface Shown {
  readonly vector: Vector;
  readonly values: readonly number[];
}

/** Keeps only unbeaten vectors, each once. */
function insert(found: Shown[], one: Shown): void {
  if (found.some(({ vector }) => noWorse(vector, one.vector))) return;
  for (let at = found.length - 1; at >= 0; at--) {
    const known = found[at];
    if (known && noWorse(one.vector, known.vector)) found.splice(at, 1);
  }
  found.push(one);
}

/**
 * The first assignment of a vector with the fewest changes. The one that is shown bounds the changes; leaves come in the order of the variables, so that of equally many changes
 * the first leaf found is the one, and from then on only fewer will do, if fewer there can be. Null where steps ran out.
 */
export function canonicalAssignment(
  search: Search,
  objectives: Objectives,
  { counted }: Canonical,
  shown: Shown,
  budget: StepBudget,
  isLong = false,
): readonly number[] | null {
  const { vector } = shown;
  const isUnder = (floor: Vector): boolean => noWorse(floor, vector);
  const changes = (values: readonly number[]): number => counted.filter((variable) => values[variable] !== 0).length;
  let found: readonly number[] | null = null;
  let most = changes(shown.values);
  let least: number | null = null;
  const end = search.run(budget, {
    cut: (domains) => {
      const certain = changesSoFar(domains, counted);
      least ??= certain;
      if (certain > most || !isUnder(objectives.floor(domains))) return true;
      return isLong && !floorsOf(objectives, domains).some(isUnder);
    },
    leaf: (values) => {
      if (!objectives.vectors(values).some((one) => sameVector(one, vector))) return true;
      found = values;
      most = changes(values) - 1;
      return most >= (least ?? 0);
    },
  });
  return end === 'stopped' ? null : found;
}

const changesSoFar = (domains: Domains, counted: readonly number[]): number => {
  let changes = 0;
  for (const variable of counted) if (!domains.has(variable, 0)) changes++;
  return changes;
};
