import { describe, expect, it } from 'vitest';
import type { Dimension } from '../../src/quantity/index.ts';
import { parseQuantity } from '../../src/quantity/parse.ts';

const read = (dimension: Dimension, text: string): number | string => {
  const parsed = parseQuantity(dimension, text);
  return parsed.ok ? parsed.value : parsed.fault;
};

describe('units', () => {
  // NIST SP 811 (2008), appendix B.8 and B.9; the exact values follow from the definitions of the inch and the pound. The numbers
  // before the unit are chosen so that what is held shows many digits of the factor.
  it.each<[Dimension, string, number]>([
    // 1 psi = 6894.757 293 168 36 Pa
    ['pressure', '1 psi', 6_895],
    ['pressure', '1000 psi', 6_894_757],
    ['pressure', '100000 psi', 689_475_729],
    ['pressure', '1 bar', 100_000],
    // 1 in·lbf = 0.112 984 829 027 616 7 N·m, 1 ft·lbf = 1.355 817 948 331 400 4 N·m; held in mN·m
    ['torque', '1 in·lbf', 113],
    ['torque', '1000000 in·lbf', 112_984_829],
    ['torque', '1 ft·lbf', 1_356],
    ['torque', '1000000 ft·lbf', 1_355_817_948],
    // 1 US fl oz = 29.573 529 562 5 mL; held in µL
    ['volume', '1 fl oz', 29_574],
    ['volume', '1000 fl oz', 29_573_530],
    // 1 in = 25.4 mm exactly
    ['length', '1 in', 25_400],
    ['length', '1.125 in', 28_575],
    // 1 lb = 0.453 592 37 kg exactly; held in mg
    ['mass', '1 lb', 453_592],
    ['mass', '100 lb', 45_359_237],
    // 1 lbf/in = 4.448 221 615 260 5 N / 0.0254 m = 175.126 835 246 5 N/m
    ['rate', '1 lbf/in', 175],
    ['rate', '1000000 lbf/in', 175_126_835],
    ['viscosity', '24 cSt', 24_000],
    ['time', '1.5 h', 90],
  ])('factors: as %s, %s is %i', (dimension, text, value) => {
    expect(read(dimension, text)).toBe(value);
  });

  // The library behind holds 29.573 529 54 mL, a microlitre too few in 300 litres.
  it('factors: a fluid ounce is exactly 29.573 529 562 5 mL', () => {
    expect(read('volume', '10000 fl oz')).toBe(295_735_296);
  });

  it('rounding: half of what is held goes up, and decimals are exact', () => {
    expect([read('length', '0.0005 mm'), read('length', '0.00049 mm'), read('length', '0.1 mm')]).toEqual([1, 0, 100]);
    expect([read('volume', '0.3 mL'), read('mass', '1.005 g'), read('torque', '6.5 N·m')]).toEqual([300, 1005, 6500]);
  });

  it('faults: no number, no unit, a unit nobody knows, one of another dimension, out of range', () => {
    expect(['mm', '5', '-5 mm', '5 mm 3', '1e3 mm', '5,5 mm'].map((text) => read('length', text))).not.toContain(5000);
    expect([
      read('length', '5'),
      read('length', '5 spans'),
      read('length', '5 mL'),
      read('length', '99999999999 m'),
    ]).toEqual(['not-a-quantity', 'unknown-unit', 'wrong-dimension', 'out-of-range']);
  });
});
