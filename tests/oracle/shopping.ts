import { multiplyDivide } from '../../src/quantity/money.ts';
import { known } from './book.ts';
import { byBuyer } from './buyer.ts';
import { type Cost, FREE, plus, unbeatenCosts } from './cost.ts';
import type { Supply } from './records.ts';
import type { Scene } from './scene.ts';
import { money, type Offer, offerOf } from './stock.ts';

/** Packs by SKU. */
export type Packs = Readonly<Record<string, number>>;

/** One way to get something: what is bought and its cost. */
interface Way {
  readonly packs: Packs;
  readonly cost: Cost;
}
const NOTHING: Way = { packs: {}, cost: FREE };

const joined = (a: Way, b: Way): Way => ({
  packs: { ...a.packs, ...b.packs },
  cost: plus(a.cost, b.cost),
});

/** One of each group, joined. */
const everyJoining = (groups: readonly (readonly Way[])[]): readonly Way[] =>
  groups.reduce<readonly Way[]>(
    (ways, group) => ways.flatMap((way) => group.map((one) => joined(way, one))),
    [NOTHING],
  );

/** So many packs of one SKU: one way, or none where they cannot be had. */
function packsOf(scene: Scene, sku: string, listPrice: string | undefined, packs: number): readonly Way[] {
  if (packs === 0) return [NOTHING];
  const offer = offerOf(scene, sku, listPrice);
  const days = daysFor(offer, packs);
  if (days === 'never') return [];
  return [{ packs: { [sku]: packs }, cost: { ...priceOf(offer.price, packs), days } }];
}

const priceOf = (price: number | null, packs: number): Pick<Cost, 'money' | 'unpriced'> =>
  price === null ? { money: 0, unpriced: 1 } : { money: price * packs, unpriced: 0 };

function daysFor({ atOnce, later }: Offer, packs: number): number | 'never' {
  if (packs <= atOnce) return 0;
  if (later === 'no') return 'never';
  return later.days ?? Number.POSITIVE_INFINITY;
}

/** All ways to get something, and of their costs those that no other is as good as. */
export interface Ways {
  readonly ways: readonly Way[];
  readonly costs: readonly Cost[];
}

type ByCount = Map<number, Ways>;
const [ofPieces, ofKits, ofAmounts] = [byBuyer<ByCount>(), byBuyer<ByCount>(), byBuyer<ByCount>()];

/** Worked out once for each number of a thing. */
function once(byCount: ByCount, count: number, work: () => readonly Way[]): Ways {
  const before = byCount.get(count);
  if (before !== undefined) return before;
  const ways = work();
  const found = { ways, costs: unbeatenCosts(ways.map(({ cost }) => cost)) };
  byCount.set(count, found);
  return found;
}

const noneYet = (): ByCount => new Map();

/** Pieces of a part, in whole packs. */
export const piecesOf = (scene: Scene, sku: string, pieces: number): Ways =>
  once(ofPieces(scene, sku, noneYet), pieces, () => {
    const part = known(scene.book.parts.get(sku), sku);
    return packsOf(scene, sku, part.price, Math.ceil(pieces / part.pack));
  });

export const kitsOf = (scene: Scene, sku: string, count: number): Ways =>
  once(ofKits(scene, sku, noneYet), count, () =>
    packsOf(scene, sku, known(scene.book.kits.get(sku), sku).price, count),
  );

/** An amount of a supply: packs that reach, none of them for nothing, or the shop's bulk. */
export const amountOf = (scene: Scene, sku: string, amount: number): Ways =>
  once(ofAmounts(scene, sku, noneYet), amount, () => waysToHold(scene, sku, amount));

function waysToHold(scene: Scene, sku: string, amount: number): readonly Way[] {
  const supply = known(scene.book.supplies.get(sku), sku);
  return packCounts(scene, supply, amount).flatMap((packs) => {
    const left = amount - heldIn(supply, packs);
    const rest = left > 0 ? bulkOf(scene, supply, left) : NOTHING;
    const bought = supply.packs.map((pack, at) => packsOf(scene, pack.sku, pack.price, packs[at] ?? 0));
    return rest === null ? [] : everyJoining([...bought, [rest]]);
  });
}

const heldIn = ({ packs }: Supply, counts: readonly number[]): number =>
  counts.reduce((total, count, at) => total + count * (packs[at]?.size ?? 0), 0);

/** What packs leave may be measured out, where the shop holds it in bulk and the question lets it. */
function bulkOf({ book, question }: Scene, supply: Supply, amount: number): Way | null {
  const bulk = question.supplies === 'bulk' ? book.shop?.bulk.find((one) => one.supply === supply.sku) : undefined;
  if (bulk === undefined) return null;
  const price = money(book, bulk.price);
  const cost = price === null ? priceOf(null, 1) : { money: multiplyDivide(price, amount, bulk.per), unpriced: 0 };
  return { packs: {}, cost: { ...cost, days: 0 } };
}

/** Counts of each pack of which none is for nothing: with one pack less, what they hold would not reach. */
function packCounts(scene: Scene, supply: Supply, amount: number): readonly (readonly number[])[] {
  const { packs } = supply;
  const least = packs.map(({ sku }) => (isAskedFor(scene, sku) ? 1 : 0));
  const all = packs.reduce<readonly (readonly number[])[]>(
    (lists, { size }, at) =>
      lists.flatMap((list) =>
        range(least[at] ?? 0, Math.max(least[at] ?? 0, Math.ceil(amount / size))).map((count) => [...list, count]),
      ),
    [[]],
  );
  return all.filter((counts) =>
    packs.every(({ size }, at) => (counts[at] ?? 0) <= (least[at] ?? 0) || heldIn(supply, counts) - size < amount),
  );
}

/** A pack or a kit that the question names and that is not at hand has to be bought. */
export const isAskedFor = ({ question: { wants, have } }: Scene, sku: string): boolean =>
  wants.use.includes(sku) && !have.some((one) => one.sku === sku);

export const range = (from: number, to: number): readonly number[] =>
  Array.from({ length: Math.max(0, to - from + 1) }, (_, at) => from + at);
