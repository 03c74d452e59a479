import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { canBeHad, floorFor, type Purchase, purchases } from '../../src/supply/index.ts';
import { separateDemands } from '../../src/supply/separate.ts';
import { hold } from '../laws/hold.ts';
import { everyWay, firstOf, type Way } from './brute-force.ts';
import { atHand, demand, type Job, market, policy, type Shelf } from './shelf.ts';

const upTo = (most: number): fc.Arbitrary<number> => fc.integer({ min: 0, max: most });
const maybe = <T>(value: fc.Arbitrary<T>): fc.Arbitrary<T | undefined> => fc.option(value, { nil: undefined, freq: 6 });
/** Without the entries that are undefined. */
const present = <T extends object>(value: T): { [Key in keyof T]?: Exclude<T[Key], undefined> } =>
  Object.fromEntries(Object.entries(value).filter(([, one]) => one !== undefined)) as {
    [Key in keyof T]?: Exclude<T[Key], undefined>;
  };

const stockRow = fc.record({
  onHand: upTo(3),
  reserved: upTo(1),
  lead: fc.oneof({ weight: 4, arbitrary: fc.integer({ min: 1, max: 3 }) }, fc.constantFrom(null, 'unknown' as const)),
  discontinued: fc.integer({ min: 0, max: 9 }).map((die) => die === 0),
});
const part = fc
  .record({ price: maybe(fc.integer({ min: 1, max: 9 })), pack: fc.constantFrom(1, 1, 1, 2) })
  .map(present);
const kit = fc
  .record({
    price: maybe(fc.integer({ min: 1, max: 14 })),
    gives: fc
      .record({
        A: maybe(fc.integer({ min: 1, max: 2 })),
        B: maybe(fc.integer({ min: 1, max: 2 })),
        OIL: maybe(fc.constant(20)),
      })
      .map(present)
      .filter((gives) => Object.keys(gives).length > 0),
  })
  .map(({ price, gives }) => ({
    gives: gives as Readonly<Record<string, number>>,
    ...(price === undefined ? {} : { price }),
  }));
const pack = (size: number) =>
  maybe(fc.integer({ min: 1, max: 9 })).map((price) => ({ size, ...(price === undefined ? {} : { price }) }));

interface Case {
  readonly shelf: Shelf;
  readonly job: Job;
  readonly held: NonNullable<Parameters<typeof atHand>[0]>;
  readonly useKits: readonly string[];
  readonly bulk: boolean;
}

/** Three parts, two kits, two oils; a row of the stock file for most of them; a job and what is at hand. */
const cases: fc.Arbitrary<Case> = fc.record({
  shelf: fc.record({
    parts: fc.record({ A: part, B: part, C: part }),
    kits: fc.record({ K: kit, L: kit }),
    supplies: fc.record({
      OIL: fc.record({
        meets: fc.constantFrom(['bath'], ['bath', 'assembly']),
        packs: fc.record({ 'OIL-S': pack(30), 'OIL-L': pack(80) }),
      }),
      WAX: fc.record({
        meets: fc.constantFrom(['assembly'], ['bath', 'assembly']),
        packs: fc.record({ 'WAX-S': pack(25) }),
      }),
    }),
    stock: fc
      .record({
        A: maybe(stockRow),
        B: maybe(stockRow),
        C: maybe(stockRow),
        K: maybe(stockRow),
        L: maybe(stockRow),
        'OIL-S': maybe(stockRow),
        'OIL-L': maybe(stockRow),
        'WAX-S': maybe(stockRow),
      })
      .map((rows) => present(rows) as NonNullable<Shelf['stock']>),
    bulk: fc.constantFrom<NonNullable<Shelf['bulk']>>(
      {},
      { OIL: { price: 1, per: 4 } },
      { OIL: { price: 3, per: 7 }, WAX: { price: 2, per: 10 } },
      { OIL: { per: 1 } },
    ),
  }),
  job: fc.record({
    pieces: fc.record({ A: upTo(2), C: upTo(1) }),
    fresh: fc.record({ A: upTo(1), B: upTo(2) }),
    supplies: fc.record({ bath: fc.constantFrom(0, 15, 40), assembly: fc.constantFrom(0, 0, 20) }),
  }),
  held: fc.record({
    fresh: fc.record({ A: fc.constantFrom(0, 0, 1) }),
    used: fc.record({ A: fc.constantFrom(0, 0, 1), B: fc.constantFrom(0, 1) }),
    supplies: fc.record({ OIL: fc.constantFrom(0, 0, 20) }),
    kits: fc.constantFrom<Record<string, number>>({}, {}, {}, { K: 1 }),
  }),
  useKits: fc.constantFrom<readonly string[]>([], [], [], ['L']),
  bulk: fc.constantFrom(false, false, true),
});

