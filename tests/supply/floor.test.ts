import { describe, expect, it } from 'vitest';
import { floorByLines, floorFor, floorTogether, shareFloorFor } from '../../src/supply/index.ts';
import { market, type Shelf } from './shelf.ts';

const floors = (shelf: Shelf, skus: readonly string[], amount = 1): (readonly [number, number])[] => {
  const shelves = market(shelf);
  return skus.map((sku) => {
    const { money, days } = floorFor(shelves, sku, amount);
    return [money, days];
  });
};

describe('floors', () => {
  it('kit: a thing is worth the share of the price that it has of what all of it costs alone', () => {
    // 100 for what costs 180 and 2 x 10 alone: nine tenths and one tenth, of which each B is half
    const shelf: Shelf = {
      parts: { A: { price: 180 }, B: { price: 10 } },
      kits: { K: { price: 100, gives: { A: 1, B: 2 } } },
      stock: { A: { onHand: 9 }, B: { onHand: 0, discontinued: true }, K: { lead: 3 } },
    };
    // one B is sold no more: one kit for its share of 10
    expect(floors(shelf, ['A', 'B'])).toEqual([
      [90, 0],
      [10, 3],
    ]);
    // three A: three kits; three B: two kits
    expect(floors(shelf, ['A', 'B'], 3)).toEqual([
      [270, 0],
      [20, 3],
    ]);
  });

  it('kit: evenly where nothing in it has a price of its own, rounded down', () => {
    const gone = { onHand: 0, discontinued: true };
    const shelf: Shelf = {
      parts: { A: {}, B: {} },
      kits: { K: { price: 101, gives: { A: 1, B: 1 } } },
      stock: { A: gone, B: gone },
    };
    expect(floors(shelf, ['A', 'B'])).toEqual([
      [50, Number.POSITIVE_INFINITY],
      [50, Number.POSITIVE_INFINITY],
    ]);
  });

  it('kit: an amount in it is worth what the pack that is cheapest by the amount makes of it', () => {
    // 100 of the oil are worth 6 by the large pack (8 by the small one), so half the price of what costs 106 alone
    const shelf: Shelf = {
      parts: { A: { price: 100 } },
      kits: { K: { price: 53, gives: { A: 1, OIL: 100 } } },
      supplies: { OIL: { meets: ['bath'], packs: { S: { size: 100, price: 8 }, L: { size: 250, price: 15 } } } },
      stock: { A: { onHand: 9 }, S: { onHand: 9 }, L: { onHand: 9 }, K: { onHand: 9 } },
    };
    expect([floors(shelf, ['A'])[0], floors(shelf, ['OIL'], 100)[0]]).toEqual([
      [50, 0],
      [3, 0],
    ]);
  });

  it('kit: what is in it and never sold by itself is worth nothing of it', () => {
    const shelf: Shelf = {
      parts: { A: { price: 40 } },
      kits: { K: { price: 100, gives: { A: 1, OIL: 20 } } },
      supplies: { OIL: { meets: ['bath'] } },
      stock: { A: { onHand: 0, discontinued: true }, K: { onHand: 9 } },
    };
    expect([floors(shelf, ['A'])[0], floors(shelf, ['OIL'], 20)[0]]).toEqual([
      [100, 0],
      [0, 0],
    ]);
  });

  it('packs: whole ones, the cheapest mix, the soonest of any', () => {
    const shelf: Shelf = {
      supplies: { OIL: { meets: ['bath'], packs: { S: { size: 100, price: 8 }, L: { size: 250, price: 15 } } } },
      stock: { S: { lead: 5 }, L: { lead: 2 } },
    };
    expect([100, 101, 350].map((amount) => floors(shelf, ['OIL'], amount)[0])).toEqual([
      [8, 2],
      [15, 2],
      [23, 2],
    ]);
  });

  it('none: what cannot be had costs and waits without end', () => {
    const shelf: Shelf = { parts: { P: { price: 5 } }, stock: { P: { onHand: 0 } } };
    expect(floors(shelf, ['P', 'X'])).toEqual([
      [Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY],
      [Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY],
    ]);
  });
});

const NEVER = Number.POSITIVE_INFINITY;

