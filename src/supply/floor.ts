import { cheapestCovers } from './cover.ts';
import { type Market, remember } from './market.ts';
import { amountIn, daysFor, mostWithin, type Offer } from './offer.ts';
import { offersByShare, offersFor, soldAlone } from './offered.ts';
import type { CoverColumn } from './programme.ts';

/** What one thing costs and waits at least. */
export interface Floor {
  readonly money: number;
  readonly days: number;
}

/** Of which offers a floor speaks: those that come within so many days, Infinity for all; and whether only those that have a price. */
export interface Within {
  readonly days: number;
  readonly priced: boolean;
}
/** Every offer, one without a price at no cost. */
export const ANY_OFFER: Within = { days: Number.POSITIVE_INFINITY, priced: false };

/** Most packs of an offer that can be had within that. */
const packsWithin = (offer: Offer, { days, priced }: Within): number =>
  priced && offer.price === null ? 0 : mostWithin(offer, days);

/**
 * What so much of one SKU costs and waits at least, whatever else is bought with it: whole packs at their price, kits at a share of theirs
 * (rounded down). The sum of these over a demand never exceeds what it costs: every purchase can be split up like that.
 * Infinity where it cannot be had.
 */
export function floorFor(market: Market, sku: string, amount: number, within: Within = ANY_OFFER): Floor {
  return remembered(market, 'floor', sku, amount, within, workOut);
}

/**
 * What so much of one SKU costs and waits at least where more of it may be needed beside: parts of packs at their price, so that the floors of several needs may be
 * added up. Infinity where it cannot be had.
 */
export function shareFloorFor(market: Market, sku: string, amount: number, within: Within = ANY_OFFER): Floor {
  return remembered(market, 'share', sku, amount, within, workOutShare);
}

const textOf = ({ days, priced }: Within): string =>
  days === ANY_OFFER.days && priced === ANY_OFFER.priced ? '' : ` ${days} ${priced}`;

type OfOne = (market: Market, sku: string, amount: number, within: Within) => Floor;

function remembered(market: Market, kind: string, sku: string, amount: number, within: Within, work: OfOne): Floor {
  const key = `${kind} ${sku} ${amount}${textOf(within)}`;
  const known = market.remembered.get(key) as Floor | undefined;
  if (known) return known;
  const floor = work(market, sku, amount, within);
  remember(market, key, floor);
  return floor;
}

function workOutShare(market: Market, sku: string, amount: number, within: Within): Floor {
  let [each, days] = [Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY];
  for (const offer of offersByShare(market, sku, 1, (one) => shareOf(market, one, sku))) {
    const given = amountIn(offer, sku);
    if (given <= 0 || packsWithin(offer, within) <= 0) continue;
    each = Math.min(each, shareOf(market, offer, sku) / given);
    days = Math.min(days, daysFor(offer, 1) ?? days);
  }
  return { money: each * amount, days };
}

/** A need that any of several things meets: so much of one of them, or part of each. */
export type Alternatives = readonly { readonly sku: string; readonly amount: number }[];

/**
 * What several needs cost at least together, minor units, where packs and kits may serve several of them: exact but for a need that is met by parts
 * of several things, or a piece that is counted for two needs. Infinity where they cannot all be met.
 */
export function floorTogether(market: Market, needs: readonly Alternatives[], within: Within = ANY_OFFER): number {
  return together(market, needs, `together ${textOf(within)}`, () => {
    const { whole, columns } = programmeOf(market, needs, within);
    const cheap = columns.map((column) => ({ ...column, unpriced: false }));
    return cheapestCovers(whole, cheap)[0]?.cost ?? Number.POSITIVE_INFINITY;
  });
}

/**
 * The same by how many lines go without a price at most: from none up to as many as lower the cost. The last is what the needs cost at least, whatever goes without.
 */
export function floorByLines(
  market: Market,
  needs: readonly Alternatives[],
  within: Within = ANY_OFFER,
): readonly number[] {
  return together(market, needs, `by lines ${textOf(within)}`, () => {
    const { whole, columns } = programmeOf(market, needs, within);
    const covers = cheapestCovers(whole, columns);
    const most = Math.max(0, ...covers.map(({ unpriced }) => unpriced));
    return Array.from({ length: most + 1 }, (_, lines) =>
      Math.min(Number.POSITIVE_INFINITY, ...covers.flatMap(({ unpriced, cost }) => (unpriced <= lines ? [cost] : []))),
    );
  });
}

