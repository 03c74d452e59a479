import type { BuyingPolicy } from '../../src/supply/index.ts';
import type { Job, Shelf } from './shelf.ts';

/** One way to buy, as plain as can be: packs bought by SKU, with what they come to. */
export interface Way {
  readonly packs: Readonly<Record<string, number>>;
  readonly cost: number;
  readonly unpriced: number;
  readonly days: number;
}
interface Sale {
  readonly sku: string;
  readonly gives: Readonly<Record<string, number>>;
  readonly price: number | null;
  readonly kitsAtHand: number;
}
interface Held {
  readonly fresh?: Readonly<Record<string, number>>;
  readonly used?: Readonly<Record<string, number>>;
  readonly supplies?: Readonly<Record<string, number>>;
  readonly kits?: Readonly<Record<string, number>>;
}

/** Every way to buy that no other beats, by trying every number of every pack; model.md, section 6. */
export function everyWay(
  shelf: Shelf,
  job: Job,
  held: Held,
  wanted: Pick<BuyingPolicy, 'useKits' | 'bulk'>,
): readonly Way[] {
  const all = productChoices(shelf, job).flatMap((amounts) =>
    waysWith(shelf, needsOf(job, amounts, held), held, wanted),
  );
  const beaten = (way: Way): boolean =>
    all.some(
      (other) =>
        other.cost <= way.cost &&
        other.unpriced <= way.unpriced &&
        other.days <= way.days &&
        (other.cost < way.cost || other.unpriced < way.unpriced || other.days < way.days),
    );
  return all.filter((way) => !beaten(way));
}

/** Of ways that come to the same: fewest packs, then the list of (SKU, packs) element by element. */
export function firstOf(ways: readonly Way[]): Way | undefined {
  const count = ({ packs }: Way): number => Object.values(packs).reduce((sum, one) => sum + one, 0);
  const list = ({ packs }: Way): (string | number)[] =>
    Object.entries(packs)
      .sort(([a], [b]) => (a < b ? -1 : 1))
      .flat();
  return [...ways].sort((a, b) => {
    if (count(a) !== count(b)) return count(a) - count(b);
    const [mine, theirs] = [list(a), list(b)];
    const at = mine.findIndex((value, place) => value !== theirs[place]);
    return at < 0 ? 0 : (mine[at] ?? '') < (theirs[at] ?? '') ? -1 : 1;
  })[0];
}

/** What each product must give, for every choice of one product for each specification. */
function productChoices(shelf: Shelf, job: Job): Record<string, number>[] {
  let choices: Record<string, number>[] = [{}];
  for (const [specification, amount] of Object.entries(job.supplies ?? {})) {
    if (amount === 0) continue;
    const products = Object.entries(shelf.supplies ?? {}).filter(([, { meets }]) => meets.includes(specification));
    choices = choices.flatMap((chosen) => products.map(([sku]) => ({ ...chosen, [sku]: (chosen[sku] ?? 0) + amount })));
  }
  return choices;
}

/** What is still to be had once what is at hand is used; used pieces only where used ones may go. */
function needsOf(job: Job, amounts: Readonly<Record<string, number>>, held: Held): Record<string, number> {
  const left: Record<string, number> = {};
  for (const [sku, amount] of Object.entries(amounts)) left[sku] = amount - (held.supplies?.[sku] ?? 0);
  for (const sku of new Set([...Object.keys(job.pieces ?? {}), ...Object.keys(job.fresh ?? {})])) {
    const any = Math.max(0, (job.pieces?.[sku] ?? 0) - (held.used?.[sku] ?? 0));
    left[sku] = any + (job.fresh?.[sku] ?? 0) - (held.fresh?.[sku] ?? 0);
  }
  return left;
}

