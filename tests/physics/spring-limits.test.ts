import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  airCurve,
  airForce,
  airRate,
  airWork,
  coilForce,
  coilWork,
  cubicMetres,
  endOfStrokeRatio,
  gaugePressure,
  metres,
  springRate,
  squareMetres,
} from '../../src/physics/index.ts';
import { hold } from '../laws/hold.ts';
import { code, value } from './outcomes.ts';
import { filled, mm, springs, states, within, workedSpring } from './springs.ts';

describe('air spring: limits and laws', () => {
  it('n = 1: the limit of exponents near 1, without a jump', () => {
    hold('n near 1', 500, fc.tuple(springs, states, within(0, 1)), ([spring, state, share]) => {
      const x = metres(share * spring.travel);
      const [one, near] = [
        { ...state, exponent: 1 },
        { ...state, exponent: 1 + 1e-9 },
      ];
      const scale = value(airForce({ ...spring, negative: { kind: 'none' } }, one, x)) + 1e5 * spring.pistonArea;
      const gap = value(airForce(spring, near, x)) - value(airForce(spring, one, x));
      expect(Math.abs(gap)).toBeLessThan(1e-7 * scale);
      const work = value(airWork(spring, near, metres(0), x)) - value(airWork(spring, one, metres(0), x));
      expect(Math.abs(work)).toBeLessThan(1e-7 * scale * spring.travel + 1e-12);
    });
  });

  it('rise: force rises with travel, pressure, exponent and volume spacers', () => {
    hold('rises', 800, fc.tuple(springs, states, within(0, 0.95)), ([spring, state, share]) => {
      const at = spring.negative.kind === 'equalised' ? spring.negative.at : 0;
      const x = metres(at + share * (spring.travel - at));
      const force = value(airForce(spring, state, x));
      expect(value(airForce(spring, state, metres(x + 0.02 * (spring.travel - at))))).toBeGreaterThan(force);
      expect(value(airForce(spring, { ...state, pump: gaugePressure(state.pump * 1.1) }, x))).toBeGreaterThan(force);
      const more = { ...spring, spacers: spring.spacers + 1 };
      const end = value(airForce(spring, state, spring.travel));
      expect(value(airForce(more, state, spring.travel))).toBeGreaterThanOrEqual(end);
      const sharper = { ...state, exponent: state.exponent + 0.1 };
      expect(value(airForce(spring, sharper, spring.travel))).toBeGreaterThan(end);
      expect(value(airRate(spring, state, x))).toBeGreaterThan(0);
    });
  });

  it('full extension: with a port there and no shaft the chambers cancel, whatever the pressure', () => {
    hold('no shaft', 200, states, (state) => {
      const spring = { ...workedSpring(1), shaftArea: squareMetres(0) };
      expect(value(airForce(spring, state, metres(0)))).toBeCloseTo(0, 9);
    });
  });

  it('full extension: otherwise gauge pressure times shaft area holds it out', () => {
    hold('shaft', 200, states, (state) => {
      const force = value(airForce(workedSpring(2), state, metres(0)));
      expect(force).toBeCloseTo(state.pump * workedSpring(2).shaftArea, 8);
    });
  });

  it('no volume spacer volume: the count does not matter', () => {
    const none = (spacers: number) => ({ ...workedSpring(spacers), spacerVolume: cubicMetres(0) });
    expect(airForce(none(5), filled(1.3), mm(120))).toEqual(airForce(none(0), filled(1.3), mm(120)));
  });

  it('curve: its ends and points are those of the single functions', () => {
    const curve = value(airCurve(workedSpring(2), filled(1.3), 5));
    expect(curve.map(({ travel }) => Math.round(travel * 1000))).toEqual([0, 40, 80, 120, 160]);
    for (const point of curve) expect(point.force).toBe(value(airForce(workedSpring(2), filled(1.3), point.travel)));
  });

  it('end-of-stroke ratio: 2550.6047 N at the end of a hit over 362.0497 N at 40 mm of 160', () => {
    // From the worked spring of the standards tests: n = 1.3 at the end, n = 1 at sag, two spacers.
    expect(value(endOfStrokeRatio(workedSpring(2), filled(1.3), 0.25))).toBeCloseTo(2550.6047 / 362.0497, 5);
  });

  it('too many volume spacers: less than a fiftieth of the chamber left is no spring', () => {
    // 240.5 mL less 153.9 mL swept leaves 86.6 mL: nine spacers of 9 mL leave 5.6, a tenth more than 1/50; ten leave none.
    expect(code(airForce(workedSpring(9), filled(1), mm(0)))).toBe('ok');
    expect(code(airForce(workedSpring(10), filled(1), mm(0)))).toBe('chamber-too-small');
  });
});

describe('coil spring: Hooke', () => {
  const coil = { travel: mm(150), rate: springRate(6000), preload: mm(10), room: null };

  it('force: 6 N/mm, 10 mm of preload: 60 N at full extension, 960 N at 150 mm', () => {
    expect([0, 150].map((x) => value(coilForce(coil, mm(x))))).toEqual([60, 960]);
  });

  it('work: mean force times way, (60 + 960) / 2 N over 150 mm is 76.5 J', () => {
    expect(value(coilWork(coil, mm(0), mm(150)))).toBeCloseTo(76.5, 12);
    expect(value(coilWork(coil, mm(150), mm(0)))).toBeCloseTo(-76.5, 12);
  });

  it('room: a coil that would be pressed further than it can be is said', () => {
    expect(code(coilForce({ ...coil, room: mm(160) }, mm(0)))).toBe('ok');
    expect(coilForce({ ...coil, room: mm(159) }, mm(0))).toMatchObject({
      code: 'coil-bind',
      params: { room: 0.159 },
    });
  });
});
