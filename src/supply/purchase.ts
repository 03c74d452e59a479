import { byCodeUnit, type Minor, minor, multiplyDivide } from '../quantity/index.ts';
import { Front, noWorse } from '../solve/index.ts';
import { cheapestCovers } from './cover.ts';
import { type AtHand, type Market, remember } from './market.ts';
import { amountIn, daysFor, mostWithin, type Offer } from './offer.ts';
import { offersFor } from './offered.ts';
import type { CoverColumn } from './programme.ts';
import { productsFor, separateDemands, wantedProducts } from './separate.ts';

/** What a job needs: pieces by SKU (fresh ones cannot be used pieces) and amounts by specification, held units. */
export interface Demand {
  readonly pieces: ReadonlyMap<string, { readonly fresh: number; readonly any: number }>;
  readonly supplies: ReadonlyMap<string, number>;
}

/** How the question wants things bought. */
export interface BuyingPolicy {
  readonly bulk: boolean;
  /** True where a supply that equals a specified one may serve. */
  readonly substitutes: boolean;
  /** Kits that must be bought or taken, supplies that must serve a need, packs that must be bought. */
  readonly useKits: readonly string[];
  readonly useSupplies: readonly string[];
  readonly usePacks: readonly string[];
}

/** One way to have everything in hand. */
export interface Purchase {
  /** Packs bought, by SKU in code-unit order. */
  readonly bought: readonly { readonly offer: Offer; readonly packs: number; readonly days: number }[];
  /** Whole kits taken from what is at hand. */
  readonly takenKits: ReadonlyMap<string, number>;
  /** The supply that serves each specification. */
  readonly products: ReadonlyMap<string, string>;
  /** Amounts dosed from the shop's bulk, by supply, with the price of that dose (null: not known). */
  readonly dosed: ReadonlyMap<string, { readonly amount: number; readonly price: Minor | null }>;
  readonly parts: Minor;
  readonly supplies: Minor;
  readonly unpriced: number;
  /** Infinity where nobody knows. */
  readonly days: number;
}

/**
 * Every purchase that no other beats in (cost, lines without a price, days), exact. Empty where the demand cannot be met.
 * Needs that no offer, kit or product ties together are bought apart; the ways to buy each are then joined.
 */
export function purchases(market: Market, demand: Demand, atHand: AtHand, policy: BuyingPolicy): readonly Purchase[] {
  const only: Purchase[] = [];
  const several: (readonly Purchase[])[] = [];
  for (const part of separateDemands(market, demand, policy)) {
    const ways = waysToBuy(market, part.demand, atHand, part.policy);
    const [first] = ways;
    if (!first) return [];
    if (ways.length === 1) only.push(first);
    else several.push(ways);
  }
  let joined: readonly Purchase[] = [joinAll(only)];
  for (const ways of several)
    joined = worthKeeping(joined.flatMap((before) => ways.map((way) => joinAll([before, way]))));
  if (joined.length === 1) return joined;
  const front = new Front<Purchase>(comparePurchases);
  for (const purchase of joined) front.offer(vectorOf(purchase), purchase);
  return front.entries.map(({ item }) => item);
}

/** Whether a demand can be met at all, with nothing that must be used. Of one number it is enough to count what can be had of it. */
export function canBeHad(market: Market, demand: Demand, atHand: AtHand, policy: BuyingPolicy): boolean {
  const [piece, ...others] = demand.pieces;
  const isOfOne = piece !== undefined && others.length + demand.supplies.size === 0;
  const forced = policy.useKits.length + policy.useSupplies.length + policy.usePacks.length > 0;
  if (!isOfOne || forced) return purchases(market, demand, atHand, policy).length > 0;
  const [sku, count] = piece;
  let left = leftToBuy(sku, count, atHand);
  for (const offer of offersFor(market, new Map([[sku, left]]), atHand.kits)) {
    if (left <= 0) break;
    const packs = mostWithin(offer, Number.POSITIVE_INFINITY) + (atHand.kits.get(offer.sku) ?? 0);
    left -= packs * amountIn(offer, sku);
  }
  return left <= 0;
}

/** Pieces of a number that are not at hand: new ones serve every need, used ones those that may be used. */
const leftToBuy = (
  sku: string,
  { fresh, any }: { readonly fresh: number; readonly any: number },
  atHand: AtHand,
): number => fresh + any - (atHand.fresh.get(sku) ?? 0) - Math.min(any, atHand.used.get(sku) ?? 0);

