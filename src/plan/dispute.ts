import type { Member as ForkMember, ForkProblem, Wish } from '../fork/index.ts';
import { TOWARD_TRAVEL } from '../fork/index.ts';
import type { Oracle, StepBudget } from '../solve/index.ts';
import type { Member } from './answer.ts';
import { Obtaining } from './obtain.ts';
import { type Prepared, settled } from './prepare.ts';
import type { Question } from './question.ts';
import { canBuild } from './search.ts';
import { sourceOf } from './source.ts';
import type { Lacking } from './work-of.ts';
import type { World } from './world.ts';

/** Who has a say, in the order in which they are named, and which of them can stand together. */
export interface Dispute {
  readonly members: readonly ForkMember[];
  readonly order: readonly number[];
  readonly canStand: Oracle;
}

/** What can stand as builds go, whatever can be bought. */
export function disputeOn(prepared: Prepared, fork: ForkProblem, budget: StepBudget): Dispute {
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

/** The same with the stock as a member, and the wishes that rule out no build but need things. The stock is held unless it is left out by name. */
export function disputeOverGoods(
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
    params: { skus: lacking.skus, unmet: lacking.unmet, idle: lacking.idle },
    source: null,
    wish: null,
  };
  // a wish that asks something of the build too is one member
  const known = new Map(
    parties.members.flatMap(({ wish }, at) => (wish === null ? [] : [[nameOf(wish), at] as const])),
  );
  const more = work.filter(({ wish }) => wish !== null && !known.has(nameOf(wish)));
  const members: readonly ForkMember[] = [...parties.members, ...more, stock];
  const [moreAt, stockAt] = [parties.members.length, members.length - 1];
  more.forEach(({ wish }, at) => {
    if (wish !== null) known.set(nameOf(wish), moreAt + at);
  });
  const holdsWish = (held: ReadonlySet<number>, wish: Wish): boolean => held.has(known.get(nameOf(wish)) ?? stockAt);
  const asked = new Map<string, Obtaining>();
  const canStand: Oracle = (held) => {
    const holds = parties.holdsOf(held);
    if (!held.has(stockAt)) return canBuild(fork, holds, budget);
    const given = work.flatMap(({ wish }) => (wish && !holdsWish(held, wish) ? [wish] : []));
    const key = given.map(nameOf).join('|');
    const obtaining = asked.get(key) ?? new Obtaining(world, withoutWishes(world, prepared, given), fork);
    asked.set(key, obtaining);
    return obtaining.canObtain(holds, budget);
  };
  const order = [...parties.order, ...more.map((_member, at) => moreAt + at)];
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
export function withoutWishes(world: World, prepared: Prepared, given: readonly Wish[]): Prepared {
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
