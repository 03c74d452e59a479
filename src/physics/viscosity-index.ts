import { type Computed, computed, firstOutside, outside } from './outcome.ts';
import type { OilViscosity } from './viscosity.ts';
import { BEYOND_TABLE, TABLE_H, TABLE_L } from './viscosity-index-table.ts';

/** The viscosity index, exact and as the standard reports it, with the procedure that gave it. */
export interface ViscosityIndex {
  readonly exact: number;
  readonly rounded: number;
  readonly procedure: 'A' | 'B';
}

/**
 * How little an oil thins on warming. Procedure A up to 100: 100 (L - U) / (L - H); procedure B from 100: (10^N - 1) /
 * 0.00715 + 100 with N = (log H - log U) / log Y; U and Y the viscosities at 40 and 100 °C, L and H by linear interpolation
 * in table 1. Source: ASTM D2270 (ISO 2909). Range here: Y from 2 (as in the standard) to 15 mm²/s (fork oils; the standard
 * goes on); from 10 to 15 by the quadratics of its appendix, within 0.12 % of the table. Left out: precision of the
 * measurement, which moves the index by several units in thin oils.
 */
export function viscosityIndex({ at40, at100 }: OilViscosity): Computed<ViscosityIndex> {
  const found = firstOutside([
    ['viscosity at 100 °C', 'mm²/s', at100, 2, 15],
    ['viscosity at 40 °C', 'mm²/s', at40, 2, 1e5],
  ]);
  if (found) return found;
  if (at100 >= at40) return outside('not-thinning', { at40, at100 });
  const { low, high } = referenceOils(at100);
  const a = (100 * (low - at40)) / (low - high);
  if (a < 100) return computed({ exact: a, rounded: Math.round(a), procedure: 'A' });
  const n = (Math.log10(high) - Math.log10(at40)) / Math.log10(at100);
  const b = (10 ** n - 1) / 0.00715 + 100;
  return computed({ exact: b, rounded: Math.round(b), procedure: 'B' });
}

/** L and H: viscosities at 40 °C of the reference oils of index 0 and 100 that have this viscosity at 100 °C (2 to 15 mm²/s). */
function referenceOils(at100: number): { readonly low: number; readonly high: number } {
  const step = (at100 - 2) * 10;
  const index = Math.min(Math.floor(step + 1e-9), TABLE_L.length - 2);
  const share = step - index;
  if (share <= 1 + 1e-9) {
    const between = (table: readonly number[]): number =>
      (table[index] ?? 0) + share * ((table[index + 1] ?? 0) - (table[index] ?? 0));
    return { low: between(TABLE_L), high: between(TABLE_H) };
  }
  const { l, h } = (at100 <= 12 ? BEYOND_TABLE[0] : BEYOND_TABLE[1]) ?? BEYOND_TABLE[0];
  const at = ([square, linear, constant]: readonly [number, number, number]): number =>
    square * at100 ** 2 + linear * at100 + constant;
  return { low: at(l), high: at(h) };
}
