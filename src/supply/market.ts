import type { Catalog, Replacement, Shop, Stock } from '../catalog/index.ts';
import type { Minor } from '../quantity/index.ts';
import { Goods } from './goods.ts';
import type { Offer } from './offer.ts';

/** What is at hand and free: new and used pieces of parts, amounts of supplies, whole kits. */
export interface AtHand {
  readonly fresh: ReadonlyMap<string, number>;
  readonly used: ReadonlyMap<string, number>;
  readonly supplies: ReadonlyMap<string, number>;
  readonly kits: ReadonlyMap<string, number>;
}

/** Everything that can be bought, with where it is indexed by what it gives. Made once for a catalogue and a stock file. */
export interface Market {
  readonly catalog: Catalog;
  readonly shop: Shop;
  readonly offers: ReadonlyMap<string, Offer>;
  /** The offers by what they give: see `offersFor`. */
  readonly goods: Goods;
  /** The number of an offer that is not there; null where all are. */
  readonly leftOut: string | null;
  /** What was worked out before, by need: the same answer, sooner. */
  readonly remembered: Map<string, unknown>;
  /** Supplies by the specification that they meet, in code-unit order. */
  readonly meeting: ReadonlyMap<string, readonly string[]>;
  /** Supplies that equal one that meets a specification without meeting it themselves: see `equalsOf`. */
  readonly equals: ReadonlyMap<string, readonly string[]>;
}

/** `crowdedFrom`: from how many kits on a number is crowded; no answer hangs on it. */
export function makeMarket(catalog: Catalog, stock: Stock, shop: Shop, crowdedFrom?: number): Market {
  const offers = new Map<string, Offer>();
  const add = (
    sku: string,
    kind: Offer['kind'],
    gives: Offer['gives'],
    listed: Minor | null,
    replacedBy: readonly Replacement[] = [],
  ): void => {
    const row = stock.rows.get(sku) ?? null;
    const replaced =
      replacedBy.length === 0 ? 'no' : replacedBy.some(({ oldStockUsable }) => oldStockUsable) ? 'shelf-only' : 'gone';
    offers.set(sku, { sku, kind, gives, price: row?.price ?? listed, stock: row, replaced });
  };
  for (const part of catalog.parts.values())
    add(part.sku, 'part', [{ sku: part.sku, amount: part.pack }], part.price, part.replacedBy);
  for (const pack of catalog.packs.values())
    add(pack.sku, 'pack', [{ sku: pack.supply, amount: pack.size }], pack.price);
  for (const kit of catalog.kits.values()) {
    const gives = new Map<string, number>();
    for (const { sku, quantity } of kit.parts) gives.set(sku, (gives.get(sku) ?? 0) + quantity);
    for (const { sku, amount } of kit.supplies) gives.set(sku, (gives.get(sku) ?? 0) + amount);
    add(
      kit.sku,
      'kit',
      [...gives].map(([sku, amount]) => ({ sku, amount })),
      kit.price,
      kit.replacedBy,
    );
  }
  const meeting = new Map<string, string[]>();
  for (const supply of catalog.supplies.values()) {
    for (const specification of supply.meets)
      meeting.set(specification, [...(meeting.get(specification) ?? []), supply.sku].sort());
  }
  return {
    catalog,
    shop,
    offers,
    goods: new Goods(offers.values(), crowdedFrom),
    leftOut: null,
    remembered: new Map(),
    meeting,
    equals: equalsOf(catalog, meeting),
  };
}

/** Most answers that a market remembers: a service that runs for weeks must not grow with the questions. */
const MOST_REMEMBERED = 20_000;

/** Remembers an answer, where there is room left. */
export function remember(market: Market, key: string, answer: unknown): void {
  if (market.remembered.size < MOST_REMEMBERED) market.remembered.set(key, answer);
}

/** How far apart two oils may be at 40 °C and still be called equal: the band of an ISO 3448 grade, 10 % of the specified one's. */
const EQUAL_WITHIN = { part: 1, of: 10 };

/**
 * For each specification the supplies that are equal to one that meets it: the same use and unit, and kinematic viscosity at 40 °C within the band.
 * Never across uses; where a viscosity is not stated nothing is equal. Additives and seal compatibility are not compared: it is offered, never chosen silently.
 */
function equalsOf(
  catalog: Catalog,
  meeting: ReadonlyMap<string, readonly string[]>,
): ReadonlyMap<string, readonly string[]> {
  const equals = new Map<string, readonly string[]>();
  for (const [specification, skus] of meeting) {
    const specified = skus.flatMap((sku) => catalog.supplies.get(sku) ?? []);
    const found = [...catalog.supplies.values()].filter(
      (supply) =>
        !skus.includes(supply.sku) &&
        specified.some((one) => {
          const [mine, theirs] = [supply.viscosity.at40, one.viscosity.at40];
          return (
            supply.use === one.use &&
            supply.unit === one.unit &&
            mine !== null &&
            theirs !== null &&
            Math.abs(mine - theirs) * EQUAL_WITHIN.of <= theirs * EQUAL_WITHIN.part
          );
        }),
    );
    if (found.length > 0) equals.set(specification, found.map(({ sku }) => sku).sort());
  }
  return equals;
}

/** The same market without one offer: what would be bought if it were not there. Nothing remembered is taken over. */
export const withoutOffer = (market: Market, sku: string): Market => ({
  ...market,
  leftOut: sku,
  remembered: new Map(),
});