describe('floors within days, and of priced offers alone', () => {
  // A from the shelf has no price; in the kit it comes in 2 days, from the works in 5
  const shelf: Shelf = {
    parts: { A: {}, B: { price: 40 } },
    kits: { K: { price: 60, gives: { A: 1, B: 1 } } },
    stock: { A: { onHand: 1, lead: 9 }, B: { lead: 5 }, K: { lead: 2 } },
  };
  const within = (sku: string, amount: number, days: number, priced: boolean): readonly number[] => {
    const one = market(shelf);
    const { money, days: wait } = floorFor(one, sku, amount, { days, priced });
    // the same when it is asked once more
    expect(floorFor(one, sku, amount, { days, priced })).toEqual({ money, days: wait });
    return [money, wait];
  };

  it('days: only what comes within them, and so many of it', () => {
    expect([0, 1, 2, 5].map((days) => within('B', 1, days, false))).toEqual([
      [NEVER, NEVER],
      [NEVER, NEVER],
      [60, 2],
      [40, 2],
    ]);
    // one is on the shelf; two come with the kit after 2 days, for nothing of its price
    expect([0, 2].map((days) => within('A', 2, days, false))).toEqual([
      [NEVER, NEVER],
      [0, 0],
    ]);
  });

  it('prices: without what has none it is the kit, all of whose price is for B', () => {
    expect([within('A', 1, NEVER, false), within('A', 1, NEVER, true), within('A', 1, 1, true)]).toEqual([
      [0, 0],
      [0, 2],
      [NEVER, NEVER],
    ]);
  });

  it('memory: one market asked for all of these says the same', () => {
    const one = market(shelf);
    const asked = [
      [0, false],
      [2, false],
      [5, false],
      [NEVER, false],
      [5, true],
    ] as const;
    for (const sku of ['A', 'B'])
      for (const amount of [1, 2])
        for (const [days, priced] of [...asked, ...asked]) {
          expect(floorFor(one, sku, amount, { days, priced })).toEqual(
            floorFor(market(shelf), sku, amount, { days, priced }),
          );
          expect(shareFloorFor(one, sku, amount, { days, priced })).toEqual(
            shareFloorFor(market(shelf), sku, amount, { days, priced }),
          );
        }
    expect(floorFor(one, 'B', 1)).toEqual({ money: 40, days: 2 });
  });
});

describe('shares', () => {
  const shelf: Shelf = {
    parts: { A: { price: 180 }, B: { price: 9, pack: 2 } },
    kits: { K: { price: 100, gives: { A: 1, B: 2 } } },
    supplies: { OIL: { meets: ['bath'], packs: { S: { size: 100, price: 8 }, L: { size: 250, price: 15 } } } },
    stock: { A: { lead: 1 }, B: { lead: 4 }, K: { lead: 3 }, S: { lead: 5 }, L: { lead: 2 } },
  };
  const shares = (sku: string, amount: number, days = NEVER): readonly number[] => {
    const { money, days: wait } = shareFloorFor(market(shelf), sku, amount, { days, priced: false });
    return [money, wait];
  };

  it('parts of packs at their price, the cheapest by the piece, the soonest of any', () => {
    // 250 for 15: 6 for 100; after 2 days that pack, after 5 both
    expect([shares('OIL', 100), shares('OIL', 100, 2), shares('OIL', 100, 1)]).toEqual([
      [6, 2],
      [6, 2],
      [NEVER, NEVER],
    ]);
    // the kit is 100 for what costs 180 and 9 alone: 95 for A and 4 for two B, rounded down
    expect([shares('A', 2), shares('B', 1), shares('B', 3, 3)]).toEqual([
      [190, 1],
      [2, 3],
      [6, 3],
    ]);
  });

  it('none: what nobody gives', () => {
    expect(shares('X', 1)).toEqual([NEVER, NEVER]);
  });
});

