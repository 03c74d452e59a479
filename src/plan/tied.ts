import type { ForkProblem } from '../fork/index.ts';
import type { Domains } from '../solve/index.ts';
import {
  type Alternatives,
  type BuyingPolicy,
  floorByLines,
  floorTogether,
  leastGiven,
  type Market,
  productsFor,
  tiesAmong,
  type Within,
} from '../supply/index.ts';
import { lookedUp, type States } from './states.ts';
import type { Amounts } from './supplies-floor.ts';

/** What becomes of a slot in every plan below a node: nothing that is certain, or it is renewed, or its content changes. */
export type Fate = 'kept' | 'renewed' | 'changed';

/** Slots and specifications whose needs some kit, pack or number ties together: places of slots among the fork's, ids of specifications. */
export interface Tied {
  readonly slots: readonly number[];
  readonly specifications: readonly string[];
}

/** The groups of a fork that are tied, of at least two; what is in none of them is bought by itself. */
export function tiedGroups(market: Market, policy: BuyingPolicy, fork: ForkProblem): readonly Tied[] {
  const ties = new Map<string, number[]>();
  const tie = (by: string, member: number): void => {
    const list = ties.get(by);
    if (list) list.push(member);
    else ties.set(by, [member]);
  };
  const { domains } = fork;
  const specifications = [...market.meeting.keys()];
  const members: readonly (readonly string[])[] = [
    ...domains.map(({ contents }) => [...new Set(contents.flatMap((content) => content?.sku ?? []))]),
    ...specifications.map((id) => productsFor(market, policy, id)),
  ];
  const kitsOf = tiesAmong(market, members.flat());
  for (const [member, skus] of members.entries())
    for (const sku of skus) for (const by of [sku, ...kitsOf(sku)]) tie(by, member);
  const groups = joined(members.length, [...ties.values()]);
  return groups
    .map((group) => ({
      slots: group.filter((member) => member < domains.length),
      specifications: group.flatMap((member) => specifications[member - domains.length] ?? []),
    }))
    .filter(({ slots, specifications: own }) => slots.length + own.length > 1 && slots.length > 0);
}

/** Members 0, 1, 2 ... in groups: those of one list are in one. */
function joined(count: number, lists: readonly (readonly number[])[]): readonly (readonly number[])[] {
  const parent = Array.from({ length: count }, (_, at) => at);
  const root = (at: number): number => {
    let here = at;
    while (parent[here] !== here) here = parent[here] ?? here;
    return here;
  };
  for (const [first, ...others] of lists)
    for (const other of others)
      parent[Math.max(root(first ?? 0), root(other))] = Math.min(root(first ?? 0), root(other));
  const groups = new Map<number, number[]>();
  for (let at = 0; at < count; at++) groups.set(root(at), [...(groups.get(root(at)) ?? []), at]);
  return [...groups.values()];
}

/** What is certain below a node. */
export interface Below {
  readonly fates: readonly Fate[];
  readonly domains: Domains;
  /** What every plan below uses at least. */
  readonly amounts: Amounts;
  /** The numbers of what is certain of each slot and each group. */
  readonly states: States;
}

/** Needs of one number put together, which share its packs; needs that several numbers meet stay as they are. */
function merged(needs: readonly Alternatives[]): Alternatives[] {
  const amounts = new Map<string, number>();
  const several: Alternatives[] = [];
  for (const need of needs) {
    const [one] = need;
    if (one && need.length === 1) amounts.set(one.sku, (amounts.get(one.sku) ?? 0) + one.amount);
    else several.push(need);
  }
  return [...several, ...[...amounts].map(([sku, amount]) => [{ sku, amount }])];
}

/** Most ways to settle the needs of a group that are tried. */
const MOST_WAYS = 64;
/** Most needs of a group that are worked out together; larger groups are left to the floors of their slots. */
const MOST_TOGETHER = 12;

/**
 * The least cost of what a group needs below a node, where a kit or pack is paid once for all that it serves; null where the group is too large to be worked out. Remembered by what
 * is in play: other groups do not matter to it.
 */
