import { describe, expect, it } from 'vitest';
import { minor } from '../../src/quantity/index.ts';
import { daysFor, mostWithin, onShelf, purchases } from '../../src/supply/index.ts';
import { atHand, demand, market, policy, type Shelf, waysToBuy } from './shelf.ts';

/** Enough of everything on the shelf. */
const plenty = (...skus: readonly string[]): NonNullable<Shelf['stock']> =>
  Object.fromEntries(skus.map((sku) => [sku, { onHand: 99 }]));

describe('offers', () => {
  const offer = (row: NonNullable<Shelf['stock']>[string] | null, replaced?: 'usable' | 'gone' | 'usable-by-one') => {
    const shelf = market({
      parts: { P: { price: 1, ...(replaced ? { replaced } : {}) } },
      stock: row ? { P: row } : {},
    });
    const found = shelf.offers.get('P');
    if (!found) throw new Error('no offer');
    return found;
  };
  const UNKNOWN = Number.POSITIVE_INFINITY;

  it.each([
    ['no row: any number, no known date', offer(null), 0, [UNKNOWN, UNKNOWN]],
    ['lead time: on the shelf at once, any more later', offer({ onHand: 1, lead: 4 }), 1, [0, 4]],
    ['reserved: what is promised is not there', offer({ onHand: 3, reserved: 2, lead: 4 }), 1, [0, 4]],
    ['reserved: more promised than there is leaves none', offer({ onHand: 1, reserved: 5, lead: 4 }), 0, [4, 4]],
    ['no lead time: no more than is there', offer({ onHand: 1 }), 1, [0, null]],
    ['unknown lead time: any number, no known date', offer({ onHand: 1, lead: 'unknown' }), 1, [0, UNKNOWN]],
    [
      'discontinued: no more than is there, whatever the lead time',
      offer({ onHand: 1, lead: 4, discontinued: true }),
      1,
      [0, null],
    ],
    ['replaced: no more than is there', offer({ onHand: 1, lead: 4 }, 'usable'), 1, [0, null]],
    ['replaced, old stock not to be used: none', offer({ onHand: 1, lead: 4 }, 'gone'), 0, [null, null]],
    [
      'replaced twice, old stock to be used by one of them: as much as is there',
      offer({ onHand: 1, lead: 4 }, 'usable-by-one'),
      1,
      [0, null],
    ],
    ['replaced without a row: none', offer(null, 'usable'), 0, [null, null]],
  ])('%s', (_name, one, shelf, days) => {
    expect(onShelf(one)).toBe(shelf);
    expect([daysFor(one, 1), daysFor(one, 2)]).toEqual(days);
  });

  it('within days: the shelf until the lead time, then any number', () => {
    const one = offer({ onHand: 2, lead: 4 });
    expect([0, 3, 4, UNKNOWN].map((days) => Math.min(mostWithin(one, days), 99))).toEqual([2, 2, 99, 99]);
    expect(Math.min(mostWithin(offer(null), 9), 99)).toBe(0);
    expect(Math.min(mostWithin(offer(null), UNKNOWN), 99)).toBe(99);
  });

  it('prices: the stock file goes before the catalogue', () => {
    const shelf = market({ parts: { P: { price: 500 }, Q: {} }, stock: { P: { price: minor(450) } } });
    expect([...shelf.offers.values()].map(({ price }) => price)).toEqual([450, null]);
  });
});

