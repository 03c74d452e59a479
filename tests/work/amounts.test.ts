import { describe, expect, it } from 'vitest';
import type { Chassis, Dose, Part, SupplyUse } from '../../src/catalog/index.ts';
import { millimetres } from '../../src/quantity/index.ts';
import { amountsOf, type ForkState } from '../../src/work/index.ts';
import { catalogOf, family, operation } from './operations.ts';

const chassis = (doses: Readonly<Record<string, Partial<Dose>>>): Chassis => ({
  id: 'body',
  family: family.id,
  name: 'Body',
  generations: null,
  tyreRoom: { crown: null, arch: null, width: null },
  wheel: 622,
  takes: [],
  axle: { standard: '15x110', spacing: null, rotorPlane: null },
  offset: null,
  steerer: null,
  brake: null,
  travel: { least: millimetres(100), greatest: null },
  axleToCrown: null,
  dimensions: new Map(),
  interfaces: new Map(),
  doses: new Map(
    Object.entries(doses).map(([name, dose]): [string, Dose] => [
      name,
      { specification: 'oil', amount: null, left: null, right: null, ...dose },
    ]),
  ),
  upper: 'U',
  lowers: 'L',
  builds: [],
  source: { document: null, page: null, record: '' },
});
/** A part by its number, with the dose of its bath, if it has one. */
const part = (sku: string, bath: Partial<Dose> | null): readonly [string, Part] => [
  sku,
  {
    sku,
    maker: 'orlen',
    name: sku,
    role: 'spring',
    numbers: {},
    dimensions: new Map(),
    interfaces: new Map(),
    traits: new Map(),
    fits: [],
    needs: [],
    excludes: [],
    doses: bath === null ? new Map() : chassis({ bath }).doses,
    rate: null,
    volume: null,
    air: null,
    replacedBy: [],
    mass: null,
    price: null,
    pack: 1,
    source: { document: null, page: null, record: '' },
  },
];
const fork = (doses: Readonly<Record<string, Partial<Dose>>>): ForkState => ({
  chassis: chassis(doses),
  slots: new Map(),
});
const dose = (side: 'left' | 'right' | null): SupplyUse => ({
  kind: 'dose',
  dose: 'bath',
  of: 'chassis',
  side,
  note: null,
});

/** What an operation that pours the dose on one side, on the other, and without naming a side, comes to. */
const poured = (bath: Partial<Dose>): (number | 'none')[] =>
  ([null, 'left', 'right'] as const).map((side) => {
    const amounts = amountsOf(catalogOf([]), [operation('pour', { uses: [dose(side)] })], fork({}), fork({ bath }));
    expect(amounts.length).toBeLessThanOrEqual(1);
    return amounts.map(({ amount }) => amount)[0] ?? (amounts.length === 0 ? 'none' : Number.NaN);
  });

describe('amounts', () => {
  it('doses: by side, by one amount, or both; a side without a value of its own takes the amount', () => {
    expect(poured({ amount: 9 })).toEqual([9, 9, 9]);
    expect(poured({ left: 5, right: 7 })).toEqual([12, 5, 7]);
    expect(poured({ left: 5 })).toEqual([5, 5, 'none']);
    expect(poured({ right: 7 })).toEqual([7, 'none', 7]);
    expect(poured({ amount: 9, right: 7 })).toEqual([9, 9, 7]);
    expect(poured({})).toEqual(['none', 'none', 'none']);
    expect(poured({ left: 0, right: 7 })).toEqual([7, 'none', 7]);
  });

  it('fork: what is poured goes by the build after, what is drained by the build before', () => {
    const change = operation('change', { uses: [dose(null)], drains: [dose(null)] });
    const amounts = amountsOf(catalogOf([]), [change], fork({ bath: { amount: 3 } }), fork({ bath: { amount: 8 } }));
    expect(amounts.map(({ action, amount }) => [action, amount])).toEqual([
      ['drain', 3],
      ['use', 8],
    ]);
  });

  it('amounts: what an operation states itself hangs on no dose', () => {
    const grease: SupplyUse = { kind: 'amount', specification: 'grease', amount: 2000, side: 'left', note: 'thin' };
    expect(amountsOf(catalogOf([]), [operation('grease', { uses: [grease] })], fork({}), fork({}))).toEqual([
      { operation: 'grease', action: 'use', specification: 'grease', amount: 2000, side: 'left', note: 'thin' },
    ]);
  });

  it('doses of parts: those of what the slot holds, and no others; an empty slot takes none', () => {
    const of: SupplyUse = { kind: 'dose', dose: 'bath', of: 'spring', side: null, note: null };
    const catalog = { ...catalogOf([]), parts: new Map([part('FULL', { amount: 6 }), part('DRY', null)]) };
    const poured = (sku: string | null): number[] => {
      const slots = new Map([['spring', sku === null ? null : { sku, quantity: 1 }]]);
      const after = { ...fork({ bath: { amount: 4 } }), slots };
      return amountsOf(catalog, [operation('pour', { uses: [of] })], fork({}), after).map(({ amount }) => amount);
    };
    expect([poured('FULL'), poured('DRY'), poured(null)]).toEqual([[6], [], []]);
  });
});
