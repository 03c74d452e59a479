import fc from 'fast-check';
import { derivative, parse } from 'mathjs';
import { describe, expect, it } from 'vitest';
import {
  type AirSpring,
  type AirState,
  airForce,
  airPressures,
  airRate,
  airWork,
  gaugePressure,
  metres,
  newtons,
  pressureForForce,
  travelUnder,
} from '../../src/physics/index.ts';
import { hold } from '../laws/hold.ts';
import { integrate } from './integrate.ts';
import { value } from './outcomes.ts';
import { springs, states, within } from './springs.ts';

/** A spring, its filling, and a share of its travel. */
const cases = fc.tuple(springs, states, within(0, 1));
const RELATIVE = 1e-6;

/** What the chambers do between two travels, by integrating dp/dx = ± n p A / V and dW/dx = F: knows no closed form. */
function pressed(
  spring: AirSpring,
  state: AirState,
  start: Chambers,
  from: number,
  to: number,
): Chambers & { work: number } {
  const { pistonArea: area, negative } = spring;
  const back = area - spring.shaftArea;
  const free = spring.positiveVolume - spring.spacers * spring.spacerVolume;
  const behind = 'volume' in negative ? negative.volume : Number.POSITIVE_INFINITY;
  const slopes = (x: number, [p = 0, q = 0]: readonly number[]): readonly number[] => [
    (state.exponent * p * area) / (free - area * x),
    (-state.exponent * q * back) / (behind + back * x),
    net(spring, state, { positive: p, negative: q }, x),
  ];
  if (from === to) return { ...start, work: 0 };
  const [positive = 0, second = 0, work = 0] = integrate(slopes, from, [start.positive, start.negative, 0], to);
  return { positive, negative: second, work };
}
interface Chambers {
  readonly positive: number;
  readonly negative: number;
}

function net(spring: AirSpring, state: AirState, { positive, negative }: Chambers, x: number): number {
  const out = (positive - state.ambient) * spring.pistonArea;
  switch (spring.negative.kind) {
    case 'none':
      return out;
    case 'coil':
      return out - spring.negative.rate * Math.max(0, spring.negative.reach - x);
    default:
      return out - (negative - state.ambient) * (spring.pistonArea - spring.shaftArea);
  }
}

/** From the pump at full extension: slowly to where the chambers are joined, then with the exponent to the travel. */
function byIntegration(spring: AirSpring, state: AirState, x: number): Chambers & { readonly force: number } {
  const at = spring.negative.kind === 'equalised' ? spring.negative.at : 0;
  const filled = state.pump + state.ambient;
  const slow = pressed(spring, { ...state, exponent: 1 }, { positive: filled, negative: filled }, 0, at);
  const charged = spring.negative.kind === 'charged' ? spring.negative.pressure + state.ambient : slow.positive;
  const end = pressed(spring, state, { positive: slow.positive, negative: charged }, at, x);
  return { ...end, force: net(spring, state, end, x) };
}

const near = (found: number, expected: number, scale: number): void => {
  expect(Math.abs(found - expected)).toBeLessThanOrEqual(RELATIVE * Math.abs(scale));
};

describe('gas law, second method: the differential equation of the chambers, integrated', () => {
  it('pressures and force: agree to 1e-6 of the positive side', () => {
    hold('gas law integrated', 1500, cases, ([spring, state, share]) => {
      const x = metres(share * spring.travel);
      const found = value(airPressures(spring, state, x));
      const expected = byIntegration(spring, state, x);
      near(found.positive, expected.positive, expected.positive);
      if (found.negative !== null) near(found.negative, expected.negative, expected.negative);
      near(value(airForce(spring, state, x)), expected.force, expected.positive * spring.pistonArea);
    });
  });

  it('work: agrees to 1e-6 of what the positive chamber takes over the whole travel', () => {
    hold('work integrated', 1500, fc.tuple(cases, within(0, 1)), ([[spring, state, share], second]) => {
      const [from, to] = [metres(share * spring.travel), metres(second * spring.travel)];
      // The coil's force has a corner, which an integrator of high order feels: it goes there, then on.
      const corner = spring.negative.kind === 'coil' ? spring.negative.reach : from;
      const through = Math.min(Math.max(corner, Math.min(from, to)), Math.max(from, to));
      const start = byIntegration(spring, state, from);
      const half = pressed(spring, state, start, from, through);
      const rest = pressed(spring, state, half, through, to);
      const scale = byIntegration(spring, state, spring.travel).positive * spring.pistonArea * spring.travel;
      near(value(airWork(spring, state, from, to)), half.work + rest.work, scale);
    });
  });

  it('work: from one travel to another and back is nothing', () => {
    hold('work there and back', 500, fc.tuple(cases, within(0, 1)), ([[spring, state, share], second]) => {
      const [from, to] = [metres(share * spring.travel), metres(second * spring.travel)];
      const [there, back] = [value(airWork(spring, state, from, to)), value(airWork(spring, state, to, from))];
      expect(there + back).toBeCloseTo(0, 9);
    });
  });
});

