import { describe, expect, it } from 'vitest';
import { canBeHad, comparePurchases, type Purchase, purchases } from '../../src/supply/index.ts';
import { separateDemands } from '../../src/supply/separate.ts';
import { atHand, demand, type Job, market, policy, type Shelf, waysToBuy } from './shelf.ts';

const shelf: Shelf = {
  parts: { A: { price: 10 }, B: { price: 30 }, C: { price: 5 }, D: { price: 6 } },
  kits: { K: { price: 12, gives: { A: 1, B: 1 } }, L: { price: 99, gives: { C: 1, OIL: 40 } } },
  supplies: {
    OIL: { meets: ['bath', 'damper'], packs: { S: { size: 100, price: 8 }, T: { size: 250, price: 15 } } },
    WAX: { meets: ['bath'], packs: { W: { size: 100, price: 9 } } },
  },
};

describe('demands bought apart', () => {
  const groups = (job: Job, more: Parameters<typeof policy>[0] = {}): string[] =>
    separateDemands(market(shelf), demand(job), policy(more)).map(({ demand: part, policy: how }) =>
      [...part.pieces.keys(), ...part.supplies.keys(), ...how.useKits, ...how.useSupplies, ...how.usePacks].join(' '),
    );

  it('what a kit, or a product, may serve together is one; the rest is apart, in the order of the needs', () => {
    expect(groups({ pieces: { D: 1, A: 1, C: 1, B: 1 } })).toEqual(['D', 'A B', 'C']);
    expect(groups({ pieces: { D: 1, C: 1 }, supplies: { bath: 9, damper: 9 } })).toEqual(['D', 'C bath damper']);
    expect(groups({ pieces: { D: 1 }, supplies: { bath: 0, damper: 9 } })).toEqual(['D', 'damper']);
    expect(groups({})).toEqual([]);
  });

  it('what must be used is with what it serves, or by itself', () => {
    expect(groups({ pieces: { D: 1, A: 1, C: 1 } }, { useKits: ['K'] })).toEqual(['D', 'A K', 'C']);
    expect(groups({ pieces: { D: 1 } }, { useKits: ['K'] })).toEqual(['D', 'K']);
    expect(groups({ pieces: { D: 1 }, supplies: { bath: 9 } }, { useSupplies: ['WAX'], usePacks: ['T'] })).toEqual([
      'D',
      'bath WAX T',
    ]);
  });

  it('a wanted supply and a wanted pack at once: both serve', () => {
    const job = { supplies: { bath: 90, damper: 90 } };
    expect(waysToBuy(shelf, job, {}, { useSupplies: ['WAX'], usePacks: ['T'] })).toEqual(['1 T, 1 W = 24, ? days']);
    expect(waysToBuy(shelf, job, {}, { usePacks: ['T'] })).toEqual(['1 T = 15, ? days']);
    // what is in a wanted pack serves, though another would be cheaper
    const cheap = {
      ...shelf,
      supplies: { ...shelf.supplies, WAX: { meets: ['bath'], packs: { W: { size: 100, price: 1 } } } },
    };
    expect(waysToBuy(cheap, { supplies: { bath: 300 } }, {}, { usePacks: ['T'] })).toEqual(['1 S, 1 T = 23, ? days']);
  });
});

