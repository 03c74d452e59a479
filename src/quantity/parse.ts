import { create, type Fraction, fractionDependencies, type Unit, unitDependencies } from 'mathjs';
import type { Dimension, DimensionUnits } from './brands.ts';
import { held } from './brands.ts';

/** The one door to the unit library: exact fractions, so that 1.125 in is 28575 µm and nothing near it. */
const math = create({ ...unitDependencies, ...fractionDependencies }, {});

/** What each dimension is held in, in the unit library's spelling. */
const HELD_IN: Readonly<Record<Dimension, string>> = {
  length: 'um',
  volume: 'uL',
  mass: 'mg',
  torque: 'N m',
  pressure: 'Pa',
  viscosity: 'mm^2/s',
  time: 's',
  rate: 'N/m',
  area: 'mm^2',
  angle: 'deg',
};
/** Held units per unit above: torque in thousandths of N·m, viscosity, area and angle in thousandths, time in sixtieths of a second's reciprocal. */
const SCALE: Readonly<Record<Dimension, readonly [number, number]>> = {
  length: [1, 1],
  volume: [1, 1],
  mass: [1, 1],
  torque: [1000, 1],
  pressure: [1, 1],
  viscosity: [1000, 1],
  time: [1, 60],
  rate: [1, 1],
  area: [1000, 1],
  angle: [1000, 1],
};

/** Units that people write and the library spells otherwise. Factors: NIST SP 811, appendix B.8 (through the library's own definitions). */
const SPELLING: ReadonlyMap<string, string> = new Map([
  ['N·m', 'N m'],
  ['N*m', 'N m'],
  ['Nm', 'N m'],
  ['in·lbf', 'in lbf'],
  ['in·lb', 'in lbf'],
  ['ft·lbf', 'ft lbf'],
  ['ft·lb', 'ft lbf'],
  ['mm²/s', 'mm^2/s'],
  ['cSt', 'mm^2/s'],
  ['mm²', 'mm^2'],
  ['cm²', 'cm^2'],
  ['ml', 'mL'],
  ['l', 'L'],
  ['fl oz', 'floz'],
  ['"', 'in'],
  ['°', 'deg'],
  ['μm', 'um'],
  ['µm', 'um'],
  ['μL', 'uL'],
  ['µL', 'uL'],
]);

/** Units that the library holds with fewer digits than they have: so many of another, exactly (US gallon of 231 in³, 128 fluid ounces to it; pound-force per square inch). */
const EXACT: ReadonlyMap<string, { readonly times: string; readonly unit: string }> = new Map([
  ['floz', { times: '231/128', unit: 'in^3' }],
  ['psi', { times: '1', unit: 'lbf/in^2' }],
]);

/** What units a person may write for a dimension; shown where one is wrong. */
export const WRITTEN_UNITS: Readonly<Record<Dimension, string>> = {
  length: 'mm, cm, m, in',
  volume: 'mL, L, floz',
  mass: 'g, kg, mg, oz, lb',
  torque: 'N·m, in·lbf, ft·lbf',
  pressure: 'psi, bar, kPa',
  viscosity: 'mm²/s, cSt',
  time: 'min, h',
  rate: 'N/mm, lbf/in',
  area: 'mm², cm²',
  angle: 'deg, °',
};

/** Why a text is not a quantity of a dimension. */
export type QuantityFault = 'not-a-quantity' | 'unknown-unit' | 'wrong-dimension' | 'out-of-range';
export type Parsed<D extends Dimension> =
  | { readonly ok: true; readonly value: DimensionUnits[D] }
  | { readonly ok: false; readonly fault: QuantityFault };

const WRITTEN = /^\s*([0-9]+(?:\.[0-9]+)?)\s*([^\s0-9.].*?)\s*$/;

/** Held units of a dimension in one unit, as an exact fraction; or why the unit is none of the dimension. */
type Factor =
  | { readonly over: bigint; readonly under: bigint }
  | Extract<QuantityFault, 'unknown-unit' | 'wrong-dimension'>;

/** The unit library is asked once for each unit: it works in whole fractions and takes its time. */
const factors = new Map<string, Factor>();

/**
 * Reads a quantity as people write it ("150 mm", "1.125 in", "7 N·m") into the whole units it is held in.
 * Exact: the decimal number is taken as a fraction; a value between two held units is rounded half up.
 */
export function parseQuantity<D extends Dimension>(dimension: D, text: string): Parsed<D> {
  const match = WRITTEN.exec(text);
  if (!match?.[1] || !match[2]) return { ok: false, fault: 'not-a-quantity' };
  const factor = factorOf(dimension, match[2]);
  if (typeof factor === 'string') return { ok: false, fault: factor };
  const [whole = '', digits = ''] = match[1].split('.');
  const over = BigInt(whole + digits) * factor.over;
  const under = 10n ** BigInt(digits.length) * factor.under;
  const value = Number((2n * over + under) / (2n * under));
  return Number.isSafeInteger(value) && value <= 1e12
    ? { ok: true, value: held(dimension, value) }
    : { ok: false, fault: 'out-of-range' };
}

function factorOf(dimension: Dimension, written: string): Factor {
  const key = `${dimension} ${written}`;
  const known = factors.get(key);
  if (known !== undefined) return known;
  const factor = workOut(dimension, SPELLING.get(written) ?? written);
  if (factors.size < MOST_FACTORS) factors.set(key, factor);
  return factor;
}

/** Most units that are remembered: what people write in error is without end. */
const MOST_FACTORS = 1_000;

function workOut(dimension: Dimension, unit: string): Factor {
  const one = readUnit(unit);
  if (!one) return 'unknown-unit';
  if (!one.equalBase(math.unit(HELD_IN[dimension]))) return 'wrong-dimension';
  const [times, by] = SCALE[dimension];
  const exact = (one.toNumeric(HELD_IN[dimension]) as Fraction).mul(times).div(by);
  return { over: exact.n, under: exact.d };
}

function readUnit(unit: string): Unit | null {
  try {
    const exact = EXACT.get(unit);
    return exact ? math.unit(math.fraction(exact.times), exact.unit) : math.unit(math.fraction(1), unit);
  } catch {
    return null;
  }
}
