import { inPressureUnit, type PressureUnit } from './factors.ts';
import { type Computed, computed, firstOutside, outside } from './outcome.ts';
import type { GaugePressure } from './units.ts';

/** A range of pressures in a pump's own unit, on the marks of its scale. */
export interface PumpRange {
  readonly unit: PressureUnit;
  readonly least: number;
  readonly greatest: number;
}

/** Marks to one unit of a pump's scale: whole psi, tenths of a bar. Common practice, no source. */
const MARKS: Readonly<Record<PressureUnit, number>> = { psi: 1, bar: 10 };

/**
 * A range of pressures as a pump can show it: the marks of its scale that lie within `least` to `greatest`; where none
 * does, the one mark nearest to `wanted` that lies within `floor` to `ceiling` (the maker's limits, null where open).
 * Rounding goes inward, so that no mark of the answer is outside what was worked out.
 */
export function onPumpScale(
  unit: PressureUnit,
  range: { readonly least: GaugePressure; readonly wanted: GaugePressure; readonly greatest: GaugePressure },
  limits: { readonly least: GaugePressure | null; readonly greatest: GaugePressure | null },
): Computed<PumpRange> {
  const floor = limits.least ?? 0;
  const ceiling = limits.greatest ?? 5e6;
  const found = firstOutside([
    ['least pressure', 'Pa', floor, 0, 5e6],
    ['greatest pressure', 'Pa', ceiling, floor, 5e6],
    ['pressure', 'Pa', range.wanted, floor, ceiling],
    ['least of the range', 'Pa', range.least, 0, range.wanted],
    ['greatest of the range', 'Pa', range.greatest, range.wanted, 5e6],
  ]);
  if (found) return found;
  const marks = (pressure: number): number => inPressureUnit(pressure as GaugePressure, unit) * MARKS[unit];
  const first = Math.ceil(marks(Math.max(range.least, floor)) - SLACK);
  const last = Math.floor(marks(Math.min(range.greatest, ceiling)) + SLACK);
  if (first <= last) return computed({ unit, least: first / MARKS[unit], greatest: last / MARKS[unit] });
  const lowest = Math.ceil(marks(floor) - SLACK);
  const highest = Math.floor(marks(ceiling) + SLACK);
  if (lowest > highest) return outside('no-mark-within-limits', { unit, least: floor, greatest: ceiling });
  const only = Math.min(Math.max(Math.round(marks(range.wanted)), lowest), highest) / MARKS[unit];
  return computed({ unit, least: only, greatest: only });
}

/** A ten-thousandth of a mark: a pressure that is held in whole pascals is up to half a pascal, 0.00007 psi, beside its mark. */
const SLACK = 1e-4;
