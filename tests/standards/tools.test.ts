import { describe, expect, it } from 'vitest';
import { hexKey, metres, newtonMetres, retainingRing, ringPliers, wrenchVerdict } from '../../src/physics/index.ts';
import { code, value } from '../physics/outcomes.ts';
import { mm } from '../physics/springs.ts';

describe('ISO 6789: setting wrenches, type II class A, by tool makers’ summaries of the standard', () => {
  const wrench = (greatest: number, lowestMark: number | null = null) => ({
    id: 'w',
    greatest: newtonMetres(greatest),
    lowestMark: lowestMark === null ? null : newtonMetres(lowestMark),
  });

  it('deviation: ±6 % up to a greatest torque of 10 N·m, ±4 % above: 6 N·m ±0.36, 12 N·m ±0.48', () => {
    expect(value(wrenchVerdict(wrench(10), newtonMetres(6))).deviation).toBeCloseTo(0.36, 12);
    expect(value(wrenchVerdict(wrench(25), newtonMetres(12))).deviation).toBeCloseTo(0.48, 12);
  });

  // Test points at 20, 60 and 100 % of the greatest torque.
  it.each([5, 10, 25, 35, 60])(
    'range, 2003 edition: of a wrench to %i N·m the test points suit, less than 20 %% does not',
    (greatest) => {
      const kind = (share: number) => value(wrenchVerdict(wrench(greatest), newtonMetres(greatest * share))).kind;
      expect([0.2, 0.6, 1].map(kind)).toEqual(['suits', 'suits', 'suits']);
      expect([0.19, 1.01].map(kind)).toEqual(['below-its-range', 'above-its-range']);
    },
  );

  it('range, 2017 edition: it starts at the lowest marked value', () => {
    const marked = wrench(25, 2);
    expect(value(wrenchVerdict(marked, newtonMetres(2)))).toMatchObject({ kind: 'suits', by: 'lowest-mark' });
    expect(value(wrenchVerdict(marked, newtonMetres(1.9))).kind).toBe('below-its-range');
    expect(value(wrenchVerdict(wrench(25), newtonMetres(2)))).toMatchObject({
      kind: 'below-its-range',
      by: 'twenty-per-cent',
    });
  });
});

describe('DIN 472: internal retaining rings', () => {
  // Bore, thickness, free diameter, groove, least lug hole; FreeCAD fasteners data, the groove for 28 mm from NopSCADlib.
  it.each([
    [22, 1, 23.5, 23, 2],
    [24, 1.2, 25.9, 25.2, 2],
    [25, 1.2, 26.9, 26.2, 2],
    [26, 1.2, 27.9, 27.2, 2],
    [28, 1.2, 30.1, 29.4, 2],
    [30, 1.2, 32.1, 31.4, 2],
    [32, 1.2, 34.4, 33.7, 2.5],
    [34, 1.5, 36.5, 35.7, 2.5],
    [35, 1.5, 37.8, 37, 2.5],
    [36, 1.5, 38.8, 38, 2.5],
    [38, 1.5, 40.8, 40, 2.5],
    [40, 1.75, 43.5, 42.5, 2.5],
  ])('ring: for a bore of %i mm', (bore, thickness, free, groove, lugHole) => {
    expect(value(retainingRing(mm(bore)))).toEqual({ bore, thickness, free, groove, lugHole });
    // What holds of every such ring: it springs out further than its groove, which is larger than the bore.
    expect(free).toBeGreaterThan(groove);
    expect(groove).toBeGreaterThan(bore);
  });

  it('ring: a bore that the table lacks has none', () => {
    expect(retainingRing(mm(29.4))).toMatchObject({ code: 'not-in-table', params: { found: '29.4 mm' } });
  });
});

describe('DIN 5256: pliers for internal rings (ranges and tips from memory)', () => {
  it.each([
    [10, ['J0']],
    [12.5, ['J1', 'J0']],
    [22, ['J2', 'J1']],
    [30, ['J2']],
    [40, ['J3', 'J2']],
    [120, ['J4']],
  ])('size: a bore of %f mm takes %j', (bore, sizes) => {
    expect(value(ringPliers(mm(bore))).map(({ size }) => size)).toEqual(sizes);
  });

  it('edges and tips: the ranges include their ends', () => {
    const at = (bore: number) => value(ringPliers(mm(bore))).map(({ size, tip }) => `${size} ${tip * 1000}`);
    expect([8, 13, 19, 60, 61, 85, 100, 101, 140].map(at)).toEqual([
      ['J0 0.9'],
      ['J1 1.3', 'J0 0.9'],
      ['J2 1.8', 'J1 1.3'],
      ['J3 2.3', 'J2 1.8'],
      ['J3 2.3'],
      ['J4 3.2', 'J3 2.3'],
      ['J4 3.2', 'J3 2.3'],
      ['J4 3.2'],
      ['J4 3.2'],
    ]);
  });

  it('tips: none is thicker than the lug holes of DIN 472', () => {
    for (const bore of [22, 24, 25, 26, 28, 30, 32, 34, 35, 36, 38, 40]) {
      const { lugHole } = value(retainingRing(mm(bore)));
      const tips = value(ringPliers(mm(bore))).map(({ tip }) => tip);
      expect(tips.length).toBeGreaterThan(0);
      for (const tip of tips) expect(tip).toBeLessThanOrEqual(lugHole / 1000);
    }
  });

  it('bores: below 8 and above 140 mm there are none', () => {
    expect([code(ringPliers(metres(0.007))), code(ringPliers(metres(0.141)))]).toEqual([
      'out-of-range',
      'out-of-range',
    ]);
  });
});

describe('ISO 4762 and 2936: hexagon sockets (means from FreeCAD fasteners data; nominal sizes from memory)', () => {
  it.each([
    ['M3', 2.5, 2.56],
    ['M4', 3, 3.06],
    ['M5', 4, 4.06],
    ['M6', 5, 5.06],
    ['M8', 6, 6.06],
    ['M10', 8, 8.07],
    ['M12', 10, 10.07],
  ])('key: %s takes %f mm', (thread, key, socket) => {
    expect(value(hexKey(thread))).toEqual({ thread, key, socket });
    expect(key).toBeLessThan(socket);
  });

  it('key: a thread that is not in the table has none', () => {
    expect(code(hexKey('M7'))).toBe('not-in-table');
  });
});
