import type { StepBudget } from './budget.ts';
import type { Oracle } from './conflict.ts';
import { everyConflict } from './every-conflict.ts';

/**
 * Every minimal correction within `optional`: what to give up so that the rest can stand together with all of `fixed`. The smallest first, equally small ones in the
 * order of `optional`. `complete` is false where the steps ran out: then what is listed is true and more may be missing.
 */
export function corrections(
  fixed: readonly number[],
  optional: readonly number[],
  canStand: Oracle,
  budget: StepBudget,
): { readonly found: readonly (readonly number[])[]; readonly complete: boolean } {
  const places = [...optional.keys()];
  const members = (set: Iterable<number>): number[] => Array.from(set, (at) => optional[at] ?? at);
  const dispute = everyConflict(places, (held) => canStand(new Set([...fixed, ...members(held)])), budget);
  return {
    // giving up nothing is no correction: then all can stand
    found: dispute.corrections.filter(({ length }) => length > 0).map(members),
    complete: dispute.complete,
  };
}
