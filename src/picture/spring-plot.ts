import { scaleLinear } from 'd3-scale';
import { line as pathLine } from 'd3-shape';
import type { SpringCurve, SpringPicture } from '../plan/index.ts';
import { dot, element, escaped, hollow, label, line, type Panel, type Point, type Stroke, stroked } from './svg.ts';
import type { PictureWords } from './words.ts';

const PLOT = { left: 62, right: 704, top: 12, bottom: 300 } as const;

interface Drawn {
  readonly curve: SpringCurve;
  readonly which: string;
  readonly stroke: Stroke;
}
type Spot = SpringCurve['sag'];
type Place = (spot: Spot) => Point;

/** Force over travel on one plot: before dashed, after bold. Sag is a dot, a hard hit at the end a cross. */
export function springPlot(picture: SpringPicture, words: PictureWords): Panel {
  const { before, after } = picture;
  const curves: readonly Drawn[] = [
    ...(before ? [{ curve: before, which: words.before, stroke: 'dashed' as const }] : []),
    ...(after ? [{ curve: after, which: before ? words.after : words.now, stroke: 'bold' as const }] : []),
  ];
  const forces = curves.flatMap(({ curve: { points, hit } }) => [hit, ...points.map(({ force }) => force)]);
  const [weakest, strongest] = [Math.min(0, ...forces), Math.max(1, ...forces)];
  // A spring that pulls in by a hair at full extension needs no room below the axis.
  const floor = weakest < -0.05 * strongest ? weakest : 0;
  const x = scaleLinear([0, Math.max(1, ...curves.map(({ curve }) => curve.travel)) * 1.04], [PLOT.left, PLOT.right]);
  const y = scaleLinear([floor, strongest], [PLOT.bottom, PLOT.top]).nice(6);
  const at: Place = ({ travel, force }) => ({ x: x(travel), y: y(force) });
  const base = y(0);
  return {
    width: 720,
    height: 370,
    body: [
      line({ x: PLOT.left, y: PLOT.bottom }, { x: PLOT.left, y: PLOT.top }, 'outline'),
      line({ x: PLOT.left, y: base }, { x: PLOT.right, y: base }, 'outline'),
      ...y
        .ticks(6)
        .flatMap((force) => [
          line({ x: PLOT.left - 4, y: y(force) }, { x: PLOT.left, y: y(force) }, 'fine'),
          label({ x: PLOT.left - 7, y: y(force) + 4 }, `${force}`, 'end', 11),
        ]),
      ...x
        .ticks(9)
        .flatMap((travel) => [
          line({ x: x(travel), y: base }, { x: x(travel), y: base + 4 }, 'fine'),
          label({ x: x(travel), y: PLOT.bottom + 18 }, `${travel}`, 'middle', 11),
        ]),
      label({ x: (PLOT.left + PLOT.right) / 2, y: PLOT.bottom + 36 }, words.spring.travel, 'middle'),
      element(
        'text',
        {
          transform: `translate(14 ${(PLOT.top + PLOT.bottom) / 2}) rotate(-90)`,
          'text-anchor': 'middle',
          'font-size': 12,
        },
        [escaped(words.spring.force)],
      ),
      ...curves.flatMap((drawn) => curveLines(drawn, at)),
      ...key(curves, words),
      label({ x: PLOT.left, y: PLOT.bottom + 58 }, words.spring.note(picture), 'start', 11),
    ],
  };
}

function curveLines({ curve, stroke }: Drawn, at: Place): string[] {
  const path = pathLine<Spot>()
    .x((spot) => at(spot).x)
    .y((spot) => at(spot).y)
    .digits(2)([...curve.points]);
  const mark = MARKS[stroke === 'bold' ? 'bold' : 'outline'];
  // Slowly and in a hit the fork ends at the same travel: a line from the one force to the other says which cross is whose.
  const [last, end] = [curve.points.at(-1), { travel: curve.travel, force: curve.hit }];
  return [
    element('path', { d: path ?? '', ...stroked(stroke) }),
    mark.sag(at(curve.sag)),
    ...(last ? [line(at(last), at(end), 'dotted')] : []),
    mark.hit(at(end)),
  ];
}

const cross = ({ x, y }: Point, stroke: Stroke): string =>
  line({ x: x - 4, y: y - 4 }, { x: x + 4, y: y + 4 }, stroke) +
  line({ x: x - 4, y: y + 4 }, { x: x + 4, y: y - 4 }, stroke);

/** Marks belong to a curve by their weight: filled and bold to the bold one, hollow and thin to the dashed one. */
const MARKS = {
  bold: { sag: dot, hit: (at: Point) => cross(at, 'bold') },
  outline: { sag: hollow, hit: (at: Point) => cross(at, 'outline') },
} as const;

/** What each line and mark stands for, where force is low and the plot empty. */
function key(curves: readonly Drawn[], words: PictureWords): string[] {
  const left = PLOT.left + 18;
  const rows = curves.map(({ curve, which, stroke }) => ({
    mark: (y: number) => line({ x: left, y }, { x: left + 34, y }, stroke),
    said: words.spring.curve(which, curve),
  }));
  const weights = curves.map(({ stroke }) => MARKS[stroke === 'bold' ? 'bold' : 'outline']);
  const both = (name: 'sag' | 'hit', y: number): string =>
    weights.map((weight, at) => weight[name]({ x: left + 17 + 14 * (at - (weights.length - 1) / 2), y })).join('');
  const marks = [
    { mark: (y: number) => both('sag', y), said: words.spring.sag(curves[0]?.curve.sag.force ?? 0) },
    { mark: (y: number) => both('hit', y), said: words.spring.hit },
  ];
  return [...rows, ...marks].flatMap(({ mark, said }, at) => {
    const y = PLOT.top + 14 + 18 * at;
    return [mark(y), label({ x: left + 42, y: y + 4 }, said, 'start', 11)];
  });
}
