import {
  type Bounds,
  type Member as ForkMember,
  type ForkProblem,
  type ForkWants,
  forkProblem,
  shownTraitIn,
  TOWARD_TRAVEL,
  travelOfValues,
  type Wish,
} from '../fork/index.ts';
import { millimetres, minor } from '../quantity/index.ts';
import { corrections, type Oracle, Search, type StepBudget, smallestConflict } from '../solve/index.ts';
import type { Member, Refusal, WayOut } from './answer.ts';
import { money } from './lines.ts';
import { Obtaining } from './obtain.ts';
import { forkWants, type Prepared, prepare, settled } from './prepare.ts';
import type { Question } from './question.ts';
import { bestPlan, type Candidate, canBuild, isIdle } from './search.ts';
import { sourceOf } from './source.ts';
import type { Lacking } from './work-of.ts';
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
  const { dispute } = disputeOverGoods(world, prepared, fork, { skus: [], idle: [] }, budget);
  return refusalOf(world, prepared, fork, dispute, disputeOn(prepared, proof, budget), budget);
}

function disputeOn(prepared: Prepared, fork: ForkProblem, budget: StepBudget): Dispute {
  const { members, order, holdsOf } = partiesOf(prepared, fork);
  return { members, order, canStand: (held) => canBuild(fork, holdsOf(held), budget) };
}

/** The members of the fork's problem, and the wish for a bike where there is one. What stands under a wish falls with it. */
export function partiesOf(
  prepared: Prepared,
  fork: ForkProblem,
): {
  readonly members: readonly ForkMember[];
  readonly order: readonly number[];
  readonly holdsOf: (held: ReadonlySet<number>) => (member: number) => boolean;
} {
  const { bike } = prepared.now;
  const onto: ForkMember[] =
    bike && !bike.own
      ? [{ kind: 'want', code: 'want-onto', params: { bike: bike.bike.name }, source: null, wish: { kind: 'onto' } }]
      : [];
  const members = [...fork.members, ...onto];
  const ontoAt = fork.members.length;
  const wishOver = new Map(
    [...fork.under].map(([member, over]) => [
      member,
      members.flatMap(({ wish }, at) => (wish !== null && nameOf(wish) === nameOf(over) ? [at] : [])),
    ]),
  );
  return {
    members,
    order: [...onto.map(() => ontoAt), ...memberOrder(fork)],
    holdsOf: (held) => (member) => held.has(member) && (wishOver.get(member) ?? [member]).some((at) => held.has(at)),
  };
}

const nameOf = (wish: Wish): string =>
  [wish.kind, 'name' in wish ? wish.name : 'trait' in wish ? wish.trait : ''].join(' ');

