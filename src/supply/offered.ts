import { byCodeUnit } from '../quantity/index.ts';
import { frontOf, type Group, leastOf, notOutdone } from './crowd.ts';
import { type Market, remember } from './market.ts';
import { amountIn, type Offer } from './offer.ts';

const NONE: ReadonlyMap<string, number> = new Map<string, number>();

/** What gives a number and nothing else, in code-unit order. */
export const soldAlone = ({ goods }: Market, sku: string): readonly Offer[] =>
  goods.isCrowded(sku) ? goods.crowd(sku).alone : goods.all(sku).filter(({ gives }) => gives.length === 1);

/**
 * The offers that may be in a cheapest cover of needs, as amounts by number, in code-unit order; and whole kits that are at hand, as far as they give any of it. All of them,
 * but of kits that crowd around one number those that `frontOf` leaves out.
 */
export function offersFor(
  market: Market,
  needs: ReadonlyMap<string, number>,
  kitsAtHand: ReadonlyMap<string, number> = NONE,
): readonly Offer[] {
  const { goods, leftOut } = market;
  const [only = ''] = needs.keys();
  if (needs.size === 1 && !goods.isCrowded(only) && leftOut === null && kitsAtHand.size === 0) return goods.all(only);
  const found = new Set<Offer>();
  for (const sku of needs.keys())
    for (const offer of goods.isCrowded(sku) ? ofCrowd(market, sku, needs) : goods.all(sku)) found.add(offer);
  for (const sku of kitsAtHand.keys()) {
    const kit = market.offers.get(sku);
    if (kit?.gives.some((given) => needs.has(given.sku))) found.add(kit);
  }
  const offers = [...found].filter(({ sku }) => sku !== leftOut);
  return offers.length > 1 ? offers.sort((a, b) => byCodeUnit(a.sku, b.sku)) : offers;
}

/** Of the offers of a crowded number those that may be of use: kits that give only this of what is needed are held against each other, and those that give more by themselves. */
function ofCrowd(market: Market, sku: string, needs: ReadonlyMap<string, number>): readonly Offer[] {
  const { groups } = market.goods.crowd(sku);
  const others = [...needs.keys()].filter((other) => other !== sku && market.goods.isCrowded(other));
  const several = groups.filter(({ gives }) => others.some((other) => gives.has(other)));
  const need = needs.get(sku) ?? 0;
  return [...ofOne(market, sku, need, several), ...several.flatMap((group) => inFront(group, needs, market.leftOut))];
}

/** Remembered with the market: the same amounts come up again and again. */
function ofOne(market: Market, sku: string, need: number, without: readonly Group[]): readonly Offer[] {
  const { alone, groups } = market.goods.crowd(sku);
  const key = `crowd ${sku} ${need} ${without.map((group) => groups.indexOf(group)).join(' ')}`;
  const known = market.remembered.get(key) as readonly Offer[] | undefined;
  if (known) return known;
  const own = new Map([[sku, need]]);
  const kits = groups.flatMap((group) => (without.includes(group) ? [] : inFront(group, own, market.leftOut)));
  const found = notOutdone([...alone.filter((offer) => offer.sku !== market.leftOut), ...kits], sku, need);
  remember(market, key, found);
  return found;
}

function inFront(
  { gives, queues }: Group,
  needs: ReadonlyMap<string, number>,
  leftOut: string | null,
): readonly Offer[] {
  let wanted = 0;
  for (const [sku, amount] of gives) wanted = Math.max(wanted, Math.ceil((needs.get(sku) ?? 0) / amount));
  return queues.flatMap((queue) => frontOf(queue, wanted, leftOut));
}

/** The offers of a number that may cover a need of it for least, where each costs what falls to this number alone. */
export function offersByShare(
  market: Market,
  sku: string,
  need: number,
  shareOf: (offer: Offer) => number,
): readonly Offer[] {
  const { goods, leftOut } = market;
  if (!goods.isCrowded(sku))
    return leftOut === null ? goods.all(sku) : goods.all(sku).filter((one) => one.sku !== leftOut);
  const key = `shares ${sku} ${need}`;
  const known = market.remembered.get(key) as readonly Offer[] | undefined;
  if (known) return known;
  const front = goods.queues(sku, shareOf).flatMap((queue) => {
    const [first] = queue;
    return first ? frontOf(queue, Math.ceil(need / amountIn(first.offer, sku)), leftOut) : [];
  });
  const found = leastOf(front, sku, need, shareOf);
  remember(market, key, found);
  return found;
}

/** The least that one pack gives of a number; Infinity where nothing gives any. */
export const leastGiven = ({ goods }: Market, sku: string): number => {
  let least = Number.POSITIVE_INFINITY;
  if (!goods.isCrowded(sku)) for (const offer of goods.all(sku)) least = Math.min(least, amountIn(offer, sku));
  else {
    const { alone, groups } = goods.crowd(sku);
    for (const offer of alone) least = Math.min(least, amountIn(offer, sku));
    for (const { gives } of groups) least = Math.min(least, gives.get(sku) ?? least);
  }
  return least;
};

/**
 * For each of some numbers names of what ties it to others of them: two have a name in common where some offer gives both. Of a crowded number only what it shares with
 * the others is named.
 */
export function tiesAmong({ goods, offers }: Market, skus: readonly string[]): (sku: string) => readonly string[] {
  const crowded = new Map(skus.flatMap((sku) => (goods.isCrowded(sku) ? [[sku, new Set<string>()] as const] : [])));
  if (crowded.size === 0) return (sku) => goods.kitsOf(sku);
  for (const sku of skus)
    if (!crowded.has(sku))
      for (const kit of goods.kitsOf(sku))
        for (const given of offers.get(kit)?.gives ?? []) crowded.get(given.sku)?.add(kit);
  for (const [sku, ties] of crowded)
    for (const { gives } of goods.crowd(sku).groups)
      for (const other of gives.keys())
        if (other !== sku && crowded.has(other)) ties.add([sku, other].sort(byCodeUnit).join(' '));
  const named = new Map([...crowded].map(([sku, ties]) => [sku, [...ties]]));
  return (sku) => named.get(sku) ?? goods.kitsOf(sku);
}
