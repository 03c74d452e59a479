import { describe, expect, it } from 'vitest';
import { floorFor } from '../../src/supply/index.ts';
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