const vectorOf = ({ parts, supplies, unpriced, days }: Purchase): readonly number[] => [
  parts + supplies,
  unpriced,
  days,
];

/**
 * The purchases of a part that the whole may need: one is left out only where another is nowhere worse and comes before it in canonical order.
 * A way that waits longer at the same cost is kept where it is fewer packs: beside something else that is waited for, it is the canonical one.
 */
function worthKeeping(all: readonly Purchase[]): Purchase[] {
  const kept: Purchase[] = [];
  for (const purchase of all) {
    const covers = (a: Purchase, b: Purchase): boolean =>
      noWorse(vectorOf(a), vectorOf(b)) && comparePurchases(a, b) <= 0;
    if (kept.some((other) => covers(other, purchase))) continue;
    for (let at = kept.length - 1; at >= 0; at--) {
      const other = kept[at];
      if (other && covers(purchase, other)) kept.splice(at, 1);
    }
    kept.push(purchase);
  }
  return kept;
}

/** What is bought for several parts of a demand, together. The parts share nothing. */
function joinAll(all: readonly Purchase[]): Purchase {
  const bought: Purchase['bought'][number][] = [];
  const [takenKits, products, dosed] = [new Map<string, number>(), new Map<string, string>(), new Map<string, Dosed>()];
  let [parts, supplies, unpriced, days] = [0, 0, 0, 0];
  for (const one of all) {
    for (const line of one.bought) bought.push(line);
    for (const [sku, packs] of one.takenKits) takenKits.set(sku, packs);
    for (const [specification, sku] of one.products) products.set(specification, sku);
    for (const [sku, dose] of one.dosed) dosed.set(sku, dose);
    parts += one.parts;
    supplies += one.supplies;
    unpriced += one.unpriced;
    days = Math.max(days, one.days);
  }
  bought.sort((one, other) => byCodeUnit(one.offer.sku, other.offer.sku));
  return { bought, takenKits, products, dosed, parts: minor(parts), supplies: minor(supplies), unpriced, days };
}

/** The ways to buy one part of a demand, remembered with the market: the same needs come up in most questions. */
function waysToBuy(market: Market, demand: Demand, atHand: AtHand, policy: BuyingPolicy): readonly Purchase[] {
  const key = demandKey(market, demand, atHand, policy);
  const known = market.remembered.get(key) as readonly Purchase[] | undefined;
  if (known) return known;
  const found = [...productChoices(market, demand, policy)].flatMap((products) =>
    withProducts(market, demand, atHand, policy, products),
  );
  const ways = worthKeeping(found);
  remember(market, key, ways);
  return ways;
}

/** What a part of a demand is, and what at hand and of the policy speaks of it, as a text. Mostly neither does, and the text is short. */
function demandKey(market: Market, demand: Demand, atHand: AtHand, policy: BuyingPolicy): string {
  let key = `${policy.bulk ? 'bulk' : ''} ${policy.substitutes ? 'substitutes' : ''}`;
  for (const [sku, { fresh, any }] of inOrder(demand.pieces)) key += `|${sku} ${fresh} ${any}`;
  for (const [specification, amount] of inOrder(demand.supplies)) key += `|${specification} ${amount}`;
  for (const list of [policy.useKits, policy.useSupplies, policy.usePacks])
    if (list.length > 0) key += `|use ${list.join(' ')}`;
  if (atHand.fresh.size + atHand.used.size + atHand.supplies.size + atHand.kits.size === 0) return key;
  const skus = new Set([
    ...demand.pieces.keys(),
    ...[...demand.supplies.keys()].flatMap((id) => productsFor(market, policy, id)),
  ]);
  const kits = new Set([
    ...policy.useKits,
    ...[...atHand.kits.keys()].filter((kit) => market.offers.get(kit)?.gives.some(({ sku }) => skus.has(sku))),
  ]);
  const held = (from: ReadonlyMap<string, number>, among: ReadonlySet<string>): [string, number][] =>
    [...from].filter(([sku]) => among.has(sku)).sort();
  return `${key}|have ${JSON.stringify([
    held(atHand.fresh, skus),
    held(atHand.used, skus),
    held(atHand.supplies, skus),
    held(atHand.kits, kits),
  ])}`;
}

const inOrder = <T>(map: ReadonlyMap<string, T>): Iterable<readonly [string, T]> =>
  map.size < 2 ? map : [...map].sort(([one], [other]) => byCodeUnit(one, other));

