import { byCodeUnit, groupBy } from '../quantity/index.ts';
import { amountIn, daysFor, mostWithin, type Offer } from './offer.ts';

/**
 * Kits that give a number which many kits give: an oil that is in the opening kit of every family. Of what is the same for some needs only the first few can be in a cheapest
 * cover, so they stand in groups of what they give, in the order in which they would be chosen, and nobody walks through them all. docs/solver.md, section 6, says why nothing is missed.
 */
export interface Crowd {
  /** What is sold by itself, or with one number only: few. */
  readonly alone: readonly Offer[];
  readonly groups: readonly Group[];
}

/** Kits that give the same amounts of crowded numbers, whatever they give besides. */
export interface Group {
  /** The crowded numbers, with the amount in one kit. */
  readonly gives: ReadonlyMap<string, number>;
  readonly queues: readonly Queue[];
}

/** Kits that are alike in when the first of them can be had, when any number, and in whether they have a price; the cheapest first, equal ones by their number. */
export type Queue = readonly Queued[];

interface Queued {
  readonly offer: Offer;
  readonly cost: number;
  /** The packs of it that can be had as soon as the first. */
  readonly most: number;
}

/** The kits of a number as a crowd; `isCrowded` says which numbers are. */
export function crowdOf(giving: readonly Offer[], isCrowded: (sku: string) => boolean): Crowd {
  const kits = giving.filter(({ gives }) => gives.length > 1);
  const groups = groupBy(kits, (kit) => JSON.stringify(crowdedIn(kit, isCrowded)));
  return {
    alone: giving.filter(({ gives }) => gives.length === 1),
    groups: [...groups.values()].map((alike) => ({
      gives: new Map(alike[0] ? crowdedIn(alike[0], isCrowded) : []),
      queues: queuesOf(alike, ({ price }) => price ?? 0),
    })),
  };
}

const crowdedIn = ({ gives }: Offer, isCrowded: (sku: string) => boolean): (readonly [string, number])[] =>
  gives
    .filter(({ sku }) => isCrowded(sku))
    .map(({ sku, amount }) => [sku, amount] as const)
    .sort(([one], [other]) => byCodeUnit(one, other));

/** Offers in queues; what can never be had stands in none. */
export function queuesOf(offers: readonly Offer[], costOf: (offer: Offer) => number): readonly Queue[] {
  const queues = groupBy(
    offers.flatMap((offer) => {
      const first = daysFor(offer, 1);
      const many = daysFor(offer, Number.MAX_SAFE_INTEGER);
      return first === null ? [] : [{ offer, cost: costOf(offer), most: mostWithin(offer, first), first, many }];
    }),
    ({ offer, first, many }) => `${first} ${many} ${offer.price === null}`,
  );
  return [...queues.values()].map((queue) =>
    queue.sort((one, other) => one.cost - other.cost || byCodeUnit(one.offer.sku, other.offer.sku)),
  );
}

/**
 * What stands at the beginning of a queue, without what is in no canonical cheapest cover; nor is anything behind it. `wanted` is how many packs meet all that the needs want of
 * what the queue gives. A cover with a kit of the queue has, beside it, all that there is of every cheaper kit (one more of that would do in its place, for less) and a
 * pack at least of every equal one before it (which would stand in its place). Where these meet the needs the kit is one too many.
 */
export function frontOf(queue: Queue, wanted: number, leftOut: string | null): readonly Offer[] {
  const front: Offer[] = [];
  let [cost, cheaper, ofEqual, withEqual] = [Number.NaN, 0, 0, 0];
  for (const one of queue) {
    if (one.offer.sku === leftOut) continue;
    if (one.cost !== cost) [cost, cheaper, ofEqual, withEqual] = [one.cost, cheaper + ofEqual, 0, 0];
    if (cheaper + withEqual >= wanted) break;
    if (one.offer.price !== null) withEqual++;
    else if (isSpare(one.offer, front, wanted)) continue;
    else if (one.most >= wanted) withEqual = wanted;
    front.push(one.offer);
    ofEqual += one.most;
  }
  return front;
}

/**
 * True where no canonical cheapest cover has an offer without a price, for others without a price that come before it and give as much. Several of them are several lines
 * without a price: of each other the cover has so many packs that those of the offer would not go into its place. Where these meet the needs beside all but one of the
 * offer's packs, that is one too many.
 */
function isSpare(offer: Offer, others: readonly Offer[], wanted: number): boolean {
  const [first, many] = [daysFor(offer, 1), daysFor(offer, Number.MAX_SAFE_INTEGER)];
  return [first, many].every((days) => {
    if (days === null) return true;
    const limits = others.map((other) => Math.min(wanted, mostWithin(other, days)));
    const most = Math.min(wanted, mostWithin(offer, days));
    for (let packs = 1; packs <= most; packs++) {
      let held = packs - 1;
      for (const limit of limits) held += Math.max(0, limit - packs + 1);
      if (held < wanted) return false;
    }
    return true;
  });
}

/**
 * What of some offers of one number may be in a canonical cheapest cover of a need of it, where kits give nothing else that is needed: as `frontOf`, with everything counted that
 * gives as much or more and can be had as soon. What is sold by itself is not judged.
 */
export function notOutdone(offers: readonly Offer[], sku: string, need: number): readonly Offer[] {
  return offers.filter((offer) => {
    if (offer.gives.length === 1) return true;
    const amount = amountIn(offer, sku);
    const asMuch = offers.filter((other) => other !== offer && amountIn(other, sku) >= amount);
    const before = asMuch.filter((other) => other.sku < offer.sku);
    if (offer.price === null) {
      const equal = before.filter(({ price }) => price === null);
      return !isSpare(offer, equal, Math.ceil(need / amount));
    }
    const soonest = daysFor(offer, 1) ?? Number.POSITIVE_INFINITY;
    let met = 0;
    for (const other of asMuch) {
      if (other.price === null || other.price > offer.price) continue;
      const packs = mostWithin(other, soonest);
      if (other.price < offer.price) met += packs * amountIn(other, sku);
      else if (packs > 0 && before.includes(other)) met += amountIn(other, sku);
    }
    return met < need;
  });
}

/**
 * What of some offers of one number may be needed to cover a need of it for least, where each costs `costOf`: one is left out where those before it that cost no more, give as
 * much and can be had as soon meet the need.
 */
export function leastOf(
  offers: readonly Offer[],
  sku: string,
  need: number,
  costOf: (offer: Offer) => number,
): readonly Offer[] {
  const all = offers
    .map((offer) => ({ offer, cost: costOf(offer), amount: amountIn(offer, sku) }))
    .sort((one, other) => one.cost - other.cost || byCodeUnit(one.offer.sku, other.offer.sku));
  const kept: (typeof all)[number][] = [];
  for (const one of all) {
    const soonest = daysFor(one.offer, 1);
    if (soonest === null) continue;
    let met = 0;
    for (const { offer, amount } of kept)
      if (amount >= one.amount && (offer.price !== null || one.offer.price === null))
        met += mostWithin(offer, soonest) * amount;
    if (met < need) kept.push(one);
  }
  return kept.map(({ offer }) => offer);
}
