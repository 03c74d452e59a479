import { type Computed, computed, firstOutside, type Outside, outside } from './outcome.ts';
import { type Steering, steeringOf } from './steering.ts';
import { cosine, type Degrees, degrees, type Metres, metres, sine, toDegrees } from './units.ts';

/** A bike as its maker draws it: on level ground, unloaded, with the fork that `offset` and the wheels belong to. */
export interface BikeGeometry {
  readonly headAngle: Degrees;
  readonly wheelbase: Metres;
  readonly frontRadius: Metres;
  readonly rearRadius: Metres;
  readonly offset: Metres;
  /** Bottom bracket below the rear axle, and its distance from it; null where not known. */
  readonly bottomBracket: { readonly drop: Metres; readonly chainstay: Metres } | null;
  /** Head tube top in front of and above the bottom bracket; null where not known. */
  readonly reachAndStack: { readonly reach: Metres; readonly stack: Metres } | null;
  readonly seatAngle: Degrees | null;
}

/** What changes. Lengths in m; the new offset and radii, not differences. */
export interface GeometryChange {
  /** How much longer the fork is along the steering axis: travel at the extended end, another chassis, less its sag. */
  readonly longer: Metres;
  readonly offset: Metres;
  readonly frontRadius: Metres;
  readonly rearRadius: Metres;
  /** How much the rear axle moves up against the frame, at a right angle to the ground as drawn: sag at the back. */
  readonly rearSag: Metres;
}

/** Where everything stands, upright on level ground. */
export interface Stance extends Steering {
  readonly headAngle: Degrees;
  readonly seatAngle: Degrees | null;
  readonly wheelbase: Metres;
  /** Bottom bracket above the ground. */
  readonly bottomBracketHeight: Metres | null;
  readonly reach: Metres | null;
  readonly stack: Metres | null;
}

export interface GeometryEffect {
  readonly before: Stance;
  readonly after: Stance;
  /** How far the frame turns about the rear axle, front up positive. */
  readonly turned: Degrees;
}

/**
 * What another fork length, offset, wheel or sag does to the bike. The exact planar solution, no small-angle rule: with the
 * steering axis along a = (cos θ, -sin θ) and n = (sin θ, cos θ) across it, the front axle moves in the frame by
 * longer·a + Δoffset·n, the rear axle by rearSag upwards; the frame then turns until both wheels stand on the ground.
 * For v from rear to front axle and radii r_f, r_r: turn φ = asin((r_f - r_r)/|v|) - atan2(v_y, v_x), head angle θ - φ.
 *
 * Source: plane geometry. Range: the bounds below. Left out: tyre give, the path of a rear linkage (its axle is moved
 * straight up), slack in the headset. Seat angle: of the seat tube, which turns as the frame does.
 */
export function changedGeometry(bike: BikeGeometry, change: GeometryChange): Computed<GeometryEffect> {
  const found = geometryOutside(bike, change);
  if (found) return found;
  const [sin, cos] = [sine(bike.headAngle), cosine(bike.headAngle)];
  const shift = change.offset - bike.offset;
  const rise = bike.frontRadius - bike.rearRadius;
  const vx = bike.wheelbase + change.longer * cos + shift * sin;
  const vy = rise - change.longer * sin + shift * cos - change.rearSag;
  const axles = Math.hypot(vx, vy);
  const newRise = change.frontRadius - change.rearRadius;
  if (vx <= 0 || Math.abs(newRise) >= 0.9 * axles) return outside('no-planar-solution', { axles, rise: newRise });
  const turn = Math.asin(newRise / axles) - Math.atan2(vy, vx);
  const turned = toDegrees(turn);
  const headAngle = degrees(bike.headAngle - turned);
  const tooFar = firstOutside([['head angle afterwards', '°', headAngle, 30, 90]]);
  if (tooFar) return tooFar;
  const still: Pose = { turn: 0, headAngle: bike.headAngle, wheelbase: bike.wheelbase, rearSag: 0 };
  const pose: Pose = {
    turn,
    headAngle,
    wheelbase: Math.sqrt((axles - newRise) * (axles + newRise)),
    rearSag: change.rearSag,
  };
  return computed({ before: stance(bike, bike, still), after: stance(bike, change, pose), turned });
}

interface Pose {
  readonly turn: number;
  readonly headAngle: Degrees;
  readonly wheelbase: number;
  readonly rearSag: number;
}
type Wheels = Pick<GeometryChange, 'offset' | 'frontRadius' | 'rearRadius'>;

function stance(bike: BikeGeometry, wheels: Wheels, pose: Pose): Stance {
  const [sin, cos] = [Math.sin(pose.turn), Math.cos(pose.turn)];
  const { bottomBracket, reachAndStack, seatAngle } = bike;
  const ahead = bottomBracket ? Math.sqrt(bottomBracket.chainstay ** 2 - bottomBracket.drop ** 2) : 0;
  const below = bottomBracket ? -bottomBracket.drop - pose.rearSag : 0;
  const { reach, stack } = reachAndStack ?? { reach: 0, stack: 0 };
  return {
    ...steeringOf(pose.headAngle, wheels.frontRadius, wheels.offset),
    headAngle: pose.headAngle,
    seatAngle: seatAngle === null ? null : degrees(seatAngle - toDegrees(pose.turn)),
    wheelbase: metres(pose.wheelbase),
    bottomBracketHeight: bottomBracket ? metres(wheels.rearRadius + ahead * sin + below * cos) : null,
    reach: reachAndStack ? metres(reach * cos - stack * sin) : null,
    stack: reachAndStack ? metres(reach * sin + stack * cos) : null,
  };
}

function geometryOutside(bike: BikeGeometry, change: GeometryChange): Outside | null {
  const { bottomBracket, reachAndStack, seatAngle } = bike;
  return firstOutside([
    ['head angle', '°', bike.headAngle, 45, 90],
    ['wheelbase', 'm', bike.wheelbase, 0.5, 2],
    ['front wheel radius', 'm', bike.frontRadius, 0.1, 0.6],
    ['rear wheel radius', 'm', bike.rearRadius, 0.1, 0.6],
    ['offset', 'm', bike.offset, -0.05, 0.15],
    ['fork length change', 'm', change.longer, -0.3, 0.3],
    ['new offset', 'm', change.offset, -0.05, 0.15],
    ['new front wheel radius', 'm', change.frontRadius, 0.1, 0.6],
    ['new rear wheel radius', 'm', change.rearRadius, 0.1, 0.6],
    ['rear sag', 'm', change.rearSag, -0.1, 0.2],
    ['chainstay', 'm', bottomBracket?.chainstay ?? 0.4, 0.25, 0.8],
    ['bottom bracket drop', 'm', bottomBracket?.drop ?? 0, -0.15, 0.15],
    ['reach', 'm', reachAndStack?.reach ?? 0.4, 0.1, 0.8],
    ['stack', 'm', reachAndStack?.stack ?? 0.6, 0.2, 1],
    ['seat angle', '°', seatAngle ?? 75, 45, 90],
  ]);
}