const vectorOf = ({ parts, supplies, unpriced, days }: Purchase): string => `${parts + supplies} ${unpriced} ${days}`;
const vectorOfWay = ({ cost, unpriced, days }: Way): string => `${cost} ${unpriced} ${days}`;
const packsOf = ({ bought }: Purchase): Record<string, number> =>
  Object.fromEntries(bought.map(({ offer, packs }) => [offer.sku, packs]));

/** The same with everything tied together by a kit that nobody can have: nothing is bought apart. */
const tied = (one: Case): Case => ({
  ...one,
  shelf: {
    ...one.shelf,
    kits: { ...one.shelf.kits, TIE: { price: 1, gives: { A: 1, B: 1, C: 1, OIL: 1, WAX: 1, ...tiedKits(one) } } },
    stock: { ...one.shelf.stock, TIE: { onHand: 0, discontinued: true } },
  },
});
/** A wanted kit is tied by what is in it. */
const tiedKits = ({ shelf, useKits }: Case): Readonly<Record<string, number>> =>
  Object.assign({}, ...useKits.map((sku) => shelf.kits?.[sku]?.gives ?? {}));

const buy = ({ shelf, job, held, useKits, bulk }: Case): readonly Purchase[] =>
  purchases(market(shelf), demand(job), atHand(held), policy({ useKits, bulk }));

