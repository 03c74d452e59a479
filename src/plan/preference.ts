import type { Question } from './question.ts';
import type { PlanVector } from './search.ts';

/** The parts of a plan's vector in the order in which a preference compares them. */
export const PREFERENCE: Readonly<Record<Question['prefer'], readonly number[]>> = {
  money: [0, 1, 2, 3, 4],
  time: [1, 0, 2, 3, 4],
  wait: [2, 0, 1, 3, 4],
};

/** By the preferred part of the vector first, then by the others in their order. */
export function byPreference(prefer: Question['prefer'], a: PlanVector, b: PlanVector): number {
  for (const at of PREFERENCE[prefer]) {
    const [mine, theirs] = [a[at] ?? 0, b[at] ?? 0];
    if (mine !== theirs) return mine < theirs ? -1 : 1;
  }
  return 0;
}