describe('kits and singles', () => {
  const shelf = (kit: number): Shelf => ({
    parts: { A: { price: 300 }, B: { price: 200 } },
    kits: { K: { price: kit, gives: { A: 1, B: 2 } } },
    stock: plenty('A', 'B', 'K'),
  });

  it('kit: dearer or cheaper than what it holds, the cheaper way is found', () => {
    expect(waysToBuy(shelf(699), { pieces: { A: 1, B: 2 } })).toEqual(['1 K = 699, 0 days']);
    expect(waysToBuy(shelf(701), { pieces: { A: 1, B: 2 } })).toEqual(['1 A, 2 B = 700, 0 days']);
  });

  it('equals: of two purchases at one price the one with fewer packs', () => {
    expect(waysToBuy(shelf(700), { pieces: { A: 1, B: 2 } })).toEqual(['1 K = 700, 0 days']);
  });

  it('equals: of as many packs the one whose numbers come first', () => {
    const same: Shelf = {
      parts: { P: {}, Z: { price: 5 } },
      kits: { M: { price: 5, gives: { P: 1 } }, N: { price: 5, gives: { P: 1 } } },
      stock: { P: { onHand: 0 }, ...plenty('M', 'N') },
    };
    expect(waysToBuy(same, { pieces: { P: 1 } })).toEqual(['1 M = 5, 0 days']);
  });

  it('mixed: two kits and a single where that is the least', () => {
    expect(waysToBuy(shelf(400), { pieces: { A: 3, B: 4 } })).toEqual(['1 A, 2 K = 1100, 0 days']);
  });

  it('packs of parts: whole packs are bought', () => {
    const packs: Shelf = { parts: { W: { price: 90, pack: 4 } }, stock: plenty('W') };
    expect(waysToBuy(packs, { fresh: { W: 5 } })).toEqual(['2 W = 180, 0 days']);
  });
});

describe('cost', () => {
  it('parts and kits are one sum, packs and doses of supplies the other', () => {
    const shelf: Shelf = {
      parts: { A: { price: 7 }, B: { price: 90 } },
      kits: { K: { price: 30, gives: { B: 1, OIL: 50 } } },
      supplies: { OIL: { meets: ['bath'], packs: { S: { size: 100, price: 11 } } }, WAX: { meets: ['assembly'] } },
      bulk: { WAX: { price: 4, per: 10 } },
    };
    const job = demand({ pieces: { A: 2, B: 1 }, supplies: { bath: 120, assembly: 20 } });
    const [only, ...others] = purchases(market(shelf), job, atHand(), policy({ bulk: true }));
    // two A and the kit; a pack for the 70 that the kit leaves, and 20 of the drum
    expect([only?.parts, only?.supplies, others]).toEqual([2 * 7 + 30, 11 + 8, []]);
  });
});

