import type { ForkProblem } from '../fork/index.ts';
import { type StepBudget, smallestConflict } from '../solve/index.ts';
import type { Member, Refusal } from './answer.ts';
import { asShown, type Dispute, disputeOn, disputeOverGoods } from './dispute.ts';
import type { Prepared } from './prepare.ts';
import { renewingSteerer, waysOut } from './ways-out.ts';
import { LACKING_NOTHING, type Lacking } from './work-of.ts';
import type { World } from './world.ts';

/**
 * Why no build meets the wants: independent conflicts, each the smallest left once the wishes of those before it are given up,
 * and the ways out, each solved for the whole question. `proof` is the problem that the conflicts are found in: of what is impossible whatever is unknown,
 * no reason may be that nobody says. model.md, section 8.
 */
export function refuse(
  world: World,
  prepared: Prepared,
  fork: ForkProblem,
  proof: ForkProblem,
  budget: StepBudget,
): Refusal | null {
  const { dispute } = disputeOverGoods(world, prepared, fork, LACKING_NOTHING, budget);
  return refusalOf(world, prepared, fork, dispute, disputeOn(prepared, proof, budget), budget);
}

function refusalOf(
  world: World,
  prepared: Prepared,
  fork: ForkProblem,
  dispute: Dispute,
  proof: Dispute,
  budget: StepBudget,
): Refusal | null {
  const { members, canStand } = proof;
  const conflicts: Member[][] = [];
  let smallest = true;
  let left = proof.order;
  for (;;) {
    const conflict = smallestConflict(left, canStand);
    if (!conflict) break;
    smallest &&= conflict.smallest;
    conflicts.push(conflict.members.flatMap((at) => (members[at] ? [asShown(members[at])] : [])));
    const wishes = new Set(conflict.members.filter((at) => members[at]?.wish));
    if (wishes.size === 0) break;
    left = left.filter((member) => !wishes.has(member));
  }
  if (conflicts.length === 0) return null;
  const { found, complete } = waysOut(world, prepared, fork, dispute, budget);
  const renewing = renewingSteerer(world, prepared, conflicts.flat(), budget);
  return { conflicts, smallest, instead: [...found, ...renewing], complete };
}

/**
 * Why there is a build and yet no plan: what the wishes need cannot be bought. The stock is one member, and so is each wish that is about work
 * or about buying rather than about the fork.
 */
export function refuseStock(
  world: World,
  prepared: Prepared,
  fork: ForkProblem,
  lacking: Lacking,
  budget: StepBudget,
): Refusal | null {
  const { dispute, stockAt } = disputeOverGoods(world, prepared, fork, lacking, budget);
  return refusalOf(world, prepared, fork, dispute, { ...dispute, order: [...dispute.order, stockAt] }, budget);
}