function* productChoices(market: Market, demand: Demand, policy: BuyingPolicy): Generator<ReadonlyMap<string, string>> {
  const specifications = [...demand.supplies.keys()].sort();
  const wanted = wantedProducts(market, policy);
  const choose = function* (at: number, chosen: ReadonlyMap<string, string>): Generator<ReadonlyMap<string, string>> {
    const specification = specifications[at];
    if (specification === undefined) {
      const used = new Set(chosen.values());
      if (wanted.every((sku) => used.has(sku))) yield chosen;
      return;
    }
    for (const sku of productsFor(market, policy, specification))
      yield* choose(at + 1, new Map([...chosen, [specification, sku]]));
  };
  yield* choose(0, new Map());
}

function withProducts(
  market: Market,
  demand: Demand,
  atHand: AtHand,
  policy: BuyingPolicy,
  products: ReadonlyMap<string, string>,
): Purchase[] {
  const amounts = new Map<string, number>();
  for (const [specification, sku] of products)
    amounts.set(sku, (amounts.get(sku) ?? 0) + (demand.supplies.get(specification) ?? 0));
  const rows: Row[] = [];
  for (const [sku, amount] of amounts) {
    const left = amount - (atHand.supplies.get(sku) ?? 0);
    const bulk = policy.bulk ? (market.shop.bulk.get(sku) ?? null) : null;
    if (left > 0) rows.push({ sku, need: left, bulk });
  }
  for (const [sku, count] of demand.pieces) {
    const left = leftToBuy(sku, count, atHand);
    if (left > 0) rows.push({ sku, need: left, bulk: null });
  }
  const forced = [...policy.useKits, ...policy.usePacks];
  const offered = offeredTo(market, rows, forced, atHand);
  const needs = [...rows.map(({ need }) => need), ...forced.map(() => 1)];
  const bulk = rows.map((row) => row.bulk);
  const found: Purchase[] = [];
  let before = '';
  for (const days of dayLevels(offered)) {
    const entries = columnsFor(offered, atHand, days);
    // nothing more can be had than at the level before: so are the covers
    const limits = entries.map(({ offer, column }) => `${offer.sku} ${column.limit}`).join('|');
    if (limits === before && days > 0) continue;
    before = limits;
    const columns = entries.map(({ column }) => column);
    for (const cover of cheapestCovers(needs, columns, bulk)) {
      const purchase = toPurchase(entries, cover.packs, products, dosedFrom(rows, entries, cover.packs));
      if (purchase) found.push(purchase);
    }
  }
  return found;
}

/** A need by SKU; what packs and kits leave of it may come from bulk. */
interface Row {
  readonly sku: string;
  readonly need: number;
  readonly bulk: { readonly price: Minor | null; readonly per: number } | null;
}

/** What is measured out from bulk: the need less what packs and kits bring. */
function dosedFrom(rows: readonly Row[], entries: readonly Entry[], packs: readonly number[]): Map<string, Dosed> {
  const dosed = new Map<string, Dosed>();
  rows.forEach(({ sku, need, bulk }, row) => {
    if (!bulk) return;
    const brought = entries.reduce(
      (sum, { column }, at) => sum + (packs[at] ?? 0) * (column.gives.find(([to]) => to === row)?.[1] ?? 0),
      0,
    );
    const amount = need - brought;
    if (amount > 0)
      dosed.set(sku, {
        amount,
        price: bulk.price === null ? null : minor(multiplyDivide(amount, bulk.price, bulk.per)),
      });
  });
  return dosed;
}

interface Dosed {
  readonly amount: number;
  readonly price: Minor | null;
}

/** What may be bought for some rows: what a pack gives to each, and the most packs that are of use. */
interface Offered {
  readonly offer: Offer;
  readonly gives: readonly (readonly [row: number, amount: number])[];
  readonly enough: number;
}

/** What gives something of the rows, or must be bought (a row of its own), in code-unit order of its SKU. */
function offeredTo(
  market: Market,
  rows: readonly Row[],
  forced: readonly string[],
  atHand: AtHand,
): readonly Offered[] {
  const place = new Map(rows.map(({ sku }, row) => [sku, row]));
  const offers = new Set(offersFor(market, new Map(rows.map(({ sku, need }) => [sku, need])), atHand.kits));
  for (const sku of forced) {
    const offer = market.offers.get(sku);
    if (offer) offers.add(offer);
  }
  const sorted = forced.length === 0 ? [...offers] : [...offers].sort((a, b) => byCodeUnit(a.sku, b.sku));
  return sorted.map((offer) => {
    const gives: [number, number][] = [];
    for (const { sku, amount } of offer.gives) {
      const row = place.get(sku);
      if (row !== undefined) gives.push([row, amount]);
    }
    for (const [at, sku] of forced.entries()) if (sku === offer.sku) gives.push([rows.length + at, 1]);
    gives.sort(([one], [other]) => one - other);
    let enough = 1;
    for (const [row, amount] of gives) enough = Math.max(enough, Math.ceil((rows[row]?.need ?? 1) / amount));
    return { offer, gives, enough };
  });
}

