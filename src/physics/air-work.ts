import { joinedPressure } from './air-force.ts';
import {
  type AirSpring,
  type AirState,
  equalisingTravel,
  negativeArea,
  positiveVolumeAt,
  stateOutside,
} from './air-spring.ts';
import { type Computed, computed } from './outcome.ts';
import { type Joules, joules, type Metres } from './units.ts';

/**
 * The work that pressing the spring from one travel to another takes, J: the integral of `airForce`, in closed form.
 * A chamber at p₀, V₀ brought to V takes p₀ V₀ ((V₀/V)^(n-1) - 1) / (n - 1), and p₀ V₀ ln(V₀/V) for n = 1 (OpenStax
 * University Physics vol. 2, sections 3.4 and 3.6); the air around does p_ambient A_shaft times the way. Negative on the
 * way out. Range and what is left out: as `airForce`.
 */
export function airWork(spring: AirSpring, state: AirState, from: Metres, to: Metres): Computed<Joules> {
  const found = stateOutside(spring, state, [from, to]);
  if (found) return found;
  const at = equalisingTravel(spring);
  const joined = joinedPressure(spring, state);
  const { exponent, ambient } = state;
  const positive = (x: number): number =>
    chamberWork(joined, positiveVolumeAt(spring, at), positiveVolumeAt(spring, x), exponent);
  const out = positive(to) - positive(from);
  const { negative } = spring;
  const area = negativeArea(spring);
  switch (negative.kind) {
    case 'none':
      return computed(joules(out - ambient * spring.pistonArea * (to - from)));
    case 'coil': {
      const held = (x: number): number => 0.5 * negative.rate * Math.max(0, negative.reach - x) ** 2;
      return computed(joules(out - ambient * spring.pistonArea * (to - from) + held(to) - held(from)));
    }
    case 'equalised':
    case 'charged': {
      const start = negative.kind === 'equalised' ? joined : negative.pressure + ambient;
      const back = (x: number): number =>
        chamberWork(start, negative.volume + area * at, negative.volume + area * x, exponent);
      return computed(joules(out + back(to) - back(from) - ambient * spring.shaftArea * (to - from)));
    }
  }
}

/** Work on a gas from volume `before` to `after`. Written with expm1, so that nothing is lost where n is near 1. */
function chamberWork(pressure: number, before: number, after: number, exponent: number): number {
  const log = Math.log(before / after);
  const k = exponent - 1;
  return pressure * before * (k === 0 ? log : Math.expm1(k * log) / k);
}
