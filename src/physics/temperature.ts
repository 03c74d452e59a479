import { ambientBound } from './air-spring.ts';
import { type Computed, computed, firstOutside } from './outcome.ts';
import {
  type AbsolutePressure,
  absolutePressure,
  type Celsius,
  type GaugePressure,
  ICE_POINT,
  toAbsolute,
  toGauge,
} from './units.ts';

/** The air around the fork. */
export interface Surroundings {
  readonly temperature: Celsius;
  readonly ambient: AbsolutePressure;
}

/**
 * What a pump would show after the same spring has come to another temperature, or to another height above the sea:
 * p₂ = p₁ T₂ / T₁ at the same volume, in absolute pressures and kelvin (Gay-Lussac; ideal gas). Range: -60 to 120 °C,
 * 0 to 50 bar. Left out: seals that shrink, gas lost into the pump's hose. Below zero means: less than the air around.
 */
export function pressureElsewhere(
  pressure: GaugePressure,
  from: Surroundings,
  to: Surroundings,
): Computed<GaugePressure> {
  const found = firstOutside([
    ['pressure', 'Pa', pressure, 0, 5e6],
    ['temperature', '°C', from.temperature, -60, 120],
    ['temperature', '°C', to.temperature, -60, 120],
    ambientBound(from.ambient),
    ambientBound(to.ambient),
  ]);
  if (found) return found;
  const warmed = (to.temperature + ICE_POINT) / (from.temperature + ICE_POINT);
  return computed(toGauge(absolutePressure(toAbsolute(pressure, from.ambient) * warmed), to.ambient));
}
