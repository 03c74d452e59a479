import { forceAt } from './air-force.ts';
import { type AirSpring, type AirState, stateOutside } from './air-spring.ts';
import { type Computed, computed, firstOutside, outside } from './outcome.ts';
import { metres } from './units.ts';

/**
 * The end-of-stroke ratio: the force at full travel (with the state's exponent, as in a hard hit) to the force at sag
 * (slowly, n = 1, as sag is read). It says how much the spring has in hand at the end: the greater, the harder to bottom.
 * `sag` is a share of travel. Definition of this project; no standard defines one. Range and what is left out: as `airForce`.
 */
export function endOfStrokeRatio(spring: AirSpring, state: AirState, sag: number): Computed<number> {
  const found = stateOutside(spring, state, []) ?? firstOutside([sagBound(sag)]);
  if (found) return found;
  const x = metres(sag * spring.travel);
  const still = forceAt(spring, { ...state, exponent: 1 }, x);
  const end = forceAt(spring, state, spring.travel);
  return still < 1 ? outside('no-force-at-sag', { sag: x }) : computed(end / still);
}

/** Sag that is computed with, as a share of travel. */
export const sagBound = (sag: number) => ['sag', 'share of travel', sag, 0.02, 0.6] as const;
