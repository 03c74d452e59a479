import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import * as physics from '../../src/physics/index.ts';
import { hold } from '../laws/hold.ts';
import { within } from './springs.ts';

/** Numbers that trouble floating point, and some that are no numbers at all. */
const NASTY = [0, -0, 1, -1, 5e-324, -5e-324, 1e-300, 1e300, -1e300, Number.MAX_VALUE, -Number.MAX_VALUE];
const NONE = [Number.NaN, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];

/** Mostly within the declared range, so that the insides are reached; sometimes on its edges, anywhere, or no number. */
const number = (min: number, max: number): fc.Arbitrary<never> =>
  fc.oneof(
    { weight: 150, arbitrary: within(min, max) },
    { weight: 4, arbitrary: fc.constantFrom(min, max) },
    { weight: 1, arbitrary: fc.double({ noNaN: true, noDefaultInfinity: true }) },
    { weight: 1, arbitrary: fc.constantFrom(...NASTY) },
    { weight: 1, arbitrary: fc.constantFrom(...NONE) },
  ) as fc.Arbitrary<never>;
const orNull = (value: fc.Arbitrary<never>): fc.Arbitrary<never> =>
  fc.option(value, { nil: null }) as fc.Arbitrary<never>;
const text = fc.oneof(fc.constantFrom('60-622', 'M5', ''), fc.string({ maxLength: 12 }));

const negative: fc.Arbitrary<physics.NegativeSide> = fc.oneof(
  fc.record({ kind: fc.constant('none' as const) }),
  fc.record({ kind: fc.constant('equalised' as const), volume: number(1e-7, 1e-2), at: number(0, 0.01) }),
  fc.record({ kind: fc.constant('charged' as const), volume: number(1e-7, 1e-2), pressure: number(0, 5e6) }),
  fc.record({ kind: fc.constant('coil' as const), rate: number(0, 1e6), reach: number(0, 0.05) }),
);
const spring: fc.Arbitrary<physics.AirSpring> = fc.record({
  travel: number(0.005, 0.4),
  pistonArea: number(1e-5, 1e-3),
  shaftArea: number(0, 1e-5),
  positiveVolume: number(1e-6, 1e-2),
  spacerVolume: number(0, 1e-4),
  spacers: number(0, 6),
  negative,
});
const ambient = number(2e4, 1.2e5);
const state: fc.Arbitrary<physics.AirState> = fc.record({ pump: number(0, 5e6), ambient, exponent: number(1, 1.67) });
const x = number(0, 0.05);
const force = number(0, 1e4);
const share = number(0.02, 0.6);
const rider = fc.record({
  rider: number(15, 250),
  bike: number(0, 60),
  frontShare: number(0.05, 1),
  headAngle: number(45, 90),
});
const row = fc.record({ from: number(0, 60), to: number(60, 200), least: number(0, 1e6), greatest: number(1e6, 5e6) });
const limits: fc.Arbitrary<physics.PressureLimits> = fc.record({
  least: orNull(number(0, 1e4)),
  greatest: orNull(number(4e6, 5e6)),
  chart: fc.option(fc.array(row, { maxLength: 3 }), { nil: null }),
});
const sag = fc.record({ wanted: number(0.15, 0.4), tolerance: number(0, 0.1) });
const coil = fc.record({
  travel: number(0.08, 0.25),
  rate: number(100, 1e6),
  preload: number(0, 0.1),
  room: orNull(number(0.5, 1)),
});
const pair = fc.record({ at40: number(0.5, 1e3), at100: number(0.5, 30) });
const oil = fc.record({
  use: fc.constantFrom('bath', 'damper'),
  at40: orNull(number(0.5, 1e5)),
  at100: orNull(number(0.5, 1e5)),
});
const radius = number(0.1, 0.6);
const bike: fc.Arbitrary<physics.BikeGeometry> = fc.record({
  headAngle: number(45, 90),
  wheelbase: number(0.5, 2),
  frontRadius: radius,
  rearRadius: radius,
  offset: number(-0.05, 0.15),
  bottomBracket: fc.option(fc.record({ drop: number(-0.15, 0.15), chainstay: number(0.25, 0.8) }), { nil: null }),
  reachAndStack: fc.option(fc.record({ reach: number(0.1, 0.8), stack: number(0.2, 1) }), { nil: null }),
  seatAngle: orNull(number(45, 90)),
});
const change = fc.record({
  longer: number(-0.3, 0.3),
  offset: number(-0.05, 0.15),
  frontRadius: radius,
  rearRadius: radius,
  rearSag: number(-0.1, 0.2),
});
const place = fc.record({ temperature: number(-60, 120), ambient });
const tyre = fc.record({
  width: number(0.005, 0.2),
  beadSeat: number(0.2, 0.7),
  diameter: number(0.2, 0.9),
  least: number(0.2, 0.9),
  greatest: number(0.9, 1.1),
  circumference: number(0, 3),
});
const room = fc.record({ crown: orNull(number(0, 1)), arch: orNull(number(0, 1)), width: orNull(number(0, 0.5)) });
const wrench = fc.record({ id: text, greatest: number(0.1, 1000), lowestMark: orNull(number(0, 0.2)) });
const range = fc.record({ least: number(0, 1e5), wanted: number(1e5, 1e6), greatest: number(1e6, 5e6) });
const unit = fc.constantFrom('psi' as const, 'bar' as const);
const mixed = fc.record({ least: orNull(number(0, 1e5)), greatest: orNull(number(1e6, 5e6)) });

