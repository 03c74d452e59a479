import { cheapestCovers } from './cover.ts';
import { daysFor, type Market } from './market.ts';
import type { CoverColumn } from './programme.ts';

/** What one thing costs and waits at least. */
export interface Floor {
  readonly money: number;
  readonly days: number;
}

/**
 * What so much of one SKU costs and waits at least, whatever else is bought with it: whole packs at their price, kits at an even share of theirs
 * among the things they give (rounded down). The sum of these over a demand never exceeds what it costs: every purchase can be split up like that.
 * Infinity where it cannot be had.
 */
export function floorFor(market: Market, sku: string, amount: number): Floor {
  const key = `floor ${sku} ${amount}`;
  const known = market.remembered.get(key) as Floor | undefined;
  if (known) return known;
  const floor = workOut(market, sku, amount);
  market.remembered.set(key, floor);
  return floor;
}

function workOut(market: Market, sku: string, amount: number): Floor {
  let days = Number.POSITIVE_INFINITY;
  const columns: CoverColumn[] = [];
  for (const offer of market.giving.get(sku) ?? []) {
    const given = offer.gives.find((one) => one.sku === sku)?.amount ?? 0;
    const wait = daysFor(offer, 1);
    if (given <= 0 || wait === null) continue;
    days = Math.min(days, wait);
    columns.push({
      gives: [[0, given]],
      cost: Math.floor((offer.price ?? 0) / offer.gives.length),
      limit: Math.ceil(amount / given),
      unpriced: false,
      free: false,
    });
  }
  const cheapest = cheapestCovers([amount], columns)[0];
  return cheapest
    ? { money: cheapest.cost, days }
    : { money: Number.POSITIVE_INFINITY, days: Number.POSITIVE_INFINITY };
}