function waysWith(
  shelf: Shelf,
  needs: Readonly<Record<string, number>>,
  held: Held,
  wanted: Pick<BuyingPolicy, 'useKits' | 'bulk'>,
): Way[] {
  const ways: Way[] = [];
  const sales = salesOf(shelf, held);
  const given = (sku: string, packs: readonly number[]): number =>
    sales.reduce((sum, { gives }, at) => sum + (packs[at] ?? 0) * (gives[sku] ?? 0), 0);
  const tryAll = (at: number, packs: readonly number[]): void => {
    const sale = sales[at];
    if (!sale) {
      const short = Object.entries(needs).flatMap(([sku, need]): [string, number][] =>
        need > given(sku, packs) ? [[sku, need - given(sku, packs)]] : [],
      );
      const doses = short.map(([sku, amount]) => (wanted.bulk ? doseOf(shelf, sku, amount) : null));
      const way = wayOf(shelf, sales, packs);
      if (way && doses.every((dose) => dose !== null)) ways.push(doses.reduce(withDose, way));
      return;
    }
    const forced = wanted.useKits.includes(sale.sku) ? 1 : 0;
    const enough = Math.max(
      forced,
      ...Object.entries(sale.gives).map(([sku, amount]) => Math.ceil(Math.max(0, needs[sku] ?? 0) / amount)),
    );
    for (let count = forced; count <= enough; count++) tryAll(at + 1, [...packs, count]);
  };
  tryAll(0, []);
  return ways;
}

/** What a dose from the drum costs, rounded half up, and whether it has a price; null where there is no drum. */
function doseOf(shelf: Shelf, sku: string, amount: number): Dose | null {
  const drum = shelf.bulk?.[sku];
  if (!drum) return null;
  return {
    cost: drum.price === undefined ? 0 : Math.floor((2 * amount * drum.price + drum.per) / (2 * drum.per)),
    unpriced: drum.price === undefined ? 1 : 0,
  };
}
type Dose = Pick<Way, 'cost' | 'unpriced'>;
const withDose = (way: Way, dose: Dose): Way => ({
  ...way,
  cost: way.cost + dose.cost,
  unpriced: way.unpriced + dose.unpriced,
});

/** Kits at hand are taken first; what is needed beyond is bought. */
function wayOf(shelf: Shelf, sales: readonly Sale[], packs: readonly number[]): Way | null {
  let [cost, unpriced, days] = [0, 0, 0];
  const bought: Record<string, number> = {};
  for (const [at, { sku, price, kitsAtHand }] of sales.entries()) {
    const count = Math.max(0, (packs[at] ?? 0) - kitsAtHand);
    if (count === 0) continue;
    const wait = waitFor(shelf, sku, count);
    if (wait === null) return null;
    bought[sku] = count;
    cost += count * (price ?? 0);
    unpriced += price === null ? 1 : 0;
    days = Math.max(days, wait);
  }
  return { packs: bought, cost, unpriced, days };
}

function waitFor(shelf: Shelf, sku: string, count: number): number | null {
  const row = shelf.stock?.[sku];
  if (!row) return Number.POSITIVE_INFINITY;
  if (count <= (row.onHand ?? 0) - (row.reserved ?? 0)) return 0;
  if (row.discontinued || row.lead === null || row.lead === undefined) return null;
  return row.lead === 'unknown' ? Number.POSITIVE_INFINITY : row.lead;
}

/** Everything that is sold, also what the shop holds in bulk. */
const salesOf = (shelf: Shelf, held: Held): readonly Sale[] => [
  ...Object.entries(shelf.parts ?? {}).map(([sku, { price, pack }]) => ({
    sku,
    gives: { [sku]: pack ?? 1 },
    price: price ?? null,
    kitsAtHand: 0,
  })),
  ...Object.entries(shelf.kits ?? {}).map(([sku, { price, gives }]) => ({
    sku,
    gives,
    price: price ?? null,
    kitsAtHand: held.kits?.[sku] ?? 0,
  })),
  ...Object.entries(shelf.supplies ?? {}).flatMap(([supply, { packs }]) =>
    Object.entries(packs ?? {}).map(([sku, { size, price }]) => ({
      sku,
      gives: { [supply]: size },
      price: price ?? null,
      kitsAtHand: 0,
    })),
  ),
];