type Run = readonly [fc.Arbitrary<unknown[]>, (...inputs: never[]) => physics.Computed<unknown>];
const of = <const Inputs extends readonly fc.Arbitrary<unknown>[]>(
  call: (...inputs: never[]) => physics.Computed<unknown>,
  ...inputs: Inputs
): Run => [fc.tuple(...inputs) as unknown as fc.Arbitrary<unknown[]>, call];

/** Every public function of the folder that can be outside its domain, with inputs for it. */
const RUNS: Readonly<Record<string, Run>> = {
  airPressures: of(physics.airPressures, spring, state, x),
  airForce: of(physics.airForce, spring, state, x),
  airRate: of(physics.airRate, spring, state, x),
  airWork: of(physics.airWork, spring, state, x, x),
  airCurve: of(physics.airCurve, spring, state, number(2, 20)),
  coilForce: of(physics.coilForce, coil, x),
  coilWork: of(physics.coilWork, coil, x, x),
  axialLoad: of(physics.axialLoad, rider),
  pressureForForce: of(physics.pressureForForce, spring, ambient, x, force),
  travelUnder: of(physics.travelUnder, spring, state, force),
  rateForForce: of(physics.rateForForce, coil, x, force),
  endOfStrokeRatio: of(physics.endOfStrokeRatio, spring, state, share),
  spacersKeepingEnd: of(
    physics.spacersKeepingEnd,
    fc.record({
      before: spring,
      after: spring,
      load: number(10, 3e3),
      sag: share,
      ambient,
      exponent: number(1, 1.67),
      greatest: number(0, 12),
    }),
  ),
  startPressure: of(physics.startPressure, fc.record({ spring, rider, sag, ambient, limits })),
  chartRow: of(physics.chartRow, fc.array(row, { maxLength: 4 }), number(15, 250)),
  coilForRider: of(
    physics.coilForRider,
    fc.record({ coil, rates: fc.array(number(1500, 15_000), { maxLength: 6 }), rider, sag }),
  ),
  onPumpScale: of(physics.onPumpScale, unit, range, mixed),
  pressureElsewhere: of(physics.pressureElsewhere, number(0, 5e6), place, place),
  axisLength: of(
    physics.axisLength,
    number(0.2, 0.8),
    number(-0.05, 0.15),
    fc.constantFrom('straight', 'along-steerer'),
  ),
  straightLength: of(physics.straightLength, number(0.2, 0.8), number(-0.05, 0.15)),
  steering: of(physics.steering, number(30, 90), radius, number(-0.05, 0.15)),
  changedGeometry: of(physics.changedGeometry, bike, change),
  tyreSize: of(physics.tyreSize, number(0.01, 0.15), number(0.2, 0.7)),
  tyreFromDesignation: of(physics.tyreFromDesignation, text),
  tyreRoom: of(physics.tyreRoom, room, tyre, number(0, 0.05)),
  gapAtFullCompression: of(physics.gapAtFullCompression, number(0, 1), number(0, 0.4)),
  clearanceTestTravel: of(physics.clearanceTestTravel, spring, state),
  viscosityAt: of(physics.viscosityAt, pair, number(-40, 150)),
  walther: of(physics.walther, pair),
  viscosityIndex: of(physics.viscosityIndex, fc.record({ at40: number(2, 1e3), at100: number(2, 15) })),
  isoGrade: of(physics.isoGrade, number(9, 110)),
  compareOils: of(physics.compareOils, oil, oil, number(0, 1)),
  wrenchVerdict: of(physics.wrenchVerdict, wrench, number(0.1, 1000)),
  wrenchesFor: of(physics.wrenchesFor, fc.array(wrench, { maxLength: 4 }), number(0.1, 1000)),
  retainingRing: of(physics.retainingRing, fc.oneof(number(0.001, 1), fc.constantFrom(0.022, 0.028, 0.04))),
  ringPliers: of(physics.ringPliers, number(0.008, 0.14)),
  hexKey: of(physics.hexKey, text),
};
/** Functions that convert a number, or cannot be outside any domain. */
const PLAIN =
  /^(?:toGauge|toAbsolute|toRadians|toDegrees|sine|cosine|zOf|countsDisagree|.*Of|(?:from|in)(?:Pressure|Torque)Unit)$/;
