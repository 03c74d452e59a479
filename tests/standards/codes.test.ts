import { describe, expect, it } from 'vitest';
import { gtinCheckDigit } from '../../src/catalog/gtin.ts';
import { UNIT_CODE } from '../../src/report/unit-code.ts';

describe('GS1: check digit, weights 3 and 1 in turn from the right of the body', () => {
  // Published worked examples: the first two in GS1's own material on the check digit, the others in national GS1 pages and a
  // GTIN-14 among them. The last body is published, its digit computed by hand: sum 90, a multiple of ten.
  it.each([
    ['629104150021', 3],
    ['730001100001', 7],
    ['890400021003', 7],
    ['4098765000022', 3],
    ['501234567890', 0],
  ])('check digit: %s has %i', (body, digit) => {
    expect(gtinCheckDigit(body)).toBe(digit);
  });
});

describe('UN/ECE Recommendation 20: unit codes, through a public code table', () => {
  it.each([
    ['piece', 'H87'],
    ['mL', 'MLT'],
    ['g', 'GRM'],
  ] as const)('%s: is %s', (unit, code) => {
    expect(UNIT_CODE[unit]).toBe(code);
  });
});
