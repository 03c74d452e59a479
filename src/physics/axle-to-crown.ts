import { type Computed, computed, firstOutside } from './outcome.ts';
import { type Metres, metres } from './units.ts';

/** How an axle-to-crown length is measured. */
export type MeasuredAs = 'along-steerer' | 'straight';

/**
 * Length along the steering axis from the crown race seat to the foot of the axle's perpendicular, from an axle-to-crown
 * length and the fork offset: the length itself where it was measured along the steerer, else √(A² - offset²) (Pythagoras).
 * Range: lengths 0.2 to 0.8 m, offsets -0.05 to 0.15 m. Exact in the plane.
 */
export function axisLength(axleToCrown: Metres, offset: Metres, measured: MeasuredAs): Computed<Metres> {
  const found = forkBounds(axleToCrown, offset);
  if (found) return found;
  return computed(measured === 'straight' ? metres(Math.sqrt(axleToCrown ** 2 - offset ** 2)) : axleToCrown);
}

/** The axle-to-crown length straight from axle to crown race seat, from the length along the axis. The inverse of the above. */
export function straightLength(along: Metres, offset: Metres): Computed<Metres> {
  return forkBounds(along, offset) ?? computed(metres(Math.hypot(along, offset)));
}

const forkBounds = (length: Metres, offset: Metres) =>
  firstOutside([
    ['axle-to-crown', 'm', length, 0.2, 0.8],
    ['offset', 'm', offset, -0.05, 0.15],
  ]);
