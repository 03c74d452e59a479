import { type Computed, computed, firstOutside } from './outcome.ts';
import { type Degrees, FREE_FALL, type Kilograms, type Newtons, newtons, sine } from './units.ts';

/** Who sits on the bike, and how much of it the fork carries. */
export interface RiderLoad {
  /** Rider with clothes, shoes, helmet, pack and water. */
  readonly rider: Kilograms;
  /** What of the bike the fork carries above its lowers; 0 where a maker's chart leaves the bike out. */
  readonly bike: Kilograms;
  /** Share of the weight on the front wheel, 0 to 1, in the posture in which sag is read. */
  readonly frontShare: number;
  /** Steering angle from the horizontal: the head angle. */
  readonly headAngle: Degrees;
}

/**
 * The force along the fork while the rider sits still on level ground, N: m g share sin(head angle). The ground pushes the
 * wheel straight up, and the fork yields only along its axis; the rest bends it. Source: statics; g as in NIST SP 811.
 * Left out: friction of seals and bushings (which holds some of the load), brakes, slopes, the weight of wheel and lowers.
 */
export function axialLoad(load: RiderLoad): Computed<Newtons> {
  const found = firstOutside([
    ['rider mass', 'kg', load.rider, 15, 250],
    ['bike mass', 'kg', load.bike, 0, 60],
    ['share on the front wheel', '', load.frontShare, 0.05, 1],
    ['head angle', '°', load.headAngle, 45, 90],
  ]);
  return found ?? computed(newtons((load.rider + load.bike) * FREE_FALL * load.frontShare * sine(load.headAngle)));
}