/** The waiting times at which something more can be had. */
function dayLevels(offered: readonly Offered[]): number[] {
  const levels = new Set<number>([0]);
  for (const { offer } of offered) {
    const later = daysFor(offer, Number.MAX_SAFE_INTEGER);
    if (later !== null) levels.add(later);
  }
  return [...levels].sort((a, b) => a - b);
}

interface Entry {
  readonly offer: Offer;
  readonly column: CoverColumn;
}

/** The columns of a cover within so many days: whole kits that are at hand, then what can be bought. */
function columnsFor(offered: readonly Offered[], atHand: AtHand, days: number): Entry[] {
  const entries: Entry[] = [];
  for (const { offer, gives, enough } of offered) {
    const have = offer.kind === 'kit' ? (atHand.kits.get(offer.sku) ?? 0) : 0;
    if (have > 0)
      entries.push({ offer, column: { gives, cost: 0, limit: Math.min(have, enough), unpriced: false, free: true } });
    const limit = Math.min(mostWithin(offer, days), enough);
    if (limit > 0)
      entries.push({
        offer,
        column: { gives, cost: offer.price ?? 0, limit, unpriced: offer.price === null, free: false },
      });
  }
  return entries;
}

function toPurchase(
  entries: readonly Entry[],
  packs: readonly number[],
  products: ReadonlyMap<string, string>,
  dosed: ReadonlyMap<string, { readonly amount: number; readonly price: Minor | null }>,
): Purchase | null {
  const bought: { offer: Offer; packs: number; days: number }[] = [];
  const takenKits = new Map<string, number>();
  let [parts, supplies, unpriced, days] = [0, 0, 0, 0];
  for (const [at, { offer, column }] of entries.entries()) {
    const count = packs[at] ?? 0;
    if (count === 0) continue;
    if (column.free) {
      takenKits.set(offer.sku, count);
      continue;
    }
    const wait = daysFor(offer, count);
    if (wait === null) return null;
    bought.push({ offer, packs: count, days: wait });
    days = Math.max(days, wait);
    if (offer.price === null) unpriced++;
    if (offer.kind === 'pack') supplies += count * column.cost;
    else parts += count * column.cost;
  }
  for (const { price } of dosed.values()) {
    supplies += price ?? 0;
    if (price === null) unpriced++;
  }
  return { bought, takenKits, products, dosed, parts: minor(parts), supplies: minor(supplies), unpriced, days };
}

/** Canonical order of equal purchases: fewest packs, the list of what is bought, fewest kits taken, the list of these, then the products. */
export function comparePurchases(a: Purchase, b: Purchase): number {
  const bought = ({ bought: lines }: Purchase): [string, number][] =>
    lines.map(({ offer, packs }) => [offer.sku, packs]);
  const taken = ({ takenKits }: Purchase): [string, number][] =>
    [...takenKits].sort(([one], [other]) => byCodeUnit(one, other));
  const products = (purchase: Purchase): string =>
    [...purchase.products]
      .map((pair) => pair.join('='))
      .sort()
      .join(' ');
  return compareLists(bought(a), bought(b)) || compareLists(taken(a), taken(b)) || byCodeUnit(products(a), products(b));
}

/** Fewest in all, then element by element: by SKU in code units, then by count. */
function compareLists(a: readonly (readonly [string, number])[], b: readonly (readonly [string, number])[]): number {
  const all = (list: readonly (readonly [string, number])[]): number => list.reduce((sum, [, packs]) => sum + packs, 0);
  const fewer = all(a) - all(b);
  if (fewer !== 0) return fewer;
  for (let at = 0; at < Math.max(a.length, b.length); at++) {
    const [mine, theirs] = [a[at], b[at]];
    if (!mine || !theirs) return mine ? 1 : -1;
    const difference = byCodeUnit(mine[0], theirs[0]) || mine[1] - theirs[1];
    if (difference !== 0) return difference;
  }
  return 0;
}
