import {
  type Bounds,
  type Member as ForkMember,
  type ForkProblem,
  type ForkWants,
  forkProblem,
  shownTraitIn,
  travelOfValues,
  type Wish,
} from '../fork/index.ts';
import { millimetres, minor } from '../quantity/index.ts';
import { corrections, Search, type StepBudget } from '../solve/index.ts';
import type { Member, WayOut } from './answer.ts';
import { asShown, type Dispute, withoutWishes } from './dispute.ts';
import { money } from './lines.ts';
import { forkWants, type Prepared, prepare, settled } from './prepare.ts';
import type { Question } from './question.ts';
import { bestPlan, type Candidate, isIdle } from './search.ts';
import type { World } from './world.ts';

/** Every least set of wishes to give up, each solved for the whole question; and whether these are all. model.md, section 8. */
export function waysOut(
  world: World,
  prepared: Prepared,
  fork: ForkProblem,
  dispute: Dispute,
  budget: StepBudget,
): { readonly found: WayOut[]; readonly complete: boolean } {
  const { members, canStand } = dispute;
  const optional = dispute.order.filter((member) => members[member]?.wish);
  const fixed = members.flatMap(({ wish }, member) => (wish ? [] : [member]));
  const { found, complete } = corrections(fixed, optional, canStand, budget);
  const ways: WayOut[] = [];
  let stated = true;
  for (const given of found) {
    const givers = once(given.flatMap((member) => (members[member] ? [members[member]] : [])));
    const wishes = givers.flatMap(({ wish }) => wish ?? []);
    if (wishes.some(({ kind }) => kind === 'onto')) {
      const way = withoutBike(world, prepared, givers, wishes, budget);
      if (way) ways.push(way);
      continue;
    }
    for (const wants of relaxed(world, prepared, fork, wishes, budget)) {
      const way = solveAgain(world, prepared, wants, givers.map(asShown), budget);
      if (typeof way === 'object') ways.push(way);
      else if (way === 'not-stated') stated = false;
    }
  }
  // a way out that cannot be put as a question is not shown; a search that ran out of steps may have left one, or its best plan, unseen
  return { found: ways, complete: complete && stated && budget.used < budget.limit };
}

/**
 * A steerer that is too short is never extended, but a new one comes uncut: the question with that slot renewed, where it has a plan. Nothing wished for is given up,
 * only the steerer as it is cut; so it is looked for where a conflict cites the rule, and not among the least sets.
 */
export function renewingSteerer(
  world: World,
  prepared: Prepared,
  cited: readonly Member[],
  budget: StepBudget,
): readonly WayOut[] {
  const short = cited.find(({ code }) => code === 'steerer-length')?.params;
  const { wants } = prepared;
  if (!short || typeof short.renew !== 'string' || wants.renew.includes(short.renew)) return [];
  const { renew: slot, steerer = null, uncut = null } = short;
  const drop: Member = { kind: 'kept', code: 'kept-steerer', params: { slot, steerer, uncut }, source: null };
  const way = solveAgain(world, prepared, { ...wants, renew: [...wants.renew, slot] }, [drop], budget);
  return typeof way === 'object' ? [way] : [];
}

/** A wish may be two members, what it asks of the build and the work that it asks for: it is named once. */
const once = (members: readonly ForkMember[]): readonly ForkMember[] => [
  ...new Map(members.map((member) => [`${member.code} ${JSON.stringify(member.params)}`, member])).values(),
];

/** The question without the bike it should suit, whole, where that and nothing else is given up; null where nothing is left to do or more must go. */
function withoutBike(
  world: World,
  prepared: Prepared,
  givers: readonly ForkMember[],
  wishes: readonly Wish[],
  budget: StepBudget,
): WayOut | null {
  if (wishes.length > 1 || nothingIn(prepared.question.wants)) return null;
  const { onto: _onto, ontoSize: _size, ...question } = prepared.question;
  const again = prepare(world, question).prepared;
  const best = again ? bestOf(world, again, budget) : null;
  if (!best || isIdle(best)) return null;
  const [total, minutes, days] = best.vector;
  return {
    drop: givers.map(({ code, params }) => ({ code, params })),
    wants: prepared.question.wants,
    money: money(world, minor(total)),
    minutes,
    days: Number.isFinite(days) ? days : null,
  };
}

