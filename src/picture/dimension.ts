import { element, label, line, type Point, two } from './svg.ts';

/** A dimension between two points, drawn level, at a height, with lines that lead there. */
export function levelDimension(from: Point, to: Point, y: number, words: string): string {
  const [left, right] = from.x <= to.x ? [from, to] : [to, from];
  const [a, b] = [
    { x: left.x, y },
    { x: right.x, y },
  ];
  // About six pixels to a letter of this size.
  const narrow = right.x - left.x < 6 * words.length + 12;
  return [
    line(left, { x: left.x, y: y + (y > left.y ? 4 : -4) }, 'fine'),
    line(right, { x: right.x, y: y + (y > right.y ? 4 : -4) }, 'fine'),
    line(a, b, 'fine'),
    ...(right.x - left.x < 26 ? [tick(a), tick(b)] : [arrow(a, 'left'), arrow(b, 'right')]),
    narrow
      ? label({ x: right.x + 6, y: y + 4 }, words, 'start', 11)
      : label({ x: (a.x + b.x) / 2, y: y - 4 }, words, 'middle', 11),
  ].join('');
}

/** The same, drawn upright at a distance from the left. The words stand to its right, one under the other. */
export function uprightDimension(from: Point, to: Point, x: number, words: readonly string[]): string {
  const [top, bottom] = from.y <= to.y ? [from, to] : [to, from];
  const [a, b] = [
    { x, y: top.y },
    { x, y: bottom.y },
  ];
  const short = bottom.y - top.y < 26;
  return [
    line(top, { x: x + (x > top.x ? 4 : -4), y: top.y }, 'fine'),
    line(bottom, { x: x + (x > bottom.x ? 4 : -4), y: bottom.y }, 'fine'),
    line(a, b, 'fine'),
    ...(short ? [tick(a), tick(b)] : [arrow(a, 'up'), arrow(b, 'down')]),
    ...words.map((one, row) =>
      label({ x: x + 5, y: (a.y + b.y) / 2 + 4 + 14 * (row - (words.length - 1) / 2) }, one, 'start', 11),
    ),
  ].join('');
}

const HEADS: Readonly<Record<'left' | 'right' | 'up' | 'down', readonly [number, number, number, number]>> = {
  left: [7, -2.5, 7, 2.5],
  right: [-7, -2.5, -7, 2.5],
  up: [-2.5, 7, 2.5, 7],
  down: [-2.5, -7, 2.5, -7],
};

function arrow({ x, y }: Point, towards: keyof typeof HEADS): string {
  const [ax, ay, bx, by] = HEADS[towards];
  return element('path', {
    d: `M${two(x)} ${two(y)}L${two(x + ax)} ${two(y + ay)}L${two(x + bx)} ${two(y + by)}Z`,
    fill: '#000',
  });
}

/** Where there is no room for arrows. */
const tick = ({ x, y }: Point): string => line({ x: x - 3, y: y + 3 }, { x: x + 3, y: y - 3 }, 'outline');