describe('supplies', () => {
  const oils: Shelf = {
    supplies: {
      OIL: {
        meets: ['bath'],
        packs: { 'OIL-100': { size: 100_000, price: 800 }, 'OIL-250': { size: 250_000, price: 1500 } },
      },
      OTHER: { meets: ['bath', 'assembly'], packs: { 'OTHER-120': { size: 120_000, price: 900 } } },
    },
    stock: plenty('OIL-100', 'OIL-250', 'OTHER-120'),
  };

  it('packs: several sizes of one product may mix', () => {
    expect(waysToBuy(oils, { supplies: { bath: 340_000 } })).toEqual(['1 OIL-100, 1 OIL-250 = 2300, 0 days']);
  });

  it('product: one product serves a need; two products never mix, even where that would be cheaper', () => {
    const mixing = { ...oils, stock: { ...plenty('OIL-250'), 'OIL-100': { onHand: 0 }, 'OTHER-120': { onHand: 1 } } };
    expect(waysToBuy(mixing, { supplies: { bath: 340_000 } })).toEqual(['2 OIL-250 = 3000, 0 days']);
  });

  it('product: every product that meets the specification is tried', () => {
    expect(waysToBuy(oils, { supplies: { bath: 110_000 } })).toEqual(['1 OTHER-120 = 900, 0 days']);
  });

  it('product: one that serves two needs is bought once for both', () => {
    expect(waysToBuy(oils, { supplies: { bath: 60_000, assembly: 60_000 } })).toEqual(['1 OTHER-120 = 900, 0 days']);
    const [both] = purchases(
      market(oils),
      demand({ supplies: { bath: 60_000, assembly: 60_000 } }),
      atHand(),
      policy(),
    );
    expect([...(both?.products ?? [])]).toEqual([
      ['assembly', 'OTHER'],
      ['bath', 'OTHER'],
    ]);
  });

  it('product: a wanted one serves although another is cheaper; one that serves nothing is no purchase', () => {
    expect(waysToBuy(oils, { supplies: { bath: 110_000 } }, {}, { useSupplies: ['OIL'] })).toEqual([
      '1 OIL-250 = 1500, 0 days',
    ]);
    expect(waysToBuy(oils, { supplies: { assembly: 1000 } }, {}, { useSupplies: ['OIL'] })).toEqual([]);
  });

  it('pack: a wanted one is bought although a smaller one would do', () => {
    expect(waysToBuy(oils, { supplies: { bath: 5_000 } }, {}, { usePacks: ['OIL-250'] })).toEqual([
      '1 OIL-250 = 1500, 0 days',
    ]);
  });

  it('none: a specification that no product meets cannot be had', () => {
    expect(waysToBuy(oils, { supplies: { brake: 1 } })).toEqual([]);
    expect(waysToBuy(oils, { supplies: { brake: 0 } })).toEqual([' = 0, 0 days']);
  });

  it('kits: the oil in a kit counts where its product serves the need, and is left over where another does', () => {
    const kit: Shelf = {
      ...oils,
      parts: { C: { price: 100 } },
      kits: { K: { price: 150, gives: { C: 2, OIL: 20_000 } } },
      stock: { ...oils.stock, ...plenty('K', 'C') },
    };
    expect(waysToBuy(kit, { fresh: { C: 2 }, supplies: { bath: 20_000 } })).toEqual(['1 K = 150, 0 days']);
    expect(waysToBuy(kit, { fresh: { C: 2 }, supplies: { bath: 20_000, assembly: 1_000 } })).toEqual([
      '1 K, 1 OTHER-120 = 1050, 0 days',
    ]);
  });
});