describe('floors of several needs together', () => {
  const shelf: Shelf = {
    parts: { A: { price: 80 }, B: { price: 50 }, C: { price: 30 }, D: {} },
    kits: { K: { price: 100, gives: { A: 1, B: 1 } } },
    stock: {
      A: { lead: 5 },
      B: { onHand: 9 },
      C: { onHand: 2, discontinued: true },
      K: { onHand: 1, lead: 7 },
      D: { onHand: 1 },
    },
  };
  const one = (sku: string, amount = 1) => [{ sku, amount }];
  const together = (needs: Parameters<typeof floorTogether>[1], within?: Parameters<typeof floorTogether>[2]): number =>
    floorTogether(market(shelf), needs, within);

  it('a kit may serve several; apart they cost more', () => {
    expect([together([one('A')]), together([one('B')]), together([one('A'), one('B')])]).toEqual([80, 50, 100]);
    // two of each: the kit twice, or once with singles: 200, 230
    expect(together([one('A', 2), one('B', 2)])).toBe(200);
    expect([together([]), together([one('X')]), together([one('A'), one('X')])]).toEqual([0, NEVER, NEVER]);
  });

  it('a kit gives of each thing as much as it has of it', () => {
    const two: Shelf = {
      parts: { A: { price: 80 }, B: { price: 50 } },
      kits: { J: { price: 60, gives: { A: 1, B: 2 } } },
    };
    const least = (needs: Parameters<typeof floorTogether>[1]): number => floorTogether(market(two), needs);
    // two B: the kit, or 100; three: the kit and one more
    expect([least([one('B', 2)]), least([one('B', 3)]), least([one('A', 2), one('B', 2)])]).toEqual([60, 110, 120]);
  });

  it('alternatives: the cheapest of them, each in its own number', () => {
    const either = [...one('A'), ...one('C', 2)];
    expect([together([either]), together([either, one('B')]), together([[...one('A'), ...one('C', 3)]])]).toEqual([
      60, 100, 80,
    ]);
    // each need by itself, not one of them: one A and two C
    expect(together([one('A'), one('C', 2)])).toBe(140);
    // two C are there, no more
    expect([together([one('C', 2)]), together([one('C', 3)])]).toEqual([60, NEVER]);
  });

  it('within days, and of priced offers alone', () => {
    const both = [one('A'), one('B')];
    const at = (days: number, priced: boolean): number => together(both, { days, priced });
    expect([at(0, false), at(5, false), at(NEVER, true)]).toEqual([100, 100, 100]);
    // a second A comes with the kit after 7 days, by itself after 5
    const two = [one('A', 2), one('B')];
    expect([0, 5, 7].map((days) => together(two, { days, priced: false }))).toEqual([NEVER, 180, 180]);
    expect([together([one('D')]), together([one('D')], { days: NEVER, priced: true })]).toEqual([0, NEVER]);
  });

  it('memory: one market asked for all of these says the same', () => {
    const asked: Parameters<typeof floorTogether>[1][] = [
      [[...one('A'), ...one('C', 2)]],
      [one('A'), one('C', 2)],
      [one('A')],
      [one('A', 2)],
      [one('B')],
      [one('A'), one('B')],
    ];
    const shared = market(shelf);
    for (const needs of [...asked, ...asked])
      for (const days of [0, 5, NEVER])
        for (const priced of [false, true])
          expect(floorTogether(shared, needs, { days, priced })).toBe(together(needs, { days, priced }));
    for (const needs of asked) expect(floorTogether(shared, needs)).toBe(together(needs));
  });
});

describe('floors by lines without a price', () => {
  const shelf: Shelf = {
    parts: { A: { price: 80 }, B: { price: 50 }, D: {} },
    kits: { KA: { gives: { A: 1 } }, KB: { gives: { B: 1 } } },
    stock: { KA: { onHand: 2, discontinued: true }, KB: { lead: 4 }, A: { onHand: 9 }, B: { onHand: 9 } },
  };
  const one = (sku: string, amount = 1) => [{ sku, amount }];
  const lines = (
    needs: Parameters<typeof floorByLines>[1],
    within?: Parameters<typeof floorByLines>[2],
  ): readonly number[] => floorByLines(market(shelf), needs, within);

  it('from none up to as many as lower the cost', () => {
    expect([lines([one('A')]), lines([one('A'), one('B')])]).toEqual([
      [80, 0],
      [130, 50, 0],
    ]);
    // two of a thing from one number are one line; of three the shelf has two, and a third has a price
    expect([lines([one('B', 3)]), lines([one('A', 2)]), lines([one('A', 3)])]).toEqual([
      [150, 0],
      [160, 0],
      [240, 80],
    ]);
  });

  it('none: what has no price at all costs nothing with a line, and cannot be had without', () => {
    expect([lines([one('D')]), lines([one('D'), one('A')]), lines([]), lines([one('X')])]).toEqual([
      [NEVER, 0],
      [NEVER, 80, 0],
      [0],
      [NEVER],
    ]);
  });

  it('within days, and of priced offers alone', () => {
    const both = [one('A'), one('B')];
    expect(lines(both, { days: 0, priced: false })).toEqual([130, 50]);
    expect(lines(both, { days: 4, priced: false })).toEqual([130, 50, 0]);
    expect(lines(both, { days: 4, priced: true })).toEqual([130]);
  });

  it('memory: beside what they cost together, one market says the same of both', () => {
    const shared = market(shelf);
    const both = [one('A'), one('B')];
    for (let again = 0; again < 2; again++)
      for (const needs of [both, [one('A')], [[...one('A'), ...one('B')]]]) {
        expect(floorTogether(shared, needs)).toBe(floorTogether(market(shelf), needs));
        expect(floorByLines(shared, needs)).toEqual(lines(needs));
        expect(floorByLines(shared, needs, { days: 0, priced: true })).toEqual(lines(needs, { days: 0, priced: true }));
      }
  });
});