function together<T>(market: Market, needs: readonly Alternatives[], kind: string, work: () => T): T {
  let key = kind;
  for (const alternatives of needs) {
    key += ';';
    for (const { sku, amount } of alternatives) key += `${sku} ${amount}|`;
  }
  const known = market.remembered.get(key) as T | undefined;
  if (known !== undefined) return known;
  const found = work();
  remember(market, key, found);
  return found;
}

/** Needs as rows, what gives any of them as columns; amounts of a row in parts of the whole that all alternatives of it divide. */
function programmeOf(
  market: Market,
  needs: readonly Alternatives[],
  within: Within,
): { readonly whole: readonly number[]; readonly columns: readonly CoverColumn[] } {
  const whole = needs.map((alternatives) => alternatives.reduce((all, { amount }) => leastMultiple(all, amount), 1));
  const most = new Map<string, number>();
  const rowsOf = new Map<string, { readonly row: number; readonly amount: number }[]>();
  for (const [row, alternatives] of needs.entries())
    for (const { sku, amount } of alternatives) {
      most.set(sku, Math.max(most.get(sku) ?? 0, amount));
      const rows = rowsOf.get(sku);
      if (rows) rows.push({ row, amount });
      else rowsOf.set(sku, [{ row, amount }]);
    }
  const columns: { readonly offer: Offer; readonly gives: ReadonlyMap<number, number> }[] = [];
  for (const offer of offersFor(market, most)) {
    if (packsWithin(offer, within) <= 0) continue;
    const gives = new Map<number, number>();
    for (const given of offer.gives)
      if (given.amount > 0)
        for (const { row, amount } of rowsOf.get(given.sku) ?? [])
          gives.set(row, Math.max(gives.get(row) ?? 0, (given.amount * (whole[row] ?? 0)) / amount));
    columns.push({ offer, gives });
  }
  return {
    whole,
    columns: columns.map(({ offer, gives }): CoverColumn => {
      let limit = 1;
      for (const [row, amount] of gives) limit = Math.max(limit, Math.ceil((whole[row] ?? 0) / amount));
      limit = Math.min(limit, packsWithin(offer, within));
      if (offer.price !== null) return { gives: [...gives], cost: offer.price, limit, unpriced: false, free: false };
      // all of it is one line and no money: it is taken whole or not at all
      const all = [...gives].map(([row, amount]) => [row, amount * limit] as const);
      return { gives: all, cost: 0, limit: 1, unpriced: true, free: false };
    }),
  };
}

function leastMultiple(a: number, b: number): number {
  let [large, small] = [a, b];
  while (small > 0) [large, small] = [small, large % small];
  return (a / large) * b;
}

function workOut(market: Market, sku: string, amount: number, within: Within): Floor {
  let days = Number.POSITIVE_INFINITY;
  const columns: CoverColumn[] = [];
  for (const offer of offersByShare(market, sku, amount, (one) => shareOf(market, one, sku))) {
    const given = amountIn(offer, sku);
    const most = packsWithin(offer, within);
    if (given <= 0 || most <= 0) continue;
    days = Math.min(days, daysFor(offer, 1) ?? days);
    columns.push({
      gives: [[0, given]],
      cost: shareOf(market, offer, sku),
      limit: Math.min(most, Math.ceil(amount / given)),
      unpriced: false,
      free: false,
    });
  }
  const cheapest = cheapestCovers([amount], columns)[0];
  return cheapest
    ? { money: cheapest.cost, days }
    : { money: Number.POSITIVE_INFINITY, days: Number.POSITIVE_INFINITY };
}

/**
 * What a kit costs for one of the things it gives: by what all of them would cost by themselves, evenly where none has a price. Any split would do for a floor, as long as
 * the shares do not exceed the price; this one leaves a dear cartridge dear, and so the floor high.
 */
function shareOf(market: Market, offer: Offer, sku: string): number {
  const price = offer.price ?? 0;
  if (offer.gives.length === 1) return price;
  const worth = offer.gives.map((given) => given.amount * unitPrice(market, given.sku));
  const all = worth.reduce((sum, one) => sum + one, 0);
  const own = worth[offer.gives.findIndex((given) => given.sku === sku)] ?? 0;
  return Math.floor(all > 0 ? (price * own) / all : price / offer.gives.length);
}

/** The least that a piece or an amount of 1 costs where it is sold by itself; 0 where it is not, or has no price. */
function unitPrice(market: Market, sku: string): number {
  const prices = soldAlone(market, sku).flatMap(({ gives, price }) =>
    gives[0] && gives[0].amount > 0 ? (price ?? 0) / gives[0].amount : [],
  );
  return prices.length === 0 ? 0 : Math.min(...prices);
}