describe('stock', () => {
  it('limits: a kit and its single share nothing, but what is there of each is the limit', () => {
    const shelf: Shelf = {
      parts: { P: { price: 10 } },
      kits: { K: { price: 25, gives: { P: 2 } } },
      stock: { P: { onHand: 1 }, K: { onHand: 1 } },
    };
    expect([1, 2, 3, 4].map((count) => waysToBuy(shelf, { pieces: { P: count } }))).toEqual([
      ['1 P = 10, 0 days'],
      ['1 K = 25, 0 days'],
      ['1 K, 1 P = 35, 0 days'],
      [],
    ]);
  });

  it('limits: what is on the shelf is shared by the needs that a kit serves', () => {
    const shelf: Shelf = {
      parts: { A: { price: 50 }, B: { price: 50 } },
      kits: { K: { price: 60, gives: { A: 1, B: 1 } } },
      stock: { ...plenty('A', 'B'), K: { onHand: 1 } },
    };
    expect(waysToBuy(shelf, { pieces: { A: 2, B: 2 } })).toEqual(['1 A, 1 B, 1 K = 160, 0 days']);
  });

  it('days: dear today and cheaper later are two ways; dearer and later is none', () => {
    const shelf: Shelf = {
      parts: { P: { price: 40 } },
      kits: { K: { price: 52, gives: { P: 1 } }, L: { price: 60, gives: { P: 1 } } },
      stock: { P: { lead: 4 }, K: { onHand: 1 }, L: { lead: 2 } },
    };
    expect(waysToBuy(shelf, { pieces: { P: 1 } })).toEqual(['1 P = 40, 4 days', '1 K = 52, 0 days']);
  });

  it('days: part from the shelf and the rest ordered waits for the rest', () => {
    const shelf: Shelf = { parts: { P: { price: 40 } }, stock: { P: { onHand: 2, reserved: 1, lead: 3 } } };
    expect(waysToBuy(shelf, { pieces: { P: 1 } })).toEqual(['1 P = 40, 0 days']);
    expect(waysToBuy(shelf, { pieces: { P: 2 } })).toEqual(['2 P = 80, 3 days']);
  });

  it('days: a date that nobody knows ranks after every number and hides no known one', () => {
    const shelf: Shelf = {
      parts: { P: { price: 40 } },
      kits: { K: { price: 52, gives: { P: 1 } } },
      stock: { K: { lead: 9999 } },
    };
    expect(waysToBuy(shelf, { pieces: { P: 1 } })).toEqual(['1 P = 40, ? days', '1 K = 52, 9999 days']);
  });

  it('days: several waiting times make several ways', () => {
    const shelf: Shelf = {
      parts: { P: { price: 10 } },
      kits: { K: { price: 20, gives: { P: 1 } }, L: { price: 30, gives: { P: 1 } } },
      stock: { P: { lead: 9 }, K: { lead: 5 }, L: { onHand: 1 } },
    };
    expect(waysToBuy(shelf, { pieces: { P: 1 } })).toEqual([
      '1 P = 10, 9 days',
      '1 K = 20, 5 days',
      '1 L = 30, 0 days',
    ]);
  });

  it('discontinued and replaced: only what is left, else no way at all', () => {
    const shelf: Shelf = {
      parts: { P: { price: 10 }, Q: { price: 10, replaced: 'usable' }, R: { price: 10, replaced: 'gone' } },
      stock: {
        P: { onHand: 1, lead: 2, discontinued: true },
        Q: { onHand: 1, lead: 2 },
        R: { onHand: 1, lead: 2 },
      },
    };
    const ways = (sku: string, count: number): string[] => waysToBuy(shelf, { pieces: { [sku]: count } });
    expect([ways('P', 1), ways('P', 2)]).toEqual([['1 P = 10, 0 days'], []]);
    expect([ways('Q', 1), ways('Q', 2)]).toEqual([['1 Q = 10, 0 days'], []]);
    expect(ways('R', 1)).toEqual([]);
  });

  it('prices: a line without a price is counted, and the wholly priced way stays beside it', () => {
    const shelf: Shelf = {
      parts: { P: {} },
      kits: { K: { price: 52, gives: { P: 1 } } },
      stock: plenty('P', 'K'),
    };
    expect(waysToBuy(shelf, { pieces: { P: 1 } })).toEqual(['1 P = 0, 0 days, 1 without a price', '1 K = 52, 0 days']);
    expect(waysToBuy(shelf, { pieces: { P: 5 } }).at(0)).toBe('5 P = 0, 0 days, 1 without a price');
  });
});

