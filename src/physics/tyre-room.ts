import { forceAt } from './air-force.ts';
import { type AirSpring, type AirState, stateOutside } from './air-spring.ts';
import { type Bound, type Computed, computed, firstOutside } from './outcome.ts';
import { travelUnder } from './sag.ts';
import type { TyreSize } from './tyre-size.ts';
import { type Metres, metres, type Newtons, newtons } from './units.ts';

/** Room at full compression: greatest tyre radius that clears crown and arch, greatest width at the arch; null: not known. */
export interface TyreRoom {
  readonly crown: Metres | null;
  readonly arch: Metres | null;
  readonly width: Metres | null;
}

/** `clears`: whatever the tyre's uncertainty. `tight`: by the rule, not by its uncertainty: measure. `touches`: not even by the rule. */
export type RoomVerdict = 'clears' | 'tight' | 'touches' | 'not-known';
export interface RoomAt {
  readonly verdict: RoomVerdict;
  /** What is left beyond the wanted gap, by the greatest and by the nominal size; below zero: too much tyre. Null: not known. */
  readonly margin: { readonly least: Metres; readonly nominal: Metres } | null;
}
export interface RoomAnswer {
  readonly verdict: RoomVerdict;
  readonly crown: RoomAt;
  readonly arch: RoomAt;
  readonly width: RoomAt;
}

/**
 * Whether a tyre has room at full compression, with a gap to spare that the caller sets: how large it must be differs by
 * standard and class of bicycle (EN 14781 asks 4 mm of racing bicycles), so there is no default. The worst place decides;
 * a place that is not known is worse than one that clears, and better than one that does not. Source: `tyreSize`, sums.
 * Left out: a fork or wheel that flexes, a wheel out of true, mud.
 */
export function tyreRoom(room: TyreRoom, tyre: TyreSize, gap: Metres): Computed<RoomAnswer> {
  const given = (name: string, value: Metres | null, greatest: number): Bound => [name, 'm', value ?? 0, 0, greatest];
  const found = firstOutside([
    given('room at the crown', room.crown, 1),
    given('room at the arch', room.arch, 1),
    given('width at the arch', room.width, 0.5),
    ['gap', 'm', gap, 0, 0.05],
    ['tyre diameter', 'm', tyre.diameter, 0.2, 1],
    ['greatest tyre diameter', 'm', tyre.greatest, tyre.diameter, 1.1],
    ['tyre width', 'm', tyre.width, 0.005, 0.2],
  ]);
  if (found) return found;
  const width = tyre.width;
  const wide = (width * tyre.greatest) / tyre.diameter;
  const at = (limit: Metres | null, nominal: number, greatest: number): RoomAt => {
    if (limit === null) return { verdict: 'not-known', margin: null };
    const margin = { least: metres(limit - greatest - gap), nominal: metres(limit - nominal - gap) };
    return { verdict: margin.least >= 0 ? 'clears' : margin.nominal >= 0 ? 'tight' : 'touches', margin };
  };
  const crown = at(room.crown, tyre.diameter / 2, tyre.greatest / 2);
  const arch = at(room.arch, tyre.diameter / 2, tyre.greatest / 2);
  const across = at(room.width, width, wide);
  const verdicts = [crown.verdict, arch.verdict, across.verdict];
  const verdict = WORST_FIRST.find((one) => verdicts.includes(one)) ?? 'clears';
  return computed({ verdict, crown, arch, width: across });
}

const WORST_FIRST: readonly RoomVerdict[] = ['touches', 'tight', 'not-known', 'clears'];

/**
 * The gap at full compression from the gap measured at full extension: less the travel. Below zero the tyre touches.
 * Source: geometry; the wheel moves with the lowers, along the steering axis.
 */
export function gapAtFullCompression(extended: Metres, travel: Metres): Computed<Metres> {
  const found = firstOutside([
    ['gap at full extension', 'm', extended, 0, 1],
    ['travel', 'm', travel, 0, 0.4],
  ]);
  return found ?? computed(metres(extended - travel));
}

/** ISO 4210-6 (in its Taiwanese edition, clause 5.1): 2800 N on the wheel towards the crown, for one minute, air at its least. */
export const CLEARANCE_TEST = { force: newtons(2800), seconds: 60 } as const;

/**
 * How far the clearance test presses a spring filled as `state` says (the maker's least pressure), and whether to the end:
 * then the gap of the test is the gap at full compression. Source: `travelUnder`. Left out: what friction would hold.
 */
export function clearanceTestTravel(
  spring: AirSpring,
  state: AirState,
): Computed<{ readonly travel: Metres; readonly toTheEnd: boolean; readonly forceAtEnd: Newtons }> {
  const found = stateOutside(spring, state, []);
  if (found) return found;
  const forceAtEnd = newtons(forceAt(spring, state, spring.travel));
  const reached = travelUnder(spring, state, CLEARANCE_TEST.force);
  if (!reached.ok) return reached;
  return computed({ travel: reached.value, toTheEnd: forceAtEnd <= CLEARANCE_TEST.force, forceAtEnd });
}