describe('rate, second method: the force as text, derived by a computer algebra', () => {
  const forward = parse(
    '(p * (v / (free - a * x))^n - amb) * a - (p2 * (w / (behind + b * x))^n - amb) * b - k * (reach - x)',
  );
  const slope = derivative(forward, 'x').compile();

  it('rate: agrees to 1e-6', () => {
    hold('rate by algebra', 1500, cases, ([spring, state, share]) => {
      const x = share * spring.travel;
      const { negative } = spring;
      const at = negative.kind === 'equalised' ? negative.at : 0;
      const free = spring.positiveVolume - spring.spacers * spring.spacerVolume;
      const joined = ((state.pump + state.ambient) * free) / (free - spring.pistonArea * at);
      const b = 'volume' in negative ? spring.pistonArea - spring.shaftArea : 0;
      const behind = 'volume' in negative ? negative.volume : 1;
      const expected: number = slope.evaluate({
        x,
        n: state.exponent,
        amb: state.ambient,
        a: spring.pistonArea,
        free,
        v: free - spring.pistonArea * at,
        p: joined,
        b,
        behind,
        w: behind + b * at,
        p2: negative.kind === 'charged' ? negative.pressure + state.ambient : joined,
        k: negative.kind === 'coil' && x < negative.reach ? negative.rate : 0,
        reach: negative.kind === 'coil' ? negative.reach : 0,
      });
      near(value(airRate(spring, state, metres(x))), expected, expected);
    });
  });
});

describe('sag: pressure, force and travel are inverses of each other', () => {
  it('pressure: filled as worked out, the integrated spring holds the force at the travel', () => {
    hold('pressure for a force', 1000, fc.tuple(cases, within(50, 3000)), ([[spring, state, share], load]) => {
      const at = spring.negative.kind === 'equalised' ? spring.negative.at : 0;
      const x = metres(at + share * (spring.travel - at));
      const found = pressureForForce(spring, state.ambient, x, newtons(load));
      if (!found.ok) {
        // The only reasons there can be: chambers that balance where they are joined, or no pressure of a pump that does it.
        if (found.code === 'no-force-at-sag') expect(x - at).toBeLessThan(0.01 * spring.travel);
        if (found.code === 'no-force-at-sag') return;
        const by = (pump: number) =>
          byIntegration(spring, { ...state, pump: gaugePressure(pump), exponent: 1 }, x).force;
        expect(by(0) > load || by(5e6) < load).toBe(true);
        return;
      }
      const { force, positive } = byIntegration(spring, { ...state, pump: found.value, exponent: 1 }, x);
      near(force, load, positive * spring.pistonArea);
    });
  });

  it('travel: where a force presses a spring to, the spring holds it', () => {
    hold('travel under a force', 1000, fc.tuple(springs, states, within(0, 6000)), ([spring, state, load]) => {
      const x = value(travelUnder(spring, state, newtons(load)));
      const held = value(airForce(spring, state, x));
      if (x === 0) expect(held).toBeGreaterThanOrEqual(load - 1e-9);
      else if (x === spring.travel) expect(held).toBeLessThanOrEqual(load + 1e-9);
      else near(held, load, load + 100);
    });
  });
});
