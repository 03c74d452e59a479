import { describe, expect, it } from 'vitest';
import { type Market, makeMarket, withoutOffer } from '../../src/supply/index.ts';
import { remember } from '../../src/supply/market.ts';
import { offersFor } from '../../src/supply/offered.ts';
import { market, type Shelf, waysToBuy } from './shelf.ts';

const lists = (map: ReadonlyMap<string, readonly string[]>): Record<string, readonly string[]> =>
  Object.fromEntries(map);
/** The numbers of what gives each thing that somebody may need. */
const giving = (market: Market): Record<string, readonly string[]> =>
  Object.fromEntries(
    ['A', 'B', 'OIL'].map((sku) => [sku, offersFor(market, new Map([[sku, 1]])).map((offer) => offer.sku)]),
  );

describe('market', () => {
  const shelf: Shelf = {
    parts: { B: { price: 2, pack: 3 }, A: { price: 1 } },
    kits: { K: { price: 9, gives: { A: 1, OIL: 20 } }, E: { price: 5, gives: { A: 2 } } },
    supplies: { OIL: { meets: ['bath', 'damper'], packs: { P: { size: 100, price: 4 } } }, FAT: { meets: ['bath'] } },
    stock: { K: { onHand: 1, price: null } },
  };

  it('offers: what gives a thing, in the order of the numbers; what gives something else too ties', () => {
    const one = market(shelf);
    expect(giving(one)).toEqual({ A: ['A', 'E', 'K'], B: ['B'], OIL: ['K', 'P'] });
    expect(['A', 'B', 'OIL'].map((sku) => one.goods.kitsOf(sku))).toEqual([['K'], [], ['K']]);
    expect(['A', 'B', 'OIL'].map((sku) => one.goods.isInKits(sku))).toEqual([true, false, true]);
    expect(one.offers.get('B')?.gives).toEqual([{ sku: 'B', amount: 3 }]);
    expect(['A', 'K', 'P'].map((sku) => one.offers.get(sku)?.kind)).toEqual(['part', 'kit', 'pack']);
  });

  it('kits: what is in one twice counts together', () => {
    const { catalog, shop } = market(shelf);
    const [kit] = catalog.kits.values();
    const twice = {
      sku: 'T',
      parts: [
        { sku: 'A', quantity: 1 },
        { sku: 'A', quantity: 2 },
      ],
      supplies: [
        { sku: 'OIL', amount: 5 },
        { sku: 'OIL', amount: 6 },
      ],
    };
    const kits = new Map(kit ? [['T', { ...kit, ...twice }]] : []);
    const one = makeMarket({ ...catalog, kits }, { hash: '', rows: new Map() }, shop);
    expect(one.offers.get('T')?.gives).toEqual([
      { sku: 'A', amount: 3 },
      { sku: 'OIL', amount: 11 },
    ]);
  });

  it('specifications: the supplies that meet one, in the order of their numbers', () => {
    expect(lists(market(shelf).meeting)).toEqual({ bath: ['FAT', 'OIL'], damper: ['OIL'] });
  });

  it('without an offer: nothing is bought of it, and nothing that was remembered counts', () => {
    const whole = market(shelf);
    remember(whole, 'answer', 42);
    const one = withoutOffer(whole, 'K');
    expect(giving(one)).toEqual({ A: ['A', 'E'], B: ['B'], OIL: ['P'] });
    expect([one.remembered.size, whole.remembered.get('answer')]).toEqual([0, 42]);
    expect(giving(whole)).toEqual({ A: ['A', 'E', 'K'], B: ['B'], OIL: ['K', 'P'] });
  });

  it('memory: it is bounded', () => {
    const one = market(shelf);
    for (let at = 0; at < 20_010; at++) remember(one, `${at}`, at);
    expect([one.remembered.size, one.remembered.get('19999'), one.remembered.has('20000')]).toEqual([
      20_000,
      19_999,
      false,
    ]);
  });
});

describe('equal supplies', () => {
  // the band of a grade of ISO 3448 is 10 % to either side of its middle
  const oil = (at40: number | undefined, more: object = {}): NonNullable<Shelf['supplies']>[string] => ({
    meets: [],
    ...(at40 === undefined ? {} : { at40 }),
    ...more,
  });
  const equal = (supplies: NonNullable<Shelf['supplies']>): Record<string, readonly string[]> =>
    lists(market({ supplies }).equals);

  it('viscosity: within 10 % of the specified one at 40 °C, to either side', () => {
    const named = { NAMED: oil(200, { meets: ['damper'] }) };
    expect(equal({ ...named, Z: oil(180), Y: oil(220), X: oil(179), W: oil(221) })).toEqual({ damper: ['Y', 'Z'] });
    // of the specified one: 10 % of 180 is 18
    expect(equal({ NAMED: oil(180, { meets: ['damper'] }), Y: oil(199), X: oil(198) })).toEqual({ damper: ['X'] });
  });

  it('never across uses or units, never where a viscosity is not stated, never those that meet it themselves', () => {
    const named = { NAMED: oil(200, { meets: ['damper'] }), OTHER: oil(200, { meets: ['damper'] }) };
    expect(equal({ ...named, G: oil(200, { use: 'grease' }), M: oil(200, { unit: 'g' }), N: oil(undefined) })).toEqual(
      {},
    );
    expect(equal({ NAMED: oil(undefined, { meets: ['damper'] }), N: oil(200) })).toEqual({});
    expect(equal({ NAMED: oil(undefined, { meets: ['damper'] }), N: oil(undefined) })).toEqual({});
  });

  it('one that equals any of those that meet it; those of another specification are no matter', () => {
    const two = { A: oil(100, { meets: ['damper'] }), B: oil(400, { meets: ['damper'] }) };
    expect(equal({ ...two, N: oil(390), F: oil(250, { meets: ['bath'] }) })).toEqual({ damper: ['N'] });
  });

  it('buying: an equal one serves where that is allowed, after those that meet it', () => {
    const shelf: Shelf = {
      supplies: {
        NAMED: { meets: ['damper'], at40: 200, packs: { P: { size: 100, price: 9 } } },
        LIKE: { meets: [], at40: 210, packs: { L: { size: 100, price: 4 } } },
      },
      stock: { P: { onHand: 1 }, L: { onHand: 1 } },
    };
    const job = { supplies: { damper: 50 } };
    expect(waysToBuy(shelf, job)).toEqual(['1 P = 9, 0 days']);
    expect(waysToBuy(shelf, job, {}, { substitutes: true })).toEqual(['1 L = 4, 0 days']);
    // those that meet it still serve
    const sold = { ...shelf, stock: { P: { onHand: 1 }, L: { onHand: 0 } } };
    expect(waysToBuy(sold, job, {}, { substitutes: true })).toEqual(['1 P = 9, 0 days']);
  });
});
