import type { ForkShape } from '../plan/index.ts';
import { uprightDimension } from './dimension.ts';
import { element, label, line, type Panel, type Point, polyline, stroked } from './svg.ts';
import type { PictureWords } from './words.ts';

const WIDTH = 720;
const SCALE = 0.5;
const TOP = 46;
/** Schematic lengths, mm: nothing is read from them. */
const STEERER = 90;
const CROWN = 34;
const OVERLAP = 16;
/** From the left edge of one fork's column to its middle, and from one column to the next. */
const COLUMN = 110;
const NEXT = 350;
/** Half the distance between the legs, mm. */
const APART = 65;

/** The fork seen by its rider, before and after beside each other, to one scale. What changes is drawn bold and filled, and named. */
export function forkView(before: ForkShape | null, after: ForkShape, words: PictureWords): Panel {
  const shapes = before ? [before, after] : [after];
  const longest = Math.max(...shapes.map(({ along, travel }) => along ?? travel + 380));
  const floor = TOP + (STEERER + longest) * SCALE;
  const names = before ? [words.before, words.after] : [words.now];
  const lists = shapes.map((shape) => shape.slots.filter(({ changed }) => changed));
  const rows = Math.max(0, ...lists.map((list) => list.length));
  return {
    width: WIDTH,
    height: floor + 60 + 16 * rows,
    body: [
      ...shapes.flatMap((shape, at) => one(shape, { x: 10 + COLUMN + at * NEXT, y: floor }, names[at] ?? '', words)),
      ...lists.flatMap((list, at) =>
        list.map(({ slot, content }, row) =>
          label({ x: 10 + at * NEXT, y: floor + 46 + 16 * row }, words.fork.slot(slot, content), 'start', 11),
        ),
      ),
      label({ x: WIDTH - 10, y: floor + 52 + 16 * rows }, words.scale(SCALE), 'end', 11),
    ],
  };
}

/** One fork on a floor: the axle stands there, the steering axis is upright. */
function one(shape: ForkShape, foot: Point, which: string, words: PictureWords): string[] {
  const along = shape.along ?? shape.travel + 380;
  const up = (height: number): number => foot.y - height * SCALE;
  const is = (slot: string): boolean => shape.slots.some((one) => one.slot === slot && one.changed);
  const half = (shape.stanchion / 2) * SCALE;
  const [left, right] = [foot.x - APART * SCALE, foot.x + APART * SCALE];
  // The lowers reach up to where the travel and a little overlap are left below the crown.
  const seal = along - CROWN - shape.travel - OVERLAP;
  const weight = (slot: string) => (is(slot) ? 'bold' : 'outline');
  const springLeg = shape.legs.left === 'spring' || shape.legs.left === 'both' ? left : right;
  const damperLeg = shape.legs.right === 'damper' || shape.legs.right === 'both' ? right : left;
  const outer = half + 6 * SCALE;
  return [
    // Names of chassis are long: a line of their own, from the left edge of the column.
    label({ x: foot.x - COLUMN, y: 14 }, which, 'start', 14),
    label({ x: foot.x - COLUMN, y: 30 }, shape.chassis, 'start', 11),
    rect(foot.x - 14 * SCALE, up(along + STEERER), 28 * SCALE, STEERER * SCALE, weight('upper')),
    polyline(
      [
        { x: left - outer, y: up(along - CROWN) },
        { x: left - outer, y: up(along - CROWN * 0.3) },
        { x: foot.x - 14 * SCALE, y: up(along) },
        { x: foot.x + 14 * SCALE, y: up(along) },
        { x: right + outer, y: up(along - CROWN * 0.3) },
        { x: right + outer, y: up(along - CROWN) },
        { x: left - outer, y: up(along - CROWN) },
      ],
      weight('upper'),
    ),
    ...(shape.crown === 'dual'
      ? [
          // the stanchions go on through the lower crown to a second one below the top of the steerer
          ...[left, right].map((x) =>
            rect(x - half, up(along + STEERER - 20), half * 2, (STEERER - 20) * SCALE, weight('upper')),
          ),
          rect(left - outer, up(along + STEERER - 8), right - left + 2 * outer, 22 * SCALE, weight('upper')),
        ]
      : []),
    ...[left, right].flatMap((x) => [
      rect(x - half, up(along - CROWN), half * 2, (along - CROWN - seal) * SCALE, weight('upper')),
      rect(x - outer, up(seal), outer * 2, seal * SCALE, weight('lowers')),
    ]),
    polyline(
      [
        { x: left + outer, y: up(seal - 10) },
        { x: left + outer + 8, y: up(seal + 22) },
        { x: right - outer - 8, y: up(seal + 22) },
        { x: right - outer, y: up(seal - 10) },
      ],
      weight('lowers'),
    ),
    line({ x: left - outer - 6, y: foot.y }, { x: right + outer + 6, y: foot.y }, 'bold'),
    ...(is('spring') || is('coil') ? [inside(springLeg, up(along - CROWN - 6), up(seal - 70), half * 0.55)] : []),
    ...(is('damper') ? [inside(damperLeg, up(along - CROWN - 6), up(seal - 70), half * 0.4)] : []),
    ...spacers(shape, springLeg, up(along - CROWN - 2), half),
    ...(shape.along === null
      ? [label({ x: foot.x, y: foot.y + 18 }, words.fork.schematic, 'middle', 11)]
      : [
          uprightDimension(
            { x: right + outer, y: up(along) },
            { x: right + outer, y: foot.y },
            right + outer + 84,
            words.fork.figure('axleToCrown', along),
          ),
        ]),
    uprightDimension(
      { x: right + outer, y: up(seal + shape.travel) },
      { x: right + outer, y: up(seal) },
      right + outer + 14,
      words.fork.figure('travel', shape.travel),
    ),
    label({ x: left - 4, y: foot.y + 18 }, words.fork.leg('left', shape.legs.left), 'end', 11),
    label({ x: right + 4, y: foot.y + 18 }, words.fork.leg('right', shape.legs.right), 'start', 11),
  ];
}

const rect = (x: number, y: number, width: number, height: number, stroke: 'outline' | 'bold'): string =>
  element('rect', { x, y, width, height, ...stroked(stroke) });

/** A part within a leg that is picked out. */
const inside = (x: number, top: number, bottom: number, half: number): string =>
  element('rect', { x: x - half, y: top, width: half * 2, height: Math.max(0, bottom - top), fill: '#000' });

/** Volume spacers one by one, white on the spring, where their count changes. */
function spacers(shape: ForkShape, x: number, top: number, half: number): string[] {
  const slot = shape.slots.find((one) => one.slot === 'volume-spacers');
  if (!slot?.changed) return [];
  return Array.from({ length: slot.content?.quantity ?? 0 }, (_, at) =>
    element('rect', {
      x: x - half * 0.8,
      y: top + 2 + at * 8,
      width: half * 1.6,
      height: 6,
      fill: '#fff',
      stroke: '#000',
      'stroke-width': 1.2,
    }),
  );
}