/** Who has a say, in the order in which they are named, and which of them can stand together. */
interface Dispute {
  readonly members: readonly ForkMember[];
  readonly order: readonly number[];
  readonly canStand: Oracle;
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
  return { conflicts, smallest, instead: found, complete };
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

/** The same with the stock as a member, and the wishes that rule out no build but need things. The stock is held unless it is left out by name. */
function disputeOverGoods(
  world: World,
  prepared: Prepared,
  fork: ForkProblem,
  lacking: Lacking,
  budget: StepBudget,
): { readonly dispute: Dispute; readonly stockAt: number } {
  const work = workWishes(prepared);
  const parties = partiesOf(prepared, fork);
  const stock: ForkMember = {
    kind: 'stock',
    code: 'not-obtainable',
    params: { skus: lacking.skus, idle: lacking.idle },
    source: null,
    wish: null,
  };
  const members: readonly ForkMember[] = [...parties.members, ...work, stock];
  const [workAt, stockAt] = [parties.members.length, members.length - 1];
  const asked = new Map<string, Obtaining>();
  const canStand: Oracle = (held) => {
    const holds = parties.holdsOf(held);
    if (!held.has(stockAt)) return canBuild(fork, holds, budget);
    const given = work.flatMap(({ wish }, at) => (wish && !held.has(workAt + at) ? [wish] : []));
    const key = work.map((_member, at) => held.has(workAt + at)).join(' ');
    const obtaining = asked.get(key) ?? new Obtaining(world, withoutWishes(world, prepared, given), fork);
    asked.set(key, obtaining);
    return obtaining.canObtain(holds, budget);
  };
  const order = [...parties.order, ...work.map((_member, at) => workAt + at)];
  return { dispute: { members, order, canStand }, stockAt };
}

/** Wishes for work and for what is bought: they rule out no build, but they need things. */
function workWishes({ asked, buying }: Prepared): ForkMember[] {
  const wish = (code: string, params: ForkMember['params'], about: Wish): ForkMember => ({
    kind: 'want',
    code,
    params,
    source: null,
    wish: about,
  });
  const used = [...buying.useKits, ...buying.useSupplies, ...buying.usePacks];
  return [
    ...asked.wants.renew.map((slot) => wish('want-renew', { slot, possible: true }, { kind: 'renew', name: slot })),
    ...asked.wants.service.map((service) => wish('want-service', { service }, { kind: 'service', name: service })),
    ...used.map((sku) => wish('want-use', { sku, name: sku }, { kind: 'use', name: sku })),
  ];
}

/** The same question less some wishes. */
function withoutWishes(world: World, prepared: Prepared, given: readonly Wish[]): Prepared {
  const gone = (kind: Wish['kind'], name: string): boolean =>
    given.some((wish) => wish.kind === kind && 'name' in wish && wish.name === name);
  const { wants } = prepared.question;
  const question: Question = {
    ...prepared.question,
    wants: {
      ...wants,
      use: wants.use.filter((sku) => !gone('use', sku)),
      renew: wants.renew.filter((slot) => !gone('renew', slot)),
      service: wants.service.filter((id) => !gone('service', id)),
    },
  };
  return settled(world, { ...prepared, question });
}

/** Who is named first where several would do: wishes, then rules that cite a limit, then listings. */
function memberOrder(fork: ForkProblem): number[] {
  const rank = ({ kind, code }: ForkMember): number =>
    kind === 'want' ? 0 : kind === 'kept' ? 1 : code === 'travel-range' ? 2 : kind === 'rule' ? 3 : 4;
  return fork.members
    .map((member, at) => ({ at, code: member.code, rank: rank(member) }))
    .filter(({ code }) => code !== TOWARD_TRAVEL)
    .sort((a, b) => a.rank - b.rank || a.at - b.at)
    .map(({ at }) => at);
}

/** A member as the answer shows it. */
export const asShown = ({ kind, code, params, source }: ForkMember): Member => ({
  kind,
  code,
  params,
  source: source ? sourceOf(source) : null,
});

function waysOut(
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
  const first = bestOf(world, { ...withoutWishes(world, prepared, wants.givenUp), wants }, budget);
  if (!first) return 'not-stated';
  const asked = wantsOf(prepared, wants, first);
  if (nothingIn(asked) && prepared.question.onto === undefined) return 'nothing-left';
  const question: Question = { ...prepared.question, wants: asked };
  const best = bestOf(world, settled(world, { ...prepared, question }), budget);
  if (!best) return 'not-stated';
  if (isIdle(best)) return 'nothing-left';
  const [total, minutes, days] = best.vector;
  return {
    drop: drop.map(({ code, params }) => ({ code, params: { ...params, ...becomes(world, best, params) } })),
    wants: asked,
    money: money(world, minor(total)),
    minutes,
    days: Number.isFinite(days) ? days : null,
  };
}

/** What comes in place of a kept trait that is given up. */
function becomes({ catalog }: World, { build, travel }: Candidate, { trait }: Member['params']): Member['params'] {
  const then = typeof trait === 'string' ? shownTraitIn(catalog, build, travel, trait) : null;
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
