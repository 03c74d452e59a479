import { add, type Complex, complex, multiply } from 'mathjs';
import type { BikeGeometry, GeometryChange } from '../../src/physics/index.ts';
import { root } from './root.ts';

/**
 * A bike built anew, part by part, as points in the complex plane (forward real, up imaginary), rear axle at the origin of
 * the frame as drawn. It shares no formula with the module: the fork is set into the head tube, and the frame is then
 * pitched by root finding until the front tyre touches the ground that the rear tyre stands on.
 */
export interface Linkage {
  readonly pitch: number;
  readonly headAngle: number;
  readonly wheelbase: number;
  readonly trail: number;
  readonly mechanicalTrail: number;
  readonly bottomBracketHeight: number;
  readonly reach: number;
  readonly stack: number;
}
const RIGHT = Math.PI / 180;
/** Length along the axis from the crown race seat to the axle of the fork as drawn; any will do, it cancels. */
const FORK = 0.55;

export function linkage(bike: BikeGeometry, change: GeometryChange): Linkage {
  const axis = turn(-bike.headAngle * RIGHT);
  const across = multiply(axis, complex(0, 1)) as Complex;
  const frontAsDrawn = complex(bike.wheelbase, bike.frontRadius - bike.rearRadius);
  const crown = sum(frontAsDrawn, scaled(axis, -FORK), scaled(across, -bike.offset));
  const front = sum(crown, scaled(axis, FORK + change.longer), scaled(across, change.offset));
  const rear = complex(0, change.rearSag);
  const bracket = bracketOf(bike);
  const top = sum(bracket, complex(bike.reachAndStack?.reach ?? 0, bike.reachAndStack?.stack ?? 0));
  const onRoad = (point: Complex, pitch: number): Complex =>
    sum(multiply(turn(pitch), sum(point, scaled(rear, -1))) as Complex, complex(0, change.rearRadius));
  const pitch = root((angle) => onRoad(front, angle).im - change.frontRadius, -0.9, 0.9);
  const direction = multiply(turn(pitch), axis) as Complex;
  const [axle, seat] = [onRoad(front, pitch), onRoad(crown, pitch)];
  // Where the steering axis meets the ground, and how far behind it the tyre touches.
  const meets = seat.re - (direction.re / direction.im) * seat.im;
  const trail = meets - axle.re;
  const [low, high] = [onRoad(bracket, pitch), onRoad(top, pitch)];
  return {
    pitch: pitch / RIGHT,
    headAngle: Math.atan2(-direction.im, direction.re) / RIGHT,
    wheelbase: axle.re,
    trail,
    // Distance of the tyre's contact from the steering axis, by the cross product.
    mechanicalTrail: -(direction.re * (0 - seat.im) - direction.im * (axle.re - seat.re)),
    bottomBracketHeight: low.im,
    reach: high.re - low.re,
    stack: high.im - low.im,
  };
}

function bracketOf({ bottomBracket }: BikeGeometry): Complex {
  const { drop, chainstay } = bottomBracket ?? { drop: 0, chainstay: 0 };
  return scaled(turn(Math.asin(-drop / chainstay)), chainstay);
}

const turn = (angle: number): Complex => complex({ r: 1, phi: angle });
const scaled = (point: Complex, by: number): Complex => multiply(point, by) as Complex;
const sum = (...points: readonly Complex[]): Complex => points.reduce((a, b) => add(a, b) as Complex);
