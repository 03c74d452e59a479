import {
  type AirSpring,
  type AirState,
  equalisingTravel,
  negativeArea,
  positiveVolumeAt,
  stateOutside,
} from './air-spring.ts';
import { type Computed, computed, firstOutside } from './outcome.ts';
import {
  type AbsolutePressure,
  absolutePressure,
  type Metres,
  metres,
  type Newtons,
  newtons,
  type SpringRate,
  springRate,
} from './units.ts';

/** Pressures in the chambers; null where there is no such chamber. */
export interface ChamberPressures {
  readonly positive: AbsolutePressure;
  readonly negative: AbsolutePressure | null;
}

/**
 * The pressures in the chambers at a travel.
 *
 * p V^n = const in each chamber (polytropic law; n = 1 is Boyle, n = 1.4 the adiabatic law of OpenStax University Physics
 * vol. 2, section 3.6), from where the chambers are last joined: there both hold what the pump showed, brought from full
 * extension to there slowly (n = 1). Range: the bounds of `AirSpring` and `AirState`. An ideal gas; air departs from it by
 * 0.7 % at 20 bar and room temperature (CoolProp 8.0). Left out: heat that flows during the stroke, but for n; gas that
 * passes the port on the way.
 */
export function airPressures(spring: AirSpring, state: AirState, x: Metres): Computed<ChamberPressures> {
  const found = stateOutside(spring, state, [x]);
  return found ?? computed(pressuresAt(spring, state, x));
}

/**
 * What the spring pushes out with, N: (p₊ - p_ambient) A - (p₋ - p_ambient) (A - A_shaft), or less the force of a negative
 * coil. Below zero where the negative side is the stronger: then the fork rests a little way in. Source: statics of a
 * piston; pressures as in `airPressures`. Left out: friction, the air in the lowers, the bumper at the end.
 */
export function airForce(spring: AirSpring, state: AirState, x: Metres): Computed<Newtons> {
  const found = stateOutside(spring, state, [x]);
  return found ?? computed(newtons(forceAt(spring, state, x)));
}

/**
 * How fast the force rises with travel, N/m: dF/dx = n p₊ A² / V₊ + n p₋ (A - A_shaft)² / V₋, and the rate of a negative
 * coil while it presses. The derivative of `airForce`, in closed form.
 */
export function airRate(spring: AirSpring, state: AirState, x: Metres): Computed<SpringRate> {
  const found = stateOutside(spring, state, [x]);
  return found ?? computed(springRate(rateAt(spring, state, x)));
}

/** One point of a curve over travel. */
export interface CurvePoint extends ChamberPressures {
  readonly travel: Metres;
  readonly force: Newtons;
  readonly rate: SpringRate;
}

/** Pressures, force and rate at `points` travels (2 to 1001), evenly from full extension to full travel. */
export function airCurve(spring: AirSpring, state: AirState, points: number): Computed<readonly CurvePoint[]> {
  const found = stateOutside(spring, state, []) ?? firstOutside([['points', '', points, 2, 1001]]);
  if (found) return found;
  const count = Math.floor(points);
  const at = (index: number): CurvePoint => {
    const x = index === count - 1 ? spring.travel : (spring.travel * index) / (count - 1);
    return {
      travel: metres(x),
      ...pressuresAt(spring, state, x),
      force: newtons(forceAt(spring, state, x)),
      rate: springRate(rateAt(spring, state, x)),
    };
  };
  return computed(Array.from({ length: count }, (_, index) => at(index)));
}

/** Pressure, Pa absolute, in both chambers where they are joined. For a negative side without a port: in the positive one at full extension. */
export const joinedPressure = (spring: AirSpring, state: AirState): number =>
  ((state.pump + state.ambient) * positiveVolumeAt(spring, 0)) / positiveVolumeAt(spring, equalisingTravel(spring));

/** As `airPressures`, for inputs that are known to be inside. */
export function pressuresAt(spring: AirSpring, state: AirState, x: number): ChamberPressures {
  const at = equalisingTravel(spring);
  const joined = joinedPressure(spring, state);
  const grown = positiveVolumeAt(spring, at) / positiveVolumeAt(spring, x);
  const positive = absolutePressure(joined * grown ** state.exponent);
  const { negative } = spring;
  if (negative.kind !== 'equalised' && negative.kind !== 'charged') return { positive, negative: null };
  const area = negativeArea(spring);
  const start = negative.kind === 'equalised' ? joined : negative.pressure + state.ambient;
  const shrunk = (negative.volume + area * at) / (negative.volume + area * x);
  return { positive, negative: absolutePressure(start * shrunk ** state.exponent) };
}

/** As `airForce`, for inputs that are known to be inside. */
export function forceAt(spring: AirSpring, state: AirState, x: number): number {
  const { positive, negative } = pressuresAt(spring, state, x);
  const out = (positive - state.ambient) * spring.pistonArea;
  if (negative !== null) return out - (negative - state.ambient) * negativeArea(spring);
  const coil = spring.negative;
  return coil.kind === 'coil' ? out - coil.rate * Math.max(0, coil.reach - x) : out;
}

function rateAt(spring: AirSpring, state: AirState, x: number): number {
  const { positive, negative } = pressuresAt(spring, state, x);
  const area = negativeArea(spring);
  const out = (state.exponent * positive * spring.pistonArea ** 2) / positiveVolumeAt(spring, x);
  if (negative !== null && 'volume' in spring.negative)
    return out + (state.exponent * negative * area ** 2) / (spring.negative.volume + area * x);
  return spring.negative.kind === 'coil' && x < spring.negative.reach ? out + spring.negative.rate : out;
}