describe('purchases', () => {
  it('law: exactly the unbeaten vectors in (cost, lines without a price, days), each once', () => {
    hold('purchases equal brute force', 1500, cases, (one) => {
      const found = buy(one).map(vectorOf);
      const expected = everyWay(one.shelf, one.job, one.held, one).map(vectorOfWay);
      expect([...found].sort()).toEqual([...new Set(expected)].sort());
    });
  });

  it('law: a number can be had by itself where brute force finds a way to it', () => {
    const alone = fc.tuple(cases, fc.constantFrom('A', 'B', 'C'), fc.integer({ min: 0, max: 4 }), upTo(4));
    hold('can be had', 1500, alone, ([{ shelf, held }, sku, fresh, any]) => {
      const job: Job = { pieces: { [sku]: any }, fresh: { [sku]: fresh }, supplies: {} };
      const expected = everyWay(shelf, job, held, { useKits: [], bulk: false }).length > 0;
      expect(canBeHad(market(shelf), demand(job), atHand(held), policy())).toBe(expected);
    });
  });

  it('law: whatever is needed and wanted, it can be had where brute force finds a way', () => {
    hold('can be had, all of it', 400, cases, ({ shelf, job, held, useKits, bulk }) => {
      const expected = everyWay(shelf, job, held, { useKits, bulk }).length > 0;
      expect(canBeHad(market(shelf), demand(job), atHand(held), policy({ useKits, bulk }))).toBe(expected);
    });
  });

  it('law: of equal purchases the one with the fewest packs, then the first by the list of (SKU, packs)', () => {
    hold('purchases are canonical', 1500, cases, (one) => {
      const ways = everyWay(one.shelf, one.job, one.held, one);
      for (const purchase of buy(one)) {
        const equal = ways.filter((way) => vectorOfWay(way) === vectorOf(purchase));
        expect(packsOf(purchase)).toEqual(firstOf(equal)?.packs);
      }
    });
  });

  it('law: needs bought apart and joined come to the same as all bought at once', () => {
    hold('separate demands equal the whole', 1000, cases, (one) => {
      const [apart, whole] = [buy(one), buy(tied(one))];
      const whatAndHow = (way: Purchase): string => `${vectorOf(way)} ${JSON.stringify(packsOf(way))}`;
      expect(apart.map(whatAndHow).sort()).toEqual(whole.map(whatAndHow).sort());
      const groups = (of: Case): number => separateDemands(market(of.shelf), demand(of.job), policy(of)).length;
      expect(groups(tied(one))).toBeLessThanOrEqual(groups(one));
    });
  });

  it('law: nothing remembered shows: the same market asked twice, and after other jobs, says the same', () => {
    hold('memory does not show', 200, fc.tuple(cases, cases), ([one, other]) => {
      const shared = market(one.shelf);
      const ask = ({ job, held, useKits, bulk }: Case): string[] =>
        purchases(shared, demand(job), atHand(held), policy({ useKits, bulk })).map(
          (purchase) => `${vectorOf(purchase)} ${JSON.stringify(packsOf(purchase))}`,
        );
      const first = ask(one);
      ask({ ...other, shelf: one.shelf });
      expect(ask(one)).toEqual(first);
      expect(first).toEqual(buy(one).map((purchase) => `${vectorOf(purchase)} ${JSON.stringify(packsOf(purchase))}`));
    });
  });

  it('law: one pack more on the shelf never makes a way dearer, later or go', () => {
    const skus = ['A', 'B', 'C', 'K', 'L', 'OIL-S', 'OIL-L', 'WAX-S'];
    hold('more stock is never worse', 400, fc.tuple(cases, fc.constantFrom(...skus)), ([one, sku]) => {
      const row = one.shelf.stock?.[sku];
      if (!row) return;
      const stock = { ...one.shelf.stock, [sku]: { ...row, onHand: (row.onHand ?? 0) + 1 } };
      const after = buy({ ...one, shelf: { ...one.shelf, stock } });
      for (const way of buy(one)) {
        const met = after.some(
          (better) =>
            better.parts + better.supplies <= way.parts + way.supplies &&
            better.unpriced <= way.unpriced &&
            better.days <= way.days,
        );
        expect(met).toBe(true);
      }
    });
  });

  it('law: floors add up to no more than any purchase costs, and no thing comes sooner than its floor', () => {
    const nothingAtHand = cases.map((one): Case => ({ ...one, held: {}, useKits: [], bulk: false }));
    hold('floors are floors', 800, nothingAtHand, (one) => {
      const shelves = market(one.shelf);
      const { pieces, supplies } = demand(one.job);
      const floors = [...pieces].flatMap(([sku, { fresh, any }]) =>
        fresh + any > 0 ? [floorFor(shelves, sku, fresh + any)] : [],
      );
      const needs = [...supplies].filter(([, amount]) => amount > 0);
      // a product that serves two needs shares its packs: then only one need is certain
      const products = new Set(needs.flatMap(([id]) => shelves.meeting.get(id) ?? []));
      const apart = needs.reduce((count, [id]) => count + (shelves.meeting.get(id)?.length ?? 0), 0) === products.size;
      const amounts = (apart ? needs : needs.slice(0, 1)).map(([id, amount]) =>
        (shelves.meeting.get(id) ?? []).map((sku) => floorFor(shelves, sku, amount)),
      );
      const least = (of: readonly number[]): number => Math.min(...of);
      const money = [
        ...floors.map((floor) => floor.money),
        ...amounts.map((some) => least(some.map((floor) => floor.money))),
      ];
      const days = [
        ...floors.map((floor) => floor.days),
        ...amounts.map((some) => least(some.map((floor) => floor.days))),
      ];
      for (const way of buy(one)) {
        expect(money.reduce((sum, part) => sum + part, 0)).toBeLessThanOrEqual(way.parts + way.supplies);
        expect(Math.max(0, ...days)).toBeLessThanOrEqual(way.days);
      }
    });
  });
});