export class TiedFloor {
  private readonly market: Market;
  private readonly policy: BuyingPolicy;
  private readonly fork: ForkProblem;
  private readonly group: Tied;
  private readonly free: ReadonlySet<string>;
  private readonly counts: Readonly<Record<'renewed' | 'changed', readonly (readonly number[])[]>>;
  private readonly within: Within;
  private readonly at: number;
  /** By the number of what is certain of the group. */
  private readonly known: (number | null | undefined)[] = [];
  private readonly knownByLines: (readonly number[] | null | undefined)[] = [];

  constructor(
    market: Market,
    policy: BuyingPolicy,
    fork: ForkProblem,
    group: Tied,
    at: number,
    free: ReadonlySet<string>,
    counts: TiedFloor['counts'],
    within: Within,
  ) {
    this.market = market;
    this.policy = policy;
    this.fork = fork;
    this.group = group;
    this.at = at;
    this.free = free;
    this.counts = counts;
    this.within = within;
  }

  cost(node: Below): number | null {
    return lookedUp(this.known, node.states.groups[this.at] ?? -1, () => {
      const needs = this.needsOf(node);
      return needs.length > MOST_TOGETHER ? null : this.leastOf(needs);
    });
  }

  /** By how many lines go without a price at most, from none, the least cost; of as many as lower it. Null as `cost` is. */
  byLines(node: Below): readonly number[] | null {
    return lookedUp(this.knownByLines, node.states.groups[this.at] ?? -1, () => {
      const needs = this.needsOf(node);
      return needs.length > MOST_TOGETHER ? null : this.leastByLines(needs);
    });
  }

  private leastOf(needs: readonly Alternatives[]): number {
    const each = this.waysOf(needs).map((way) => floorTogether(this.market, way, this.within));
    return Math.min(...each);
  }

  private leastByLines(needs: readonly Alternatives[]): readonly number[] {
    const each = this.waysOf(needs).map((way) => floorByLines(this.market, way, this.within));
    const most = Math.max(...each.map((costs) => costs.length));
    return Array.from({ length: most }, (_, lines) =>
      Math.min(...each.map((costs) => costs[Math.min(lines, costs.length - 1)] ?? Number.POSITIVE_INFINITY)),
    );
  }

  /** A need that parts of several things could meet is settled on each of them in turn, where these are few. */
  private waysOf(needs: readonly Alternatives[]): readonly (readonly Alternatives[])[] {
    const mixed = needs.filter((need) => need.length > 1 && need.some((one) => this.comesInParts(one)));
    const ways = mixed.reduce((product, { length }) => product * length, 1);
    if (ways > MOST_WAYS) return [merged(needs)];
    return Array.from({ length: ways }, (_, way) => {
      let rest = way;
      const settled = needs.map((need): Alternatives => {
        if (!mixed.includes(need)) return need;
        const chosen = need.slice(rest % need.length, (rest % need.length) + 1);
        rest = Math.floor(rest / need.length);
        return chosen;
      });
      return merged(settled);
    });
  }

  private comesInParts({ sku, amount }: Alternatives[number]): boolean {
    return leastGiven(this.market, sku) < amount;
  }

  private needsOf({ fates, domains, amounts }: Below): Alternatives[] {
    const needs: Alternatives[] = [];
    for (const slot of this.group.slots) {
      const fate = fates[slot] ?? 'kept';
      if (fate === 'kept') continue;
      const open = this.openOf(slot, fate, domains);
      if (open.some(({ sku, amount }) => amount <= 0 || this.free.has(sku))) continue;
      needs.push(open);
    }
    for (const id of this.group.specifications) {
      const amount = amounts.get(id) ?? 0;
      const products = productsFor(this.market, this.policy, id);
      if (amount > 0 && !products.some((sku) => this.free.has(sku)))
        needs.push(products.map((sku) => ({ sku, amount })));
    }
    return needs;
  }

  /** What a slot may take, a piece of nothing where it may be empty. */
  private openOf(slot: number, fate: 'renewed' | 'changed', domains: Domains): { sku: string; amount: number }[] {
    const contents = this.fork.domains[slot]?.contents ?? [];
    return contents.flatMap((content, value) =>
      domains.has(slot + 1, value)
        ? [{ sku: content?.sku ?? '', amount: content ? (this.counts[fate][slot]?.[value] ?? 0) : 0 }]
        : [],
    );
  }
}
