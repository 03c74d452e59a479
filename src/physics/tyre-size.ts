import { type Computed, computed, firstOutside, outside } from './outcome.ts';
import { type Metres, metres } from './units.ts';

/** A tyre's outside, from its designation, with how far off that may be. */
export interface TyreSize {
  readonly width: Metres;
  readonly beadSeat: Metres;
  readonly diameter: Metres;
  /** The same, one per cent less and more. */
  readonly least: Metres;
  readonly greatest: Metres;
  readonly circumference: Metres;
}

/** How far the outside of a real tyre may be from the rule: see `tyreSize`. */
const UNCERTAINTY = 0.01;

/**
 * Outside diameter of a tyre: bead-seat diameter plus twice the section width, since its height is taken to be its width.
 * Source: ISO 5775-1 designation; rule as printed by tyre makers (28-622: 678 mm, 57-622: 736 mm). Range: widths 10 to
 * 150 mm, bead seats 200 to 700 mm. A published list of rolling circumferences lies 0.4 to 0.9 % above the rule on wide
 * tyres and another 0.5 % below, hence the 1 %. Left out: knobs beyond that, rim width, pressure, the tyre's give.
 */
export function tyreSize(width: Metres, beadSeat: Metres): Computed<TyreSize> {
  const found = firstOutside([
    ['tyre width', 'm', width, 0.01, 0.15],
    ['bead-seat diameter', 'm', beadSeat, 0.2, 0.7],
  ]);
  if (found) return found;
  const diameter = beadSeat + 2 * width;
  return computed({
    width,
    beadSeat,
    diameter: metres(diameter),
    least: metres(diameter * (1 - UNCERTAINTY)),
    greatest: metres(diameter * (1 + UNCERTAINTY)),
    circumference: metres(diameter * Math.PI),
  });
}

/** The size behind an ISO 5775 designation: `60-622` is 60 mm wide on a bead seat of 622 mm. */
export function tyreFromDesignation(text: string): Computed<TyreSize> {
  const match = /^([1-9][0-9]{1,2})-([1-9][0-9]{2})$/.exec(text);
  if (!match) return outside('not-readable', { text, form: 'ISO 5775: width-bead seat in mm, such as 60-622' });
  return tyreSize(metres(Number(match[1]) / 1000), metres(Number(match[2]) / 1000));
}
