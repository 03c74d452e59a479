import { forceAt } from './air-force.ts';
import {
  type AirSpring,
  type AirState,
  ambientBound,
  equalisingTravel,
  negativeArea,
  positiveVolumeAt,
  springOutside,
  stateOutside,
} from './air-spring.ts';
import { type CoilSpring, coilOutside } from './coil-spring.ts';
import { type Computed, computed, firstOutside, outside } from './outcome.ts';
import {
  type AbsolutePressure,
  type GaugePressure,
  gaugePressure,
  type Metres,
  metres,
  type Newtons,
  type SpringRate,
  springRate,
} from './units.ts';

/**
 * The pressure a pump must show at full extension for the spring to hold a force at a travel, both reached slowly (n = 1).
 * The force is linear in the filling, so `airForce` is solved for it in closed form; no iteration. Where the chambers are
 * not yet joined at that travel, or the result is no pressure of a pump (0 to 50 bar), there is none.
 */
export function pressureForForce(
  spring: AirSpring,
  ambient: AbsolutePressure,
  x: Metres,
  force: Newtons,
): Computed<GaugePressure> {
  const least = Math.min(equalisingTravel(spring), spring.travel);
  const found =
    springOutside(spring) ??
    firstOutside([ambientBound(ambient), ['travel used', 'm', x, least, spring.travel], ['force', 'N', force, 0, 1e5]]);
  if (found) return found;
  const area = spring.pistonArea;
  const shrunk = positiveVolumeAt(spring, 0) / positiveVolumeAt(spring, x);
  const filled = (absolute: number): Computed<GaugePressure> =>
    firstOutside([['pressure', 'Pa', absolute - ambient, 0, 5e6]]) ?? computed(gaugePressure(absolute - ambient));
  const { negative } = spring;
  switch (negative.kind) {
    case 'none':
      return filled((force / area + ambient) / shrunk);
    case 'coil':
      return filled(((force + negative.rate * Math.max(0, negative.reach - x)) / area + ambient) / shrunk);
    case 'charged': {
      const back = negativeArea(spring);
      const held = ((negative.pressure + ambient) * negative.volume) / (negative.volume + back * x);
      return filled((force + (held - ambient) * back + ambient * area) / (area * shrunk));
    }
    case 'equalised': {
      const back = negativeArea(spring);
      const joined = positiveVolumeAt(spring, 0) / positiveVolumeAt(spring, negative.at);
      const grown = (negative.volume + back * negative.at) / (negative.volume + back * x);
      const lever = area * shrunk - back * joined * grown;
      if (lever < 1e-6 * area) return outside('no-force-at-sag', { sag: x });
      return filled((force + ambient * (area - back)) / lever);
    }
  }
}

/**
 * How far a force presses an air spring: where `airForce` equals it; 0 where the spring holds more from the start, the
 * whole travel where it never holds as much. By halving, to the last float digit; the force rises with travel throughout.
 */
export function travelUnder(spring: AirSpring, state: AirState, force: Newtons): Computed<Metres> {
  const found = stateOutside(spring, state, []) ?? firstOutside([['force', 'N', force, 0, 1e6]]);
  if (found) return found;
  if (forceAt(spring, state, 0) >= force) return computed(metres(0));
  if (forceAt(spring, state, spring.travel) <= force) return computed(spring.travel);
  let [low, high] = [0, spring.travel as number];
  for (let turn = 0; turn < 60; turn += 1) {
    const middle = (low + high) / 2;
    if (forceAt(spring, state, middle) < force) low = middle;
    else high = middle;
  }
  return computed(metres((low + high) / 2));
}

/** The rate of the coil that holds a force at a travel with a preload: k = F / (x + preload). */
export function rateForForce(coil: Omit<CoilSpring, 'rate'>, x: Metres, force: Newtons): Computed<SpringRate> {
  const found =
    coilOutside({ ...coil, rate: springRate(1000) }, [x]) ??
    firstOutside([
      ['travel used', 'm', x, 0.001, coil.travel],
      ['force', 'N', force, 0, 1e5],
    ]);
  if (found) return found;
  const rate = force / (x + coil.preload);
  return firstOutside([['rate', 'N/m', rate, 100, 1e6]]) ?? computed(springRate(rate));
}
