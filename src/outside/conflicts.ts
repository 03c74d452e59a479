import { disputeOf, StepBudget } from '../solve/index.ts';
import { OutsideStopped } from './fault.ts';
import { readClauses } from './read-clauses.ts';
import { readConstraints } from './read-constraints.ts';

/** Every irreducible conflict, every correction, and one smallest conflict (null where all can stand together); numbers from 1. */
export interface ConflictsAnswer {
  readonly conflicts: readonly (readonly number[])[];
  readonly corrections: readonly (readonly number[])[];
  readonly smallest: readonly number[] | null;
}

/** Steps after which nothing is claimed: some minutes of work. */
const MOST_STEPS = 3_000_000;

export function answerConflicts(text: string): ConflictsAnswer {
  const problem = isMiniZinc(text) ? readConstraints(text) : readClauses(text);
  const { conflicts, corrections, complete } = disputeOf(problem, new StepBudget(MOST_STEPS));
  if (!complete) throw new OutsideStopped(`there are too many conflicts to list them all in ${MOST_STEPS} steps`);
  const fromOne = (sets: readonly (readonly number[])[]): number[][] =>
    sets.map((set) => set.map((member) => member + 1));
  return { conflicts: fromOne(conflicts), corrections: fromOne(corrections), smallest: fromOne(conflicts)[0] ?? null };
}

const isMiniZinc = (text: string): boolean => /^\s*(?:constraint|var|solve|int|include)\b/m.test(text);