/** The wants without the wishes given up; a travel given up, or a kept one, becomes the nearest that can be had below and above. */
function relaxed(
  world: World,
  prepared: Prepared,
  fork: ForkProblem,
  wishes: readonly Wish[],
  budget: StepBudget,
): ForkWants[] {
  const wants = forkWants(world.catalog, prepared.asked, wishes);
  const keptGiven = wishes.some((wish) => wish.kind === 'kept' && wish.trait === 'travel');
  const asked = keptGiven ? prepared.now.travel : prepared.wants.travel;
  if (asked === null || !(keptGiven || wishes.some(({ kind }) => kind === 'travel'))) return [wants];
  const without = forkProblem(world.catalog, prepared.now, wants, prepared.question, 'narrow');
  const reachable = reachableTravels(without, budget);
  const sorted = [...reachable].sort((a, b) => a - b);
  const below = sorted.filter((travel) => travel < asked).at(-1);
  const above = sorted.find((travel) => travel > asked);
  return [below, above].flatMap((travel) => {
    const held = fork.travels.find((known) => known === travel) ?? without.travels.find((known) => known === travel);
    return held === undefined ? [] : [{ ...wants, travel: held }];
  });
}

/** Every travel that some build has: the travel is decided first, and one build for each is enough. */
function reachableTravels(fork: ForkProblem, budget: StepBudget): ReadonlySet<number> {
  const travel = fork.sizes.length - 1;
  const found = new Set<number>();
  new Search(fork.problem, () => true, [travel, ...fork.order]).run(budget, {
    cut: (domains) => domains.isFixed(travel) && found.has(fork.travels[domains.first(travel)] ?? 0),
    leaf: (values) => {
      found.add(travelOfValues(fork, values));
      return true;
    },
  });
  return found;
}

/** Solves the whole question with other wants, as it would be asked anew. `not-stated`: no question says just that. */
function solveAgain(
  world: World,
  prepared: Prepared,
  wants: ForkWants,
  drop: readonly Member[],
  budget: StepBudget,
): WayOut | 'nothing-left' | 'not-stated' {
  const less: Prepared = { ...withoutWishes(world, prepared, wants.givenUp), wants };
  const first = bestOf(world, less, budget);
  if (!first) return 'not-stated';
  const asked = wantsOf(prepared, wants, first);
  if (nothingIn(asked) && prepared.question.onto === undefined) return 'nothing-left';
  const question: Question = { ...prepared.question, wants: asked };
  const anew = settled(world, { ...prepared, question });
  const best = asksTheSame(less, anew) ? first : bestOf(world, anew, budget);
  if (!best) return 'not-stated';
  if (isIdle(best)) return 'nothing-left';
  const [total, minutes, days] = best.vector;
  return {
    drop: drop.map(({ code, params }) => ({ code, params: { ...params, ...becomes(world, best, asked, params) } })),
    wants: asked,
    money: money(world, minor(total)),
    minutes,
    days: Number.isFinite(days) ? days : null,
  };
}

/** True where two questions about one fork surely have the same plans: they want the same, and nothing that stays is given up in one of them. */
function asksTheSame(a: Prepared, b: Prepared): boolean {
  const said = ({ wants: { givenUp, toward, traits, ...wants }, buying }: Prepared): string =>
    JSON.stringify([
      wants,
      [...traits],
      wants.travel === null ? toward : null,
      givenUp.filter(({ kind }) => kind === 'kept'),
      buying,
    ]);
  return said(a) === said(b);
}

/** What comes in place of a kept trait that is given up: of the wheel the one that is asked for, which the chassis may only take. */
function becomes(
  { catalog }: World,
  { build, travel }: Candidate,
  { wheel }: Question['wants'],
  { trait }: Member['params'],
): Member['params'] {
  if (typeof trait !== 'string') return {};
  const then = trait === 'wheel' && wheel !== undefined ? `${wheel}` : shownTraitIn(catalog, build, travel, trait);
  return then === null ? {} : { becomes: then };
}

function bestOf(world: World, prepared: Prepared, budget: StepBudget): Candidate | null {
  const fork = forkProblem(world.catalog, prepared.now, prepared.wants, prepared.question, 'narrow');
  const best = bestPlan(world, prepared, fork, budget);
  return typeof best === 'string' ? null : best;
}

/** The slot whose part settles a kept trait that was given up. */
function slotOfTrait(trait: string): string | null {
  if (trait.includes('.')) return trait.slice(0, trait.indexOf('.'));
  if (trait === 'steerer') return 'upper';
  return ['axle', 'brake-mount'].includes(trait) ? 'lowers' : null;
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
  const settledOffset = traits.includes('offset') ? best.build.chassis.offset : null;
  const offset = wants.offset ?? (settledOffset === null ? null : { least: settledOffset, greatest: settledOffset });
  const wheel = wants.wheel ?? (traits.includes('wheel') ? best.build.chassis.wheel : null);
  return {
    ...(travel === null ? {} : { travel: travel / 1000 }),
    ...(wheel === null ? {} : { wheel }),
    ...(wants.spacers === null ? {} : { spacers: wants.spacers }),
    ...(wants.coilRate === null ? {} : { coilRate: wants.coilRate / 1000 }),
    ...(wants.axleToCrown === null ? {} : { axleToCrown: inMm(wants.axleToCrown) }),
    ...(offset === null ? {} : { offset: inMm(offset) }),
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