describe('what can be had', () => {
  const can = (job: Job, more: Parameters<typeof policy>[0] = {}, held: Parameters<typeof atHand>[0] = {}): boolean =>
    canBeHad(
      market({ ...shelf, stock: { D: { onHand: 1 }, K: { onHand: 1 }, A: { onHand: 0 }, W: { onHand: 0 } } }),
      demand(job),
      atHand(held),
      policy(more),
    );

  it('every piece and every supply, not the first alone', () => {
    expect([can({ pieces: { C: 1 } }), can({ pieces: { D: 1 } }), can({ pieces: { D: 2 } })]).toEqual([
      true,
      true,
      false,
    ]);
    expect([can({ pieces: { C: 1, D: 1 } }), can({ pieces: { C: 1, D: 2 } })]).toEqual([true, false]);
    expect([
      can({ pieces: { C: 1 }, supplies: { bath: 9 } }),
      can({ pieces: { C: 1 }, supplies: { unheard: 9 } }),
    ]).toEqual([true, false]);
    expect([can({ pieces: { C: 1, D: 2 }, supplies: { bath: 9, damper: 9 } }), can({})]).toEqual([false, true]);
  });

  it('from the shelf, from kits, and from kits at hand', () => {
    expect([
      can({ pieces: { A: 1 } }),
      can({ pieces: { A: 2 } }),
      can({ pieces: { A: 2 } }, {}, { kits: { K: 1 } }),
    ]).toEqual([true, false, true]);
  });

  it('from a kit as many as it has of that number, wherever it is listed', () => {
    const gone = { onHand: 0, discontinued: true };
    const one = market({
      parts: { A: {}, B: {} },
      kits: { M: { price: 9, gives: { A: 3, B: 1 } } },
      stock: { A: gone, B: gone, M: { onHand: 2, discontinued: true } },
    });
    const has = (sku: string, count: number): boolean =>
      canBeHad(one, demand({ pieces: { [sku]: count } }), atHand(), policy());
    expect([has('A', 6), has('A', 7), has('B', 2), has('B', 3)]).toEqual([true, false, true, false]);
  });

  it('with what must be used', () => {
    expect(can({ pieces: { C: 1 } }, { useKits: ['K'] })).toBe(true);
    // no wax is there
    expect(can({ pieces: { C: 1 } }, { useSupplies: ['WAX'] })).toBe(false);
    expect(can({ pieces: { C: 1 } }, { useKits: ['K'], useSupplies: ['WAX'] })).toBe(false);
    expect(can({ pieces: { C: 1 } }, { usePacks: ['W'], useKits: ['K'] })).toBe(false);
  });
});

describe('order of equal purchases', () => {
  const one = (job: Job): Purchase => {
    const [only] = purchases(market(shelf), demand(job), atHand(), policy());
    if (!only) throw new Error('no purchase');
    return only;
  };
  /** So many packs of numbers, kits taken, and which product serves which specification. */
  const made = (
    bought: Readonly<Record<string, number>>,
    taken: Readonly<Record<string, number>> = {},
    products: Readonly<Record<string, string>> = {},
  ): Purchase => {
    const base = one({ pieces: { D: 1 } });
    const { offers } = market(shelf);
    return {
      ...base,
      bought: Object.entries(bought).flatMap(([sku, packs]) => {
        const offer = offers.get(sku);
        return offer ? [{ offer, packs, days: 0 }] : [];
      }),
      takenKits: new Map(Object.entries(taken)),
      products: new Map(Object.entries(products)),
    };
  };
  /** Each comes before the next, and is equal to itself. */
  const inThisOrder = (...all: readonly Purchase[]): void => {
    for (const [at, first] of all.entries())
      for (const [after, second] of all.entries())
        expect(Math.sign(comparePurchases(first, second)), `${at} and ${after}`).toBe(Math.sign(at - after));
  };

  it('fewest packs, then the numbers that come first, then fewest of these', () => {
    inThisOrder(
      made({}),
      made({ B: 1 }),
      made({ A: 1, B: 1 }),
      made({ A: 1, C: 1 }),
      made({ A: 2 }),
      made({ B: 1, C: 1 }),
      made({ A: 1, B: 1, C: 1 }),
      made({ A: 1, B: 2 }),
      made({ A: 2, B: 1 }),
      made({ A: 3 }),
    );
  });

  it('then fewest kits taken and the numbers of these, whatever order they are listed in', () => {
    const bought = { A: 1 };
    inThisOrder(
      made(bought),
      made(bought, { L: 1 }),
      made(bought, { L: 1, K: 1 }),
      made(bought, { K: 2 }),
      made({ B: 1 }),
      made({ B: 1 }, { K: 1 }),
    );
    expect(comparePurchases(made(bought, { L: 1, K: 1 }), made(bought, { K: 1, L: 1 }))).toBe(0);
  });

  it('then the products by specification, whatever order they are listed in', () => {
    const products = (bath: string, damper: string): Purchase => made({ A: 1 }, {}, { bath, damper });
    inThisOrder(products('OIL', 'OIL'), products('OIL', 'WAX'), products('WAX', 'OIL'));
    expect(comparePurchases(products('OIL', 'WAX'), made({ A: 1 }, {}, { damper: 'WAX', bath: 'OIL' }))).toBe(0);
  });
});
