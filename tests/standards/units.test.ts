import { describe, expect, it } from 'vitest';
import {
  fromPressureUnit,
  fromTorqueUnit,
  inPressureUnit,
  inTorqueUnit,
  newtonMetres,
  PASCALS_PER,
  STANDARD_ATMOSPHERE,
} from '../../src/physics/index.ts';
import { minorDigits } from '../../src/quantity/index.ts';
import { asPrinted } from '../physics/outcomes.ts';

describe('NIST SP 811 (2008), appendix B.8: factors', () => {
  it('psi: 6.894 757e3 Pa, and by the definitions 6894.757 293 168 36', () => {
    expect(asPrinted(PASCALS_PER.psi / 1e3, 6.894757, 6)).toBe(true);
    expect(PASCALS_PER.psi).toBeCloseTo(6894.75729316836, 10);
  });

  it('bar: 1e5 Pa, 14.503 773 773 psi', () => {
    expect(inPressureUnit(fromPressureUnit(1, 'bar'), 'psi').toFixed(9)).toBe('14.503773773');
    expect(fromPressureUnit(1, 'psi') / PASCALS_PER.bar).toBeCloseTo(0.06894757293168, 13);
  });

  it('pound-force inch: 1.129 848e-1 N·m, exactly 0.112 984 829 027 616 7', () => {
    expect(asPrinted(fromTorqueUnit(1, 'in·lbf') * 10, 1.129848, 6)).toBe(true);
    expect(fromTorqueUnit(1, 'in·lbf')).toBeCloseTo(0.1129848290276167, 15);
  });

  it('pound-force foot: 1.355 818 N·m, exactly 1.355 817 948 331 400 4', () => {
    expect(asPrinted(fromTorqueUnit(1, 'ft·lbf'), 1.355818, 6)).toBe(true);
    expect(fromTorqueUnit(1, 'ft·lbf')).toBeCloseTo(1.3558179483314, 14);
    expect(inTorqueUnit(newtonMetres(12), 'N·m')).toBe(12);
  });

  it('standard atmosphere: 1.013 25e5 Pa', () => {
    expect(STANDARD_ATMOSPHERE).toBe(101_325);
  });
});

describe('ISO 4217: minor units, as tabled in OPC UA part 3', () => {
  it.each([
    ['EUR', 2],
    ['USD', 2],
    ['GBP', 2],
    ['JPY', 0],
  ])('digits: %s has %i behind the point', (currency, digits) => {
    expect(minorDigits(currency)).toBe(digits);
  });
});
