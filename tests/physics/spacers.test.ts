import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  type AirSpring,
  airForce,
  gapAtFullCompression,
  metres,
  newtons,
  pressureForForce,
  type SpacerQuestion,
  STANDARD_ATMOSPHERE,
  spacersKeepingEnd,
  tyreFromDesignation,
} from '../../src/physics/index.ts';
import { hold } from '../laws/hold.ts';
import { value } from './outcomes.ts';
import { millilitres, mm, springs, within, workedSpring } from './springs.ts';

/** The same chamber at full extension, another shaft: only the travel differs. */
const shorter = (spring: AirSpring, travel: number): AirSpring => ({ ...spring, travel: mm(travel) });
const question = (before: AirSpring, after: AirSpring, more: Partial<SpacerQuestion> = {}): SpacerQuestion => ({
  before,
  after,
  load: newtons(300),
  sag: 0.25,
  ambient: STANDARD_ATMOSPHERE,
  exponent: 1.3,
  greatest: 8,
  ...more,
});

describe('volume spacers for another travel', () => {
  it('nothing changed: the count that is in it keeps the end', () => {
    for (const count of [0, 1, 3]) {
      const spring = workedSpring(count);
      const found = value(spacersKeepingEnd(question(spring, workedSpring(7))));
      expect(found).toMatchObject({ nearest: count, reach: 'within' });
      expect(found.keeps).toBeCloseTo(count, 9);
    }
  });

  it('table: each count by pressure at sag and force at the end, worked singly', () => {
    const after = shorter(workedSpring(0), 130);
    const found = value(spacersKeepingEnd(question(workedSpring(1), after)));
    expect(found.counts.map(({ count }) => count)).toEqual([0, 1, 2, 3, 4, 5, 6, 7, 8]);
    for (const { count, ratio, pressure } of found.counts) {
      const fitted = { ...after, spacers: count };
      expect(value(pressureForForce(fitted, STANDARD_ATMOSPHERE, mm(32.5), newtons(300)))).toBe(pressure);
      const state = { pump: pressure, ambient: STANDARD_ATMOSPHERE, exponent: 1.3 };
      expect(ratio).toBeCloseTo(value(airForce(fitted, state, mm(130))) / 300, 9);
    }
  });

  it('no room: counts stop where the chamber would be too small', () => {
    const found = value(spacersKeepingEnd(question(workedSpring(1), workedSpring(0), { greatest: 20 })));
    expect(found.counts.length).toBe(10);
  });

  it('out of reach: said, with the nearest count', () => {
    const longer = value(spacersKeepingEnd(question(shorter(workedSpring(0), 130), workedSpring(0))));
    expect(longer).toMatchObject({ keeps: null, nearest: 0, reach: 'none-is-too-many' });
    const few = question(workedSpring(3), shorter(workedSpring(0), 100), { greatest: 2 });
    expect(value(spacersKeepingEnd(few))).toMatchObject({ keeps: null, nearest: 2, reach: 'greatest-is-too-few' });
  });

  it('law: the count found keeps the ratio; less travel in the same chamber never takes fewer', () => {
    const cases = fc.tuple(springs, within(0.6, 0.98), within(150, 600), within(0.15, 0.35), within(1, 1.4));
    hold('spacers', 600, cases, ([spring, share, load, sag, exponent]) => {
      // Chambers that hold back from the start: with an equalised negative side, as nearly every air fork has.
      const before: AirSpring = {
        ...spring,
        spacers: 1,
        negative: { kind: 'equalised', volume: millilitres(50), at: mm(2) },
      };
      const after = { ...before, travel: metres(before.travel * share) };
      const ask = question(before, after, { load: newtons(load), sag, exponent, greatest: 12 });
      const found = spacersKeepingEnd(ask);
      if (!found.ok || found.value.keeps === null) return;
      expect(found.value.keeps).toBeGreaterThanOrEqual(1 - 1e-9);
      const fitted = { ...after, spacers: found.value.keeps };
      const pump = value(pressureForForce(fitted, STANDARD_ATMOSPHERE, metres(sag * after.travel), newtons(load)));
      const end = value(airForce(fitted, { pump, ambient: STANDARD_ATMOSPHERE, exponent }, after.travel));
      expect(end / load / found.value.before).toBeCloseTo(1, 6);
    });
  });
});

describe('common practice, no source', () => {
  it('160 to 130 mm on one chassis: from about one to about three, between the old count and the one that keeps the end', () => {
    for (const load of [200, 300, 400])
      for (const exponent of [1, 1.3, 1.4]) {
        const before = workedSpring(1);
        const ask = question(before, shorter(before, 130), { load: newtons(load), exponent, greatest: 12 });
        const { keeps, counts, before: ratio } = value(spacersKeepingEnd(ask));
        // The practised three give more at the end than the old one would, and less than the long fork had.
        expect(keeps).toBeGreaterThan(3);
        expect(counts[3]?.ratio).toBeGreaterThan(counts[1]?.ratio ?? Number.NaN);
        expect(counts[3]?.ratio).toBeLessThan(ratio);
      }
  });

  it('one cartridge gives less travel in a larger wheel’s chassis: the tyre meets the crown sooner', () => {
    // From axle to the underside of the crown 500 mm at full extension in each, the same width of tyre, 6 mm to spare.
    const greatestTravel = (designation: string): number => {
      const tyre = value(tyreFromDesignation(designation));
      const extended = metres(0.5 - tyre.greatest / 2);
      const travel = metres(extended - 0.006);
      expect(value(gapAtFullCompression(extended, travel))).toBeCloseTo(0.006, 12);
      return travel * 1000;
    };
    const [smallest, middle, largest] = ['60-559', '60-584', '60-622'].map(greatestTravel);
    expect(smallest).toBeGreaterThan(middle ?? 0);
    expect(middle).toBeGreaterThan(largest ?? 0);
    // Makers give 10 to 20 mm less from 584 to 622: half the 38 mm between the bead seats is 19 mm.
    expect((middle ?? 0) - (largest ?? 0)).toBeGreaterThan(10);
    expect((middle ?? 0) - (largest ?? 0)).toBeLessThan(20);
  });
});
