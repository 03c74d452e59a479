import { type Computed, computed, firstOutside } from './outcome.ts';
import type { Viscosity } from './units.ts';

/** Mid-points of the grades that fork oils come in, mm²/s at 40 °C. Source: ISO 3448. */
export const ISO_GRADES = [10, 15, 22, 32, 46, 68, 100] as const;
export type IsoGrade = (typeof ISO_GRADES)[number];

/**
 * The ISO 3448 viscosity grade of an oil by its viscosity at 40 °C: within 10 % of a mid-point, limits included. Null
 * between two grades: the standard leaves gaps by design. Range: 9 to 110 mm²/s. An "SAE weight" on a fork oil is no such
 * grade: SAE J300 is about engine oils and sets no viscosity at 40 °C.
 */
export function isoGrade(at40: Viscosity): Computed<IsoGrade | null> {
  const found = firstOutside([['viscosity at 40 °C', 'mm²/s', at40, 9, 110]]);
  if (found) return found;
  // In whole thousandths, as viscosities are held: 0.9 times 22 is not 19.8 in floating point.
  const held = Math.round(at40 * 1000);
  return computed(ISO_GRADES.find((middle) => held >= middle * 900 && held <= middle * 1100) ?? null);
}
