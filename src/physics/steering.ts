import { type Computed, computed, firstOutside } from './outcome.ts';
import { cosine, type Degrees, type Metres, metres, sine } from './units.ts';

/** How the front wheel follows the steering axis. */
export interface Steering {
  /** On the ground, from where the steering axis meets it back to where the tyre touches it. */
  readonly trail: Metres;
  /** The same at a right angle to the steering axis. Also called normal trail. */
  readonly mechanicalTrail: Metres;
  /** How far the front drops as the wheel is turned to a right angle, by the usual small-angle definition. */
  readonly flop: Metres;
}

/**
 * Trail (r cos θ - o) / sin θ, mechanical trail r cos θ - o, wheel flop trail sin θ cos θ; θ the head angle from the
 * horizontal, r the front wheel's radius under load, o the fork offset. Source: Meijaard, Papadopoulos, Ruina, Schwab,
 * Proc. R. Soc. A 463 (2007), whose benchmark bicycle the tests check; the R package velo, `calc_trail`. Exact for a thin
 * wheel, upright, straight ahead. Left out: the tyre's width and give. A formula with the wheel's diameter for r is wrong.
 */
export function steering(headAngle: Degrees, frontRadius: Metres, offset: Metres): Computed<Steering> {
  const found = firstOutside([
    ['head angle', '°', headAngle, 30, 90],
    ['front wheel radius', 'm', frontRadius, 0.1, 0.6],
    ['offset', 'm', offset, -0.05, 0.15],
  ]);
  return found ?? computed(steeringOf(headAngle, frontRadius, offset));
}

/** As `steering`, for inputs that are known to be inside. */
export function steeringOf(headAngle: Degrees, frontRadius: number, offset: number): Steering {
  const [sin, cos] = [sine(headAngle), cosine(headAngle)];
  const mechanicalTrail = frontRadius * cos - offset;
  return {
    trail: metres(mechanicalTrail / sin),
    mechanicalTrail: metres(mechanicalTrail),
    flop: metres(mechanicalTrail * cos),
  };
}
