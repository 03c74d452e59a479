import { describe, expect, it } from 'vitest';
import {
  cubicMetresOf,
  gaugePressureOf,
  inPressureUnit,
  kilogramsOf,
  metresOf,
  newtonMetres,
  newtonMetresOf,
  springRateOf,
  squareMetresOf,
  viscosityOf,
  wrenchesFor,
} from '../../src/physics/index.ts';
import type { Dimension } from '../../src/quantity/index.ts';
import { parseQuantity } from '../../src/quantity/parse.ts';
import { value } from './outcomes.ts';

/** A quantity as a catalogue writes it, held as the project holds it. */
const read = <D extends Dimension>(dimension: D, text: string) => {
  const parsed = parseQuantity(dimension, text);
  if (!parsed.ok) throw new Error(parsed.fault);
  return parsed.value;
};

describe('from what a catalogue writes to SI', () => {
  it('each dimension: by hand', () => {
    expect(metresOf(read('length', '160 mm'))).toBe(0.16);
    expect(squareMetresOf(read('area', '962 mm²'))).toBeCloseTo(962e-6, 15);
    expect(cubicMetresOf(read('volume', '9 mL'))).toBeCloseTo(9e-6, 18);
    expect(kilogramsOf(read('mass', '80 kg'))).toBe(80);
    expect(newtonMetresOf(read('torque', '7 N·m'))).toBe(7);
    expect(springRateOf(read('rate', '8.5 N/mm'))).toBe(8500);
    expect(viscosityOf(read('viscosity', '22.5 mm²/s'))).toBe(22.5);
    // Held as whole pascals: 60 psi is 413 685.4 Pa.
    expect(inPressureUnit(gaugePressureOf(read('pressure', '60 psi')), 'psi')).toBeCloseTo(60, 3);
  });
});

describe('which torque wrench', () => {
  const wrench = (id: string, greatest: number) => ({ id, greatest: newtonMetres(greatest), lowestMark: null });

  it('order: least permitted deviation, then the smallest, then by id; what does not suit is left out', () => {
    const found = value(
      wrenchesFor([wrench('c', 60), wrench('b', 25), wrench('a', 25), wrench('d', 10)], newtonMetres(8)),
    );
    // 4 % of 8 for those above 10 N·m; 6 % for the small one; the one to 60 starts at 12.
    expect(found.map(({ id }) => id)).toEqual(['a', 'b', 'd']);
    expect(found.map(({ deviation }) => deviation.toFixed(2))).toEqual(['0.32', '0.32', '0.48']);
  });

  it('none: said by an empty list', () => {
    expect(value(wrenchesFor([wrench('b', 25)], newtonMetres(3)))).toEqual([]);
  });
});
