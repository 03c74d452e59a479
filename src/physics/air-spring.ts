import { type Bound, firstOutside, type Outside, outside } from './outcome.ts';
import type { AbsolutePressure, CubicMetres, GaugePressure, Metres, SpringRate, SquareMetres } from './units.ts';

/**
 * What stands against the positive chamber.
 *
 * - `none`: nothing; the underside of the piston sees the air around.
 * - `equalised`: a chamber that a transfer port joins to the positive one at the travel `at` (0: at full extension).
 * - `charged`: a chamber with a valve of its own; `pressure` is what a pump shows there at full extension.
 * - `coil`: a coil that presses for the first `reach` of the travel; the underside sees the air around.
 */
export type NegativeSide =
  | { readonly kind: 'none' }
  | { readonly kind: 'equalised'; readonly volume: CubicMetres; readonly at: Metres }
  | { readonly kind: 'charged'; readonly volume: CubicMetres; readonly pressure: GaugePressure }
  | { readonly kind: 'coil'; readonly rate: SpringRate; readonly reach: Metres };

/**
 * An air spring. Volumes are those at full extension: the positive chamber is greatest there and shrinks by piston area
 * times travel; the negative one is least there and grows by piston area less shaft area, times travel.
 *
 * Left out: a second positive chamber, a bumper at the end, friction, the air shut into the lowers, stanchions that flex.
 */
export interface AirSpring {
  readonly travel: Metres;
  readonly pistonArea: SquareMetres;
  readonly shaftArea: SquareMetres;
  /** Positive chamber at full extension without volume spacers. */
  readonly positiveVolume: CubicMetres;
  /** What one volume spacer takes away. */
  readonly spacerVolume: CubicMetres;
  readonly spacers: number;
  readonly negative: NegativeSide;
}

/**
 * How it is filled and how it moves. `pump` is what a pump shows at full extension once the chambers have equalised.
 * `exponent` is the polytropic one: 1 for a movement so slow that the gas keeps the temperature around it, 1.3 to 1.4 for
 * a quick hit (1.4 is dry air that keeps all its heat; common practice, no source, for the 1.3).
 */
export interface AirState {
  readonly pump: GaugePressure;
  readonly ambient: AbsolutePressure;
  readonly exponent: number;
}

/** At full travel at least this share of the positive chamber must be left: beyond, no fork goes and no ideal gas. */
const LEAST_SHARE_LEFT = 1 / 50;

/** Positive chamber with its volume spacers, at a travel. m³ */
export const positiveVolumeAt = (spring: AirSpring, x: number): number =>
  spring.positiveVolume - spring.spacers * spring.spacerVolume - spring.pistonArea * x;

/** Area that the negative chamber presses on: the piston less its shaft. m² */
export const negativeArea = (spring: AirSpring): number => spring.pistonArea - spring.shaftArea;

/** Where the two chambers are last joined on the way in; 0 where they never are. m */
export const equalisingTravel = (spring: AirSpring): number =>
  spring.negative.kind === 'equalised' ? spring.negative.at : 0;

/** Why a spring is none that this folder computes; null where it is one. */
export function springOutside(spring: AirSpring): Outside | null {
  const found = firstOutside([
    ['travel', 'm', spring.travel, 0.005, 0.4],
    ['piston area', 'm²', spring.pistonArea, 1e-5, 1e-2],
    ['shaft area', 'm²', spring.shaftArea, 0, 0.9 * spring.pistonArea],
    ['positive volume', 'm³', spring.positiveVolume, 1e-6, 1e-2],
    ['spacer volume', 'm³', spring.spacerVolume, 0, 1e-3],
    ['volume spacers', 'pieces', spring.spacers, 0, 100],
    ...negativeBounds(spring),
  ]);
  if (found) return found;
  const left = positiveVolumeAt(spring, spring.travel);
  const needed = spring.positiveVolume * LEAST_SHARE_LEFT;
  return left >= needed ? null : outside('chamber-too-small', { left, needed });
}

function negativeBounds({ negative, travel }: AirSpring): readonly Bound[] {
  switch (negative.kind) {
    case 'none':
      return [];
    case 'equalised':
      return [
        ['negative volume', 'm³', negative.volume, 1e-7, 1e-2],
        ['equalising travel', 'm', negative.at, 0, travel],
      ];
    case 'charged':
      return [
        ['negative volume', 'm³', negative.volume, 1e-7, 1e-2],
        ['negative pressure', 'Pa', negative.pressure, 0, 5e6],
      ];
    case 'coil':
      return [
        ['negative coil rate', 'N/m', negative.rate, 0, 1e6],
        ['negative coil reach', 'm', negative.reach, 0, travel],
      ];
  }
}

/** The ambient pressures that are computed with: about 12 km up, to a little below the sea. Pa */
export const ambientBound = (ambient: AbsolutePressure): Bound => ['ambient pressure', 'Pa', ambient, 2e4, 1.2e5];

/** Why a filling is none that this folder computes, or a travel none of the spring's; null where both are. */
export function stateOutside(spring: AirSpring, state: AirState, travels: readonly Metres[]): Outside | null {
  return (
    springOutside(spring) ??
    firstOutside([
      ['pressure', 'Pa', state.pump, 0, 5e6],
      ambientBound(state.ambient),
      ['polytropic exponent', '', state.exponent, 1, 1.67],
      ...travels.map((x): Bound => ['travel used', 'm', x, 0, spring.travel]),
    ])
  );
}
