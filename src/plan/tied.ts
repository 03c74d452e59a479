import type { ForkProblem } from '../fork/index.ts';
import type { Domains } from '../solve/index.ts';
import {
  type Alternatives,
  type BuyingPolicy,
  floorTogether,
  type Market,
  productsFor,
  type Within,
} from '../supply/index.ts';
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
  const tie = (by: string, member: number): void => void ties.set(by, [...(ties.get(by) ?? []), member]);
  const tieSku = (sku: string, member: number): void => {
    tie(sku, member);
    for (const kit of market.tying.get(sku) ?? []) tie(kit, member);
  };
  const { domains } = fork;
  for (const [slot, { contents }] of domains.entries())
    for (const sku of new Set(contents.flatMap((content) => content?.sku ?? []))) tieSku(sku, slot);
  const specifications = [...market.meeting.keys()];
  specifications.forEach((id, at) => {
    for (const sku of productsFor(market, policy, id)) tieSku(sku, domains.length + at);
  });
  const groups = joined(domains.length + specifications.length, [...ties.values()]);
  return groups
    .map((members) => ({
      slots: members.filter((member) => member < domains.length),
      specifications: members.flatMap((member) => specifications[member - domains.length] ?? []),
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
  private readonly known = new Map<string, number | null>();

  constructor(
    market: Market,
    policy: BuyingPolicy,
    fork: ForkProblem,
    group: Tied,
    free: ReadonlySet<string>,
    counts: TiedFloor['counts'],
    within: Within,
  ) {
    this.market = market;
    this.policy = policy;
    this.fork = fork;
    this.group = group;
    this.free = free;
    this.counts = counts;
    this.within = within;
  }

  cost(node: Below): number | null {
    const key = this.keyOf(node);
    const known = this.known.get(key);
    if (known !== undefined) return known;
    const needs = this.needsOf(node);
    const cost = needs.length > MOST_TOGETHER ? null : this.leastOf(needs);
    this.known.set(key, cost);
    return cost;
  }

  /** A need that parts of several things could meet is settled on each of them in turn, where these are few. */
  private leastOf(needs: readonly Alternatives[]): number {
    const mixed = needs.filter((need) => need.length > 1 && need.some((one) => this.comesInParts(one)));
    const ways = mixed.reduce((product, { length }) => product * length, 1);
    if (ways > MOST_WAYS) return floorTogether(this.market, merged(needs), this.within);
    let least = Number.POSITIVE_INFINITY;
    for (let way = 0; way < ways; way++) {
      let rest = way;
      const settled = needs.map((need): Alternatives => {
        if (!mixed.includes(need)) return need;
        const chosen = need.slice(rest % need.length, (rest % need.length) + 1);
        rest = Math.floor(rest / need.length);
        return chosen;
      });
      least = Math.min(least, floorTogether(this.market, merged(settled), this.within));
    }
    return least;
  }

  private comesInParts({ sku, amount }: Alternatives[number]): boolean {
    return (this.market.giving.get(sku) ?? []).some(({ gives }) =>
      gives.some((given) => given.sku === sku && given.amount < amount),
    );
  }

  private keyOf({ fates, domains, amounts }: Below): string {
    let key = '';
    for (const slot of this.group.slots) {
      const fate = fates[slot];
      key += fate === 'kept' ? '-' : fate === 'renewed' ? 'r' : 'c';
      if (fate === 'kept') continue;
      const size = domains.sizes[slot + 1] ?? 0;
      for (let value = 0; value < size; value++) if (domains.has(slot + 1, value)) key += `${value},`;
    }
    for (const id of this.group.specifications) key += `|${amounts.get(id) ?? 0}`;
    return key;
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
