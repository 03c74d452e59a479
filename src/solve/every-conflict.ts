import type { StepBudget } from './budget.ts';
import type { Oracle } from './conflict.ts';
import { minimalHittingSets } from './hitting-sets.ts';

/** Every conflict and every correction; `complete` is false where the steps ran out: then what is listed is true and more may be missing. */
export interface Dispute {
  /** Sets of members that cannot stand together while every proper subset can, members ascending; the smallest first. */
  readonly conflicts: readonly (readonly number[])[];
  /** What is left out of each greatest set of members that can stand, members ascending; the smallest first. */
  readonly corrections: readonly (readonly number[])[];
  readonly complete: boolean;
}

/**
 * Every conflict and every correction among `members`, by asking which sets can stand. The conflicts are exactly the minimal sets that hit every correction. So each
 * minimal set that hits the corrections known so far is asked about: it either cannot stand, and is a conflict, or grows to a greatest set that can, and gives a
 * correction that it did not hit. When no new one comes up all are known. One step is one set that was looked at.
 * Ref: J. Bailey, P. Stuckey, "Discovery of minimal unsatisfiable subsets of constraints using hitting set dualization", PADL 2005.
 */
export function everyConflict(members: readonly number[], canStand: Oracle, budget: StepBudget): Dispute {
  const conflicts = new Map<string, readonly number[]>();
  const corrections: (readonly number[])[] = [];
  const end = (complete: boolean): Dispute => ({
    conflicts: inOrder([...conflicts.values()]),
    corrections: inOrder(corrections),
    complete,
  });
  for (let known = -1; known < corrections.length; ) {
    known = corrections.length;
    for (const hitting of minimalHittingSets(corrections)) {
      const set = ascending(hitting);
      const key = set.join(' ');
      if (conflicts.has(key)) continue;
      if (corrections.slice(known).some((one) => !one.some((member) => set.includes(member)))) continue;
      if (!budget.take()) return end(false);
      const verdict = canStand(new Set(set));
      if (verdict === null) return end(false);
      if (!verdict) {
        conflicts.set(key, set);
        continue;
      }
      const correction = whatIsLeft(members, set, canStand);
      if (correction === null) return end(false);
      corrections.push(correction);
    }
  }
  return end(true);
}

/** Lets a set that can stand grow, member by member, while it can; what could not be added. Null where an answer is missing. */
function whatIsLeft(members: readonly number[], seed: readonly number[], canStand: Oracle): readonly number[] | null {
  const held = new Set(seed);
  const left: number[] = [];
  for (const member of members) {
    if (held.has(member)) continue;
    held.add(member);
    const verdict = canStand(held);
    if (verdict === null) return null;
    if (verdict) continue;
    held.delete(member);
    left.push(member);
  }
  return ascending(left);
}

const ascending = (set: readonly number[]): readonly number[] => [...set].sort((a, b) => a - b);

/** The smallest first, then element by element. */
export const inOrder = (sets: readonly (readonly number[])[]): readonly (readonly number[])[] =>
  [...sets].sort(
    (a, b) => a.length - b.length || a.map((member, at) => member - (b[at] ?? 0)).find((one) => one !== 0) || 0,
  );
