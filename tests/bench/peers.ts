import type { RawFile, RawPart } from '../../src/catalog/raw.ts';
import type { Grid } from '../generator/grid.ts';
import { cents } from '../mip/written.ts';

/** The choice of parts of a grid question, and nothing else: what a plain search is told. */
export interface PlainChoice {
  /** For each slot its candidates: packs needed and price a pack, in minor units. */
  readonly slots: readonly (readonly Candidate[])[];
  /** Kits of two pieces: a candidate of one slot and one of another, at one price. */
  readonly pairs: readonly { readonly skus: readonly string[]; readonly price: number }[];
}
interface Candidate {
  readonly sku: string;
  readonly price: number;
  readonly excludes: readonly string[];
}

/** The modules of a grid: there the choice is; all else is the same in every plan. */
export function plainChoiceOf({ generated: { records } }: Grid): PlainChoice {
  const slots = Object.keys(records.families?.[0]?.slots ?? {}).filter((slot) => slot.startsWith('module'));
  return {
    slots: slots.map((slot) => (records.parts ?? []).filter(({ role }) => role === slot).map(candidateOf)),
    pairs: (records.kits ?? [])
      .filter(({ sku }) => sku.includes('-PAIR-'))
      .map(({ contents, price }) => ({ skus: contents.map(({ sku }) => sku), price: cents(price) ?? 0 })),
  };
}

const candidateOf = ({ sku, price, excludes = [] }: RawPart): Candidate => ({
  sku,
  price: cents(price) ?? 0,
  excludes: excludes.flatMap((one) => one.sku ?? []),
});

/** Nodes after which the plain search gives up. */
const MOST_NODES = 50_000_000;

/**
 * The least cost by plain branch and bound: slot after slot, the bound is the cheapest candidate of each slot left, a pair counted evenly for its two. Null where it has not
 * ended after `MOST_NODES`.
 */
export function plainBranchAndBound({ slots, pairs }: PlainChoice): number | null {
  const half = new Map(pairs.flatMap(({ skus, price }) => skus.map((sku) => [sku, price / 2] as const)));
  const least = slots.map((all) => Math.min(...all.map(({ sku, price }) => Math.min(price, half.get(sku) ?? price))));
  const rest = least.map((_one, at) => least.slice(at).reduce((sum, one) => sum + one, 0));
  const chosen: Candidate[] = [];
  let best = Number.POSITIVE_INFINITY;
  let nodes = 0;
  const descend = (at: number, bound: number): void => {
    if (nodes++ >= MOST_NODES) return;
    if (bound + (rest[at] ?? 0) >= best) return;
    const here = slots[at];
    if (here === undefined) {
      best = Math.min(best, costOf(chosen, pairs));
      return;
    }
    for (const one of here) {
      if (chosen.some(({ sku, excludes }) => one.excludes.includes(sku) || excludes.includes(one.sku))) continue;
      chosen.push(one);
      descend(at + 1, bound + Math.min(one.price, half.get(one.sku) ?? one.price));
      chosen.pop();
    }
  };
  descend(0, 0);
  return nodes > MOST_NODES ? null : best;
}

/** Each pair that is wholly chosen is bought as a kit where that is cheaper. */
function costOf(chosen: readonly Candidate[], pairs: PlainChoice['pairs']): number {
  const prices = new Map(chosen.map(({ sku, price }) => [sku, price]));
  const single = chosen.reduce((sum, { price }) => sum + price, 0);
  return pairs.reduce((sum, { skus, price }) => {
    const apart = skus.reduce((parts, sku) => parts + (prices.get(sku) ?? Number.NaN), 0);
    return apart > price ? sum - (apart - price) : sum;
  }, single);
}

/** Every pair of a part and a body, with the verdict of a clause, as peers keep them. */
export interface Fitment {
  readonly skus: readonly string[];
  readonly bodies: readonly string[];
  readonly fits: (part: number, body: number) => boolean;
}

export function fitmentOf({ parts = [], chassis = [] }: RawFile): Fitment {
  const narrow = parts.map(({ fits = [] }) => fits);
  return {
    skus: parts.map(({ sku }) => sku),
    bodies: chassis.map(({ id }) => id),
    fits: (part, body) => {
      const one = chassis[body];
      return (narrow[part] ?? []).some(
        ({ family, chassis: id, wheel, not }) =>
          !not &&
          family === one?.family &&
          (id === undefined || id === one.id) &&
          (wheel === undefined || wheel === one.wheel),
      );
    },
  };
}
