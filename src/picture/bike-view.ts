import type { BikePicture, BikePose } from '../plan/index.ts';
import { levelDimension, uprightDimension } from './dimension.ts';
import { circle, element, label, line, type Panel, type Point, polyline, stroked, two } from './svg.ts';
import type { PictureWords } from './words.ts';

const WIDTH = 720;
/** Pixels of the sheet to a millimetre of the bike: a wheelbase of 1300 mm with two wheels goes onto it. */
const SCALE = 0.31;
const LEFT = 30;
/** Where the ground lies below the top of one view. */
const GROUND = 356;
const VIEW = 424;

/** The bike from its side, before above and after below (or unloaded above and at sag below), to one scale and each with its dimensions. Never one over the other. */
export function bikeView(picture: BikePicture, words: PictureWords): Panel {
  const [first, second] = words.bike.views(picture);
  return {
    width: WIDTH,
    height: 2 * VIEW,
    body: [
      ...side(picture.before, first, 0, words),
      ...side(picture.after, second, VIEW, words),
      label({ x: WIDTH - 10, y: 2 * VIEW - 8 }, words.scale(SCALE), 'end', 11),
    ],
  };
}

/** Points of a bike in mm, x forward from the rear axle, y up from the ground. */
interface Joints {
  readonly rear: Point;
  readonly front: Point;
  readonly crown: Point;
  readonly bottom: Point | null;
  readonly head: Point | null;
  readonly seat: Point | null;
  readonly axis: Point;
}

/**
 * With the steering axis down along (cos θ, -sin θ) and (sin θ, cos θ) across it, the crown race seat lies the fork's length above and
 * its offset behind the front axle. The seat tube is drawn three quarters of the stack high: no figure is taken from it.
 */
export function jointsOf(pose: BikePose): Joints {
  const angle = (pose.headAngle * Math.PI) / 180;
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  const front = { x: pose.wheelbase, y: pose.frontRadius };
  const { along, offset } = pose.fork;
  const crown = { x: front.x - along * cos - offset * sin, y: front.y + along * sin - offset * cos };
  const bottom = pose.bottomBracket ? { x: pose.bottomBracket.ahead, y: pose.bottomBracket.height } : null;
  const head =
    bottom && pose.reachAndStack
      ? { x: bottom.x + pose.reachAndStack.reach, y: bottom.y + pose.reachAndStack.stack }
      : null;
  const lean = ((pose.seatAngle ?? 75) * Math.PI) / 180;
  const tube = 0.75 * (pose.reachAndStack?.stack ?? 0);
  const seat = bottom && head ? { x: bottom.x - tube * Math.cos(lean), y: bottom.y + tube * Math.sin(lean) } : null;
  return {
    rear: { x: 0, y: pose.rearRadius },
    front,
    crown,
    bottom,
    head,
    seat,
    axis: { x: front.x + pose.trail, y: 0 },
  };
}

function side(pose: BikePose, which: string, top: number, words: PictureWords): string[] {
  const at = ({ x, y }: Point): Point => ({ x: LEFT + (pose.rearRadius + x) * SCALE, y: top + GROUND - y * SCALE });
  const ground = (x: number): Point => at({ x, y: 0 });
  const joints = jointsOf(pose);
  const { rear, front, crown, bottom, head, seat, axis } = joints;
  const said = words.bike.figure;
  const start = head ?? crown;
  return [
    label({ x: 10, y: top + 16 }, which, 'start', 14),
    line(ground(-pose.rearRadius), ground(pose.wheelbase + pose.frontRadius + 60), 'outline'),
    circle(at(rear), pose.rearRadius * SCALE, 'outline'),
    circle(at(front), pose.frontRadius * SCALE, 'outline'),
    circle(at(rear), 3, 'outline'),
    circle(at(front), 3, 'outline'),
    ...frame(joints, at),
    // the fork: from the crown along the steering axis, then out by the offset to the axle
    polyline([crown, elbow(pose, crown), front].map(at), 'bold'),
    line(at(start), at(axis), 'dashed'),
    ...headAngle(pose, at(crown), words),
    levelDimension(ground(0), ground(pose.wheelbase), top + GROUND + 44, said('wheelbase', pose.wheelbase).join(' ')),
    levelDimension(ground(front.x), ground(axis.x), top + GROUND + 18, said('trail', pose.trail).join(' ')),
    ...(bottom
      ? [uprightDimension(at(bottom), ground(bottom.x), at(bottom).x + 16, said('bottomBracket', bottom.y))]
      : []),
    ...(bottom && head && pose.reachAndStack
      ? [
          levelDimension(
            at({ x: bottom.x, y: head.y }),
            at(head),
            at(head).y - 16,
            said('reach', pose.reachAndStack.reach).join(' '),
          ),
          uprightDimension(
            at(bottom),
            at({ x: bottom.x, y: head.y }),
            at(bottom).x + 4,
            said('stack', pose.reachAndStack.stack),
          ),
        ]
      : []),
    ...(seat ? [circle(at(seat), 2, 'outline')] : []),
  ];
}

/** Where the steering axis is left for the axle. */
function elbow(pose: BikePose, crown: Point): Point {
  const angle = (pose.headAngle * Math.PI) / 180;
  return { x: crown.x + pose.fork.along * Math.cos(angle), y: crown.y - pose.fork.along * Math.sin(angle) };
}

function frame({ rear, crown, bottom, head, seat }: Joints, at: (point: Point) => Point): string[] {
  if (!bottom) return [];
  return [
    line(at(rear), at(bottom), 'outline'),
    circle(at(bottom), 5, 'outline'),
    line(at(bottom), at(crown), 'outline'),
    ...(head ? [line(at(head), at(crown), 'outline')] : []),
    ...(seat && head
      ? [
          line(at(bottom), at(seat), 'outline'),
          line(at(seat), at(head), 'outline'),
          line(at(rear), at(seat), 'outline'),
        ]
      : []),
  ];
}

/** The head angle at the crown, from the level behind the axis. */
function headAngle({ headAngle: angle }: BikePose, crown: Point, words: PictureWords): string[] {
  const radius = 56;
  const radians = (angle * Math.PI) / 180;
  // The axis runs down and forward; its angle is measured between it and the ground behind it, drawn level at the crown.
  const end = { x: crown.x + radius * Math.cos(radians), y: crown.y + radius * Math.sin(radians) };
  const level = { x: crown.x + radius, y: crown.y };
  return [
    line(crown, { x: crown.x + radius + 10, y: crown.y }, 'fine'),
    element('path', {
      d: `M${two(level.x)} ${two(level.y)}A${radius} ${radius} 0 0 1 ${two(end.x)} ${two(end.y)}`,
      ...stroked('fine'),
    }),
    // Above the level line: below it the front wheel may stand.
    label({ x: crown.x + 14, y: crown.y - 5 }, words.bike.figure('headAngle', angle).join(' '), 'start', 11),
  ];
}
