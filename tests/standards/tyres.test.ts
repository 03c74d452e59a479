import { describe, expect, it } from 'vitest';
import { tyreFromDesignation } from '../../src/physics/index.ts';
import { beadSeatOf, wheelWords } from '../../src/quantity/index.ts';
import { asPrinted, value } from '../physics/outcomes.ts';

const size = (designation: string) => value(tyreFromDesignation(designation));

describe('ISO 5775: what the trade calls a wheel in inches', () => {
  it.each([
    ['26', 559],
    ['27.5', 584],
    ['29', 622],
  ])('decimal size: %s in is a bead-seat diameter of %i mm, and is said so', (inches, beadSeat) => {
    expect(beadSeatOf(inches)).toBe(beadSeat);
    expect(beadSeatOf(`${inches} in`)).toBe(beadSeat);
    expect(wheelWords(beadSeat)).toBe(`${beadSeat} (${inches} in)`);
  });

  it('names that stand for several diameters are not read: 20 in is 406 and 451, 24 in 507, 520, 540 and 547', () => {
    expect(['20', '24', '28'].map(beadSeatOf)).toEqual([null, null, null]);
    expect([406, 507].map(wheelWords)).toEqual(['406', '507']);
  });
});

describe('ISO 5775: outside diameters that tyre makers print', () => {
  it.each([
    ['25-630', 680],
    ['32-622', 686],
    ['28-622', 678],
    ['57-622', 736],
    ['54-584', 692],
    ['50-559', 659],
    ['57-584', 698],
    ['57-559', 673],
  ])('diameter: %s is %i mm', (designation, diameter) => {
    expect(asPrinted(size(designation).diameter * 1000, diameter, 0)).toBe(true);
  });

  it.each([
    ['28-622', 2130],
    ['57-622', 2312],
    ['54-584', 2174],
    ['50-559', 2070],
    ['57-559', 2114],
  ])('circumference: %s is %i mm', (designation, circumference) => {
    expect(asPrinted(size(designation).circumference * 1000, circumference, 0)).toBe(true);
  });

  it('bead seat: the second number, in mm', () => {
    expect([size('60-622').beadSeat, size('60-584').beadSeat, size('60-559').beadSeat]).toEqual([0.622, 0.584, 0.559]);
    expect(size('60-622').width).toBe(0.06);
  });
});

describe('rolling circumferences: the wheel table of the Bluetooth cycling-speed profile, and another list', () => {
  // The rule is 0.4 to 0.9 % low on wide tyres in the first list, 0.5 % high against the second (27.5 x 2.25).
  it.each([
    ['60-622', 2340],
    ['50-622', 2284],
    ['60-559', 2146],
    ['57-559', 2133],
    ['54-559', 2114],
    ['50-559', 2089],
    ['57-584', 2182],
  ])('uncertainty: the listed circumference of %s, %i mm, lies within it', (designation, listed) => {
    const { least, greatest } = size(designation);
    expect(listed / 1000 / Math.PI).toBeGreaterThan(least);
    expect(listed / 1000 / Math.PI).toBeLessThan(greatest);
  });
});
