import {
  type Bounds,
  type Member as ForkMember,
  type ForkProblem,
  type ForkWants,
  forkProblem,
  TOWARD_TRAVEL,
  travelOfValues,
  type Wish,
} from '../fork/index.ts';
import { millimetres, minor } from '../quantity/index.ts';
import { corrections, type Oracle, Search, type StepBudget, smallestConflict } from '../solve/index.ts';
import type { Member, Refusal, WayOut } from './answer.ts';
import { money } from './lines.ts';
import { byPreference } from './preference.ts';
import { forkWants, type Prepared, settled } from './prepare.ts';
import type { Question } from './question.ts';
import { type Candidate, canBuild, searchPlans } from './search.ts';
import { sourceOf } from './source.ts';
import type { World } from './world.ts';

/** Most wishes that a way out gives up at once; what needs more is not listed, and `complete` says so. */
const MOST_GIVEN_UP = 8;

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
    conflicts.push(conflict.members.map((member) => shownMember(fork, member)));
    const wishes = new Set(conflict.members.filter((member) => fork.members[member]?.wish));
    if (wishes.size === 0) break;
    left = left.filter((member) => !wishes.has(member));
  }
  if (conflicts.length === 0) return null;
  const { found, complete } = waysOut(world, prepared, fork, canStand, order, budget);
  return { conflicts, smallest, instead: found, complete };
}

/** Who is named first where several would do: wishes, then rules that cite a limit, then listings. */
export function memberOrder(fork: ForkProblem): number[] {
  const rank = ({ kind, code }: ForkMember): number =>
    kind === 'want' ? 0 : kind === 'kept' ? 1 : code === 'travel-range' ? 2 : kind === 'rule' ? 3 : 4;
  return fork.members
    .map((member, at) => ({ at, code: member.code, rank: rank(member) }))
    .filter(({ code }) => code !== TOWARD_TRAVEL)
    .sort((a, b) => a.rank - b.rank || a.at - b.at)
    .map(({ at }) => at);
}

/** A member as the answer shows it. */
export function shownMember(fork: ForkProblem, at: number): Member {
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
  const fixed = fork.members.flatMap(({ wish }, member) => (wish ? [] : [member]));
  const { found, complete } = corrections(fixed, optional, canStand, MOST_GIVEN_UP);
  const ways: WayOut[] = [];
  for (const given of found) {
    const wishes = given.flatMap((member) => fork.members[member]?.wish ?? []);
    for (const wants of relaxed(world, prepared, fork, wishes, budget)) {
      const way = solveAgain(
        world,
        prepared,
        wants,
        given.map((member) => shownMember(fork, member)),
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
  const wants = forkWants(world.catalog, prepared.asked, wishes);
  const asked = prepared.wants.travel;
  if (asked === null || !wishes.some(({ kind }) => kind === 'travel')) return [wants];
  const without = forkProblem(world.catalog, prepared.now, wants, prepared.question, 'narrow');
  const reachable = new Set<number>();
  new Search(without.problem, () => true, without.order).run(budget, {
    leaf: (values) => {
      reachable.add(travelOfValues(without, values));
      return true;
    },
  });
  const sorted = [...reachable].sort((a, b) => a - b);
  const below = sorted.filter((travel) => travel < asked).at(-1);
  const above = sorted.find((travel) => travel > asked);
  return [below, above].flatMap((travel) => {
    const held = fork.travels.find((known) => known === travel) ?? without.travels.find((known) => known === travel);
    return held === undefined ? [] : [{ ...wants, travel: held }];
  });
}

/** Solves the whole question with other wants, as it would be asked anew; null where it cannot be met after all. */
function solveAgain(
  world: World,
  prepared: Prepared,
  wants: ForkWants,
  drop: readonly Member[],
  budget: StepBudget,
): WayOut | null {
  const first = bestOf(world, { ...prepared, wants }, budget);
  if (!first) return null;
  const asked = wantsOf(prepared, wants, first);
  if (nothingIn(asked) && prepared.question.onto === undefined) return null;
  const question: Question = { ...prepared.question, wants: asked };
  const best = bestOf(world, settled(world, { ...prepared, question }), budget);
  if (!best) return null;
  const [total, minutes, days] = best.vector;
  return {
    drop: drop.map(({ code, params }) => ({ code, params })),
    wants: asked,
    money: money(world, minor(total)),
    minutes,
    days: Number.isFinite(days) ? days : null,
  };
}

function bestOf(world: World, prepared: Prepared, budget: StepBudget): Candidate | null {
  const fork = forkProblem(world.catalog, prepared.now, prepared.wants, prepared.question, 'narrow');
  const { candidates } = searchPlans(world, prepared, fork, budget);
  return [...candidates].sort((a, b) => byPreference(prepared.question.prefer, a.vector, b.vector))[0] ?? null;
}

/** The slot whose part settles a kept trait that was given up. */
function slotOfTrait(trait: string): string | null {
  if (trait.includes('.')) return trait.slice(0, trait.indexOf('.'));
  if (trait === 'steerer') return 'upper';
  return ['axle', 'offset', 'brake-mount'].includes(trait) ? 'lowers' : null;
}

/** The wants as a question states them, with what the plan settled for the wishes given up. */
function wantsOf(prepared: Prepared, wants: ForkWants, best: Candidate): Question['wants'] {
  const traits = wants.givenUp.flatMap((wish) => (wish.kind === 'kept' ? [wish.trait] : []));
  const gone = (name: string): boolean => wants.givenUp.some((wish) => wish.kind === 'use' && wish.name === name);
  const settled = traits.flatMap((trait) => {
    const slot = slotOfTrait(trait);
    return (slot === null ? null : best.build.slots.get(slot)?.sku) ?? [];
  });
  const travel = wants.travel ?? (traits.includes('travel') ? millimetres(best.travel / 1000) : null);
  const wheel = wants.wheel ?? (traits.includes('wheel') ? best.build.chassis.wheel : null);
  return {
    ...(travel === null ? {} : { travel: travel / 1000 }),
    ...(wheel === null ? {} : { wheel }),
    ...(wants.spacers === null ? {} : { spacers: wants.spacers }),
    ...(wants.coilRate === null ? {} : { coilRate: wants.coilRate / 1000 }),
    ...(wants.axleToCrown === null ? {} : { axleToCrown: inMm(wants.axleToCrown) }),
    ...(wants.offset === null ? {} : { offset: inMm(wants.offset) }),
    use: [...new Set([...prepared.question.wants.use.filter((sku) => !gone(sku)), ...settled])],
    keep: [...wants.keep],
    renew: [...wants.renew],
    traits: Object.fromEntries(wants.traits),
    service: [...wants.services],
  };
}

const inMm = ({ least, greatest }: Bounds): { least: number; greatest: number } => ({
  least: least / 1000,
  greatest: greatest / 1000,
});

/** Wants that ask for nothing: giving everything up is no way out. */
const nothingIn = ({ use, keep: _keep, renew, service, traits, ...measures }: Question['wants']): boolean =>
  use.length + renew.length + service.length + Object.keys(traits).length === 0 &&
  Object.values(measures).every((value) => value === undefined);