describe('at hand', () => {
  const shelf: Shelf = {
    parts: { P: { price: 10 } },
    kits: { K: { price: 15, gives: { P: 2 } } },
    supplies: { OIL: { meets: ['bath'], packs: { 'OIL-100': { size: 100_000, price: 800 } } } },
    stock: plenty('P', 'K', 'OIL-100'),
  };

  it('pieces: new ones serve every need, used ones only where used ones may go', () => {
    expect(waysToBuy(shelf, { fresh: { P: 1 } }, { fresh: { P: 1 } })).toEqual([' = 0, 0 days']);
    expect(waysToBuy(shelf, { fresh: { P: 1 } }, { used: { P: 1 } })).toEqual(['1 P = 10, 0 days']);
    expect(waysToBuy(shelf, { pieces: { P: 1 } }, { used: { P: 1 } })).toEqual([' = 0, 0 days']);
    expect(waysToBuy(shelf, { pieces: { P: 1 }, fresh: { P: 2 } }, { used: { P: 9 }, fresh: { P: 1 } })).toEqual([
      '1 P = 10, 0 days',
    ]);
  });

  it('amounts: what is at hand is used first, the rest is bought in whole packs', () => {
    const ways = (held: number): string[] =>
      waysToBuy(shelf, { supplies: { bath: 15_000 } }, { supplies: { OIL: held } });
    expect([ways(15_000), ways(14_900)]).toEqual([[' = 0, 0 days'], ['1 OIL-100 = 800, 0 days']]);
  });

  it('kits: one at hand is taken, the next is bought; one that nothing needs is left', () => {
    expect(waysToBuy(shelf, { pieces: { P: 2 } }, { kits: { K: 1 } })).toEqual(['take 1 K = 0, 0 days']);
    expect(waysToBuy(shelf, { pieces: { P: 4 } }, { kits: { K: 1 } })).toEqual(['1 K, take 1 K = 15, 0 days']);
    expect(waysToBuy(shelf, {}, { kits: { K: 1 } })).toEqual([' = 0, 0 days']);
  });

  it('kits: a wanted one is bought although nothing needs it, or taken where it is at hand', () => {
    expect(waysToBuy(shelf, {}, {}, { useKits: ['K'] })).toEqual(['1 K = 15, 0 days']);
    expect(waysToBuy(shelf, {}, { kits: { K: 1 } }, { useKits: ['K'] })).toEqual(['take 1 K = 0, 0 days']);
    expect(waysToBuy(shelf, { pieces: { P: 1 } }, {}, { useKits: ['K'] })).toEqual(['1 K = 15, 0 days']);
  });
});

describe('bulk', () => {
  const shelf: Shelf = {
    supplies: { OIL: { meets: ['bath'], packs: { 'OIL-100': { size: 100_000, price: 800 } } } },
    bulk: { OIL: { price: 4200, per: 1_000_000 } },
    stock: plenty('OIL-100'),
  };
  const dose = (amount: number, bulk = shelf.bulk): string[] =>
    waysToBuy({ ...shelf, ...(bulk ? { bulk } : {}) }, { supplies: { bath: amount } }, {}, { bulk: true });

  it('doses: by the amount, rounded half up to the minor unit', () => {
    expect(dose(20_000)).toEqual(['dose 20000 OIL = 84, 0 days']);
    // 8.6 mL at 42.00 a litre are 36.12; 8.7 mL are 36.54; at 50 for 1 mL half a unit goes up
    expect([dose(8_600), dose(8_700)]).toEqual([['dose 8600 OIL = 36, 0 days'], ['dose 8700 OIL = 37, 0 days']]);
    expect(dose(100, { OIL: { price: 5, per: 1000 } })).toEqual(['dose 100 OIL = 1, 0 days']);
    expect(dose(100, { OIL: { price: 4, per: 1000 } })).toEqual(['dose 100 OIL = 0, 0 days']);
  });

  it('packs: where the question does not say bulk, packs are bought', () => {
    expect(waysToBuy(shelf, { supplies: { bath: 20_000 } })).toEqual(['1 OIL-100 = 800, 0 days']);
  });

  it('prices: a drum without a price is a line without a price, and does not hide the pack that has one', () => {
    expect(dose(20_000, { OIL: { per: 1000 } })).toEqual([
      'dose 20000 OIL = 0, 0 days, 1 without a price',
      '1 OIL-100 = 800, 0 days',
    ]);
  });

  it('packs: one that is cheaper than the drum is bought, and what it leaves is measured out', () => {
    // 120 mL: 12.00 from a drum at 100.00 a litre; a pack of 100 mL at 8.00 and 20 mL of the drum at 2.00 are 10.00
    expect(dose(120_000, { OIL: { price: 10_000, per: 1_000_000 } })).toEqual([
      '1 OIL-100, dose 20000 OIL = 1000, 0 days',
    ]);
  });

  it('at hand: only the rest is dosed', () => {
    expect(waysToBuy(shelf, { supplies: { bath: 20_000 } }, { supplies: { OIL: 5_000 } }, { bulk: true })).toEqual([
      'dose 15000 OIL = 63, 0 days',
    ]);
  });
});
