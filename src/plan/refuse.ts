import {
  type Member as ForkMember,
  type ForkProblem,
  type ForkWants,
  forkProblem,
  travelOfValues,
  type Wish,
} from '../fork/index.ts';
import { minor } from '../quantity/index.ts';
import { corrections, enumerate, type Oracle, type StepBudget, smallestConflict } from '../solve/index.ts';
import type { Member, Refusal, WayOut } from './answer.ts';
import { byPreference } from './assemble.ts';
import { money } from './lines.ts';
import { forkWants, type Prepared } from './prepare.ts';
import { type Candidate, canBuild, searchPlans } from './search.ts';
import { sourceOf } from './source.ts';
import type { World } from './world.ts';

/** Most wishes that a way out gives up at once; what needs more is not listed, and `complete` says so. */
const MOST_GIVEN_UP = 3;

/**
 * Why no build meets the wants: independent conflicts, each the smallest left once the wishes of those before it are given up,
 * and the ways out, each solved for the whole question. model.md, section 8.
 */
export function refuse(world: World, prepared: Prepared, fork: ForkProblem, budget: StepBudget): Refusal | null {
  const canStand: Oracle = (held) => canBuild(fork, (member) => held.has(member), budget);
  const order = memberOrder(fork);
  const conflicts: Member[][] = [];
  let smallest = true;
  let left = order;
  for (;;) {
    const conflict = smallestConflict(left, canStand);
    if (!conflict) break;
    smallest &&= conflict.smallest;
    conflicts.push(conflict.members.map((member) => shown(fork, member)));
    const wishes = new Set(conflict.members.filter((member) => fork.members[member]?.wish));
    if (wishes.size === 0) break;
    left = left.filter((member) => !wishes.has(member));
  }
  if (conflicts.length === 0) return null;
  const { found, complete } = waysOut(world, prepared, fork, canStand, order, budget);
  return { conflicts, smallest, instead: found, complete };
}

/** Who is named first where several would do: wishes, then rules that cite a limit, then listings. */
function memberOrder(fork: ForkProblem): number[] {
  const rank = ({ kind, code }: ForkMember): number =>
    kind === 'want' ? 0 : kind === 'kept' ? 1 : code === 'travel-range' ? 2 : kind === 'rule' ? 3 : 4;
  return fork.members
    .map((member, at) => ({ at, rank: rank(member) }))
    .sort((a, b) => a.rank - b.rank || a.at - b.at)
    .map(({ at }) => at);
}

function shown(fork: ForkProblem, at: number): Member {
  const member = fork.members[at];
  if (!member) throw new Error(`no member ${at}`);
  const { kind, code, params, source } = member;
  return { kind, code, params, source: source ? sourceOf(source) : null };
}

function waysOut(
  world: World,
  prepared: Prepared,
  fork: ForkProblem,
  canStand: Oracle,
  order: readonly number[],
  budget: StepBudget,
): { readonly found: WayOut[]; readonly complete: boolean } {
  const optional = order.filter((member) => fork.members[member]?.wish);
  const fixed = order.filter((member) => !fork.members[member]?.wish);
  const { found, complete } = corrections(fixed, optional, canStand, MOST_GIVEN_UP);
  const ways: WayOut[] = [];
  for (const given of found) {
    const wishes = given.flatMap((member) => fork.members[member]?.wish ?? []);
    for (const wants of relaxed(world, prepared, fork, wishes, budget)) {
      const way = solveAgain(
        world,
        prepared,
        wants,
        given.map((member) => shown(fork, member)),
        budget,
      );
      if (way) ways.push(way);
    }
  }
  return { found: ways, complete };
}

/** The wants without the wishes given up; a travel given up becomes the nearest that can be had below and above. */
function relaxed(
  world: World,
  prepared: Prepared,
  fork: ForkProblem,
  wishes: readonly Wish[],
  budget: StepBudget,
): ForkWants[] {
  const wants = forkWants(world.catalog, prepared.question, wishes);
  const asked = prepared.wants.travel;
  if (asked === null || !wishes.some(({ kind }) => kind === 'travel')) return [wants];
  const without = forkProblem(world.catalog, prepared.now, wants, { allowUnknown: prepared.question.allowUnknown });
  const reachable = new Set<number>();
  enumerate(
    without.problem,
    () => true,
    budget,
    (values) => {
      reachable.add(travelOfValues(without, values));
      return true;
    },
  );
  const sorted = [...reachable].sort((a, b) => a - b);
  const below = sorted.filter((travel) => travel < asked).at(-1);
  const above = sorted.find((travel) => travel > asked);
  return [below, above].flatMap((travel) => {
    const held = fork.travels.find((known) => known === travel) ?? without.travels.find((known) => known === travel);
    return held === undefined ? [] : [{ ...wants, travel: held }];
  });
}

/** Solves the whole question with other wants; null where it cannot be met after all or nothing is left to do. */
function solveAgain(
  world: World,
  prepared: Prepared,
  wants: ForkWants,
  drop: readonly Member[],
  budget: StepBudget,
): WayOut | null {
  const again: Prepared = { ...prepared, wants };
  const fork = forkProblem(world.catalog, prepared.now, wants, { allowUnknown: prepared.question.allowUnknown });
  const { candidates } = searchPlans(world, again, fork, budget);
  const best = [...candidates].sort((a, b) => byPreference(prepared.question.prefer, a.vector, b.vector))[0];
  if (!best) return null;
  const [total, minutes, days] = best.vector;
  return {
    drop: drop.map(({ code, params }) => ({ code, params })),
    wants: wantsDocument(prepared, wants, best),
    money: money(world, minor(total)),
    minutes,
    days: Number.isFinite(days) ? days : null,
  };
}

/** The wants as a question would state them, with what the plan settled for the wishes given up. */
function wantsDocument(prepared: Prepared, wants: ForkWants, best: Candidate): WayOut['wants'] {
  const { question } = prepared;
  const keptGiven = wants.givenUp.flatMap((wish) => (wish.kind === 'kept' ? [wish.trait] : []));
  const gone = (kind: Wish['kind'], name: string): boolean =>
    wants.givenUp.some((wish) => wish.kind === kind && 'name' in wish && wish.name === name);
  const parts = keptGiven.flatMap((trait) => {
    const slot = trait.includes('.')
      ? trait.slice(0, trait.indexOf('.'))
      : trait === 'steerer'
        ? 'upper'
        : ['axle', 'offset', 'brake-mount'].includes(trait)
          ? 'lowers'
          : null;
    const sku = slot === null ? undefined : best.build.slots.get(slot)?.sku;
    return sku === undefined ? [] : [sku];
  });
  return {
    ...(wants.travel !== null
      ? { travel: wants.travel / 1000 }
      : keptGiven.includes('travel')
        ? { travel: undefined }
        : {}),
    ...(wants.wheel !== null
      ? { wheel: wants.wheel }
      : keptGiven.includes('wheel')
        ? { wheel: best.build.chassis.wheel }
        : {}),
    ...(wants.spacers !== null ? { spacers: wants.spacers } : {}),
    use: [...new Set([...question.wants.use.filter((sku) => !gone('use', sku)), ...parts])],
    keep: [...wants.keep],
    renew: [...wants.renew],
    service: [...wants.services],
  };
}
