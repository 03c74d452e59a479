import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  floorFor,
  floorTogether,
  type Market,
  purchases,
  shareFloorFor,
  withoutOffer,
} from '../../src/supply/index.ts';
import { offersFor } from '../../src/supply/offered.ts';
import { hold } from '../laws/hold.ts';
import { atHand, demand, market, policy, type Shelf } from './shelf.ts';

const NEVER = Number.POSITIVE_INFINITY;
const upTo = (most: number): fc.Arbitrary<number> => fc.integer({ min: 0, max: most });

/** Kits of many families around two oils: each with something of its own, few prices, so that many are equal, and some without one. */
const kit = fc.record({
  price: fc.constantFrom(undefined, undefined, undefined, 0, 2, 3, 3, 4, 7),
  oil: fc.constantFrom(0, 20, 20, 20, 30),
  wax: fc.constantFrom(0, 0, 0, 5),
  own: fc.constantFrom('A', 'B', 'B', 'C'),
  onHand: upTo(3),
  lead: fc.constantFrom(1, 1, 2, 5, null, null, 'unknown' as const),
  isWithdrawn: upTo(7).map((die) => die === 0),
});
const cases = fc.record({
  kits: fc.array(kit, { minLength: 4, maxLength: 9 }),
  packs: fc.record({ small: fc.constantFrom(undefined, 2, 3, 5), large: fc.constantFrom(undefined, 4, 6, 9) }),
  small: fc.record({ onHand: upTo(2), lead: fc.constantFrom(1, 3, null) }),
  bath: fc.constantFrom(0, 15, 20, 35, 45, 60, 75),
  assembly: fc.constantFrom(0, 0, 4, 10),
  pieces: upTo(2),
  held: fc.constantFrom({}, {}, { kits: { K3: 1 } }, { supplies: { OIL: 10 } }),
  use: fc.constantFrom<readonly string[]>([], [], [], ['K2']),
  bulk: fc.constantFrom(false, false, true),
});
type Case = typeof cases extends fc.Arbitrary<infer T> ? T : never;

const shelfOf = ({ kits, packs, small }: Case): Shelf => ({
  parts: { A: { price: 3 }, B: { price: 4 }, C: {} },
  kits: Object.fromEntries(
    kits.map(({ price, oil, wax, own }, at) => [
      `K${at}`,
      {
        ...(price === undefined ? {} : { price }),
        gives: { [own]: 1, ...(oil > 0 ? { OIL: oil } : {}), ...(wax > 0 ? { WAX: wax } : {}) },
      },
    ]),
  ),
  supplies: {
    OIL: {
      meets: ['bath'],
      packs: {
        'OIL-S': { size: 20, ...(packs.small === undefined ? {} : { price: packs.small }) },
        'OIL-L': { size: 50, ...(packs.large === undefined ? {} : { price: packs.large }) },
      },
    },
    WAX: { meets: ['assembly'], packs: { 'WAX-S': { size: 8, price: 3 } } },
  },
  stock: {
    ...Object.fromEntries(
      kits.map(({ onHand, lead, isWithdrawn }, at) => [`K${at}`, { onHand, lead, discontinued: isWithdrawn }]),
    ),
    'OIL-S': small,
    'OIL-L': { onHand: 0, lead: 2 },
  },
  bulk: { OIL: { price: 1, per: 6 } },
});

const buy = (on: Market, { bath, assembly, pieces, held, use, bulk }: Case) =>
  purchases(
    on,
    demand({ pieces: { A: pieces }, supplies: { bath, assembly } }),
    atHand(held),
    policy({ useKits: use, bulk }),
  );

describe('a crowd of kits', () => {
  it('law: what is left out of a crowd is in no purchase', () => {
    hold('purchases from a crowd', 2000, cases, (one) => {
      const expected = buy(market(shelfOf(one), NEVER), one);
      for (const crowdedFrom of [0, 3]) expect(buy(market(shelfOf(one), crowdedFrom), one)).toEqual(expected);
    });
  });

  it('law: nor in one without an offer', () => {
    hold('purchases from a crowd without one of it', 600, cases, (one) => {
      for (const sku of ['K0', 'K3', 'OIL-S'])
        expect(buy(withoutOffer(market(shelfOf(one), 0), sku), one)).toEqual(
          buy(withoutOffer(market(shelfOf(one), NEVER), sku), one),
        );
    });
  });

  it('law: the floors of one need and of several are the same', () => {
    hold('floors of a crowd', 800, cases, (one) => {
      const [few, all] = [market(shelfOf(one), 0), market(shelfOf(one), NEVER)];
      for (const days of [0, 1, 2, NEVER])
        for (const priced of [false, true]) {
          const within = { days, priced };
          const floors = (on: Market) => [
            floorFor(on, 'OIL', 45, within),
            shareFloorFor(on, 'OIL', 45, within),
            floorFor(on, 'WAX', 7, within),
            floorTogether(on, [[{ sku: 'OIL', amount: 35 }], [{ sku: 'A', amount: 1 }]], within),
            floorTogether(
              on,
              [
                [
                  { sku: 'OIL', amount: 60 },
                  { sku: 'WAX', amount: 9 },
                ],
                [{ sku: 'B', amount: 2 }],
              ],
              within,
            ),
          ];
          expect(floors(few)).toEqual(floors(all));
        }
    });
  });

  it('of kits without a price one that does alone stays beside several that come before it', () => {
    const own = ['A', 'B', 'C'];
    const shelf: Shelf = {
      parts: Object.fromEntries(own.map((sku) => [sku, { price: 3 }])),
      kits: Object.fromEntries(own.map((sku) => [`K-${sku}`, { gives: { [sku]: 1, OIL: 20 } }])),
      supplies: { OIL: { meets: ['bath'], packs: {} } },
      stock: { 'K-A': { onHand: 1, lead: null }, 'K-B': { onHand: 1, lead: null }, 'K-C': { onHand: 2, lead: null } },
    };
    const ways = purchases(market(shelf, 0), demand({ supplies: { bath: 40 } }), atHand({}), policy({}));
    expect(ways.map(({ bought }) => bought.map(({ offer, packs }) => `${packs} ${offer.sku}`))).toEqual([['2 K-C']]);
  });

  it('however many kits have the same oil, only the first few are looked at', () => {
    const looked = (families: number): number => {
      const own = Array.from({ length: families }, (_, at) => `F${at}`);
      const shelf: Shelf = {
        parts: Object.fromEntries(own.map((id) => [`${id}-W`, { price: 3 }])),
        kits: Object.fromEntries(
          own.map((id, at) => [`${id}-K`, { price: 9 + (at % 40), gives: { [`${id}-W`]: 1, OIL: 20 } }]),
        ),
        supplies: { OIL: { meets: ['bath'], packs: { 'OIL-S': { size: 20, price: 10 } } } },
        stock: Object.fromEntries(own.map((id, at) => [`${id}-K`, { onHand: at % 3, lead: 1 + (at % 4) }])),
      };
      return offersFor(
        market(shelf),
        new Map([
          ['OIL', 35],
          ['F0-W', 1],
        ]),
      ).length;
    };
    // the kits of its own family, what is sold alone, and of the others no more beside a thousand than beside twenty
    expect([looked(20), looked(200), looked(2000)]).toEqual([5, 6, 5]);
  });
});