/** Constructors of units: the name of a unit and nothing else. */
const UNITS =
  /^(?:metres|squareMetres|cubicMetres|kilograms|newtons|joules|springRate|absolutePressure|gaugePressure|celsius|degrees|newtonMetres|viscosity)$/;

/** Every number inside a value, but for what was found wrong, which is what was put in. */
function* numbersIn(value: unknown): Generator<number> {
  if (typeof value === 'number') yield value;
  else if (typeof value === 'object' && value !== null) for (const one of Object.values(value)) yield* numbersIn(one);
}

describe('total: no function throws, and no value holds NaN or infinity, whatever numbers go in', () => {
  it('list: it names every function that the folder offers', () => {
    const offered = Object.entries(physics).filter(([, one]) => typeof one === 'function');
    const judged = offered.map(([name]) => name).filter((name) => !PLAIN.test(name) && !UNITS.test(name));
    expect(judged.sort()).toEqual(Object.keys(RUNS).sort());
  });

  it.each(Object.entries(RUNS))('%s: a value of finite numbers, or a code', (name, [inputs, call]) => {
    let values = 0;
    hold(name, 1500, inputs, (given) => {
      const outcome = (call as (...inputs: unknown[]) => physics.Computed<unknown>)(...given);
      if (outcome.ok) {
        values += 1;
        for (const one of numbersIn(outcome.value)) expect(Number.isFinite(one)).toBe(true);
      } else {
        expect(outcome.code).toMatch(/^[a-z-]+$/);
        const { found: _, ...params } = outcome.params as { readonly found?: unknown };
        if (outcome.code !== 'out-of-range')
          for (const one of numbersIn(params)) expect(Number.isFinite(one)).toBe(true);
      }
    });
    // The inside was reached, not only the guards.
    expect(values).toBeGreaterThan(50);
  });
});
