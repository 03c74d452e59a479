/** SVG as text: pure, the same in Node and in a browser. Numbers have two digits at most, so that equal pictures are equal bytes. */
export type Attributes = Readonly<Record<string, string | number>>;

/** An element; children are markup already. */
export function element(name: string, attributes: Attributes, children: readonly string[] = []): string {
  const words = Object.entries(attributes).map(([key, value]) => ` ${key}="${escaped(shown(value))}"`);
  const open = `<${name}${words.join('')}`;
  return children.length === 0 ? `${open}/>` : `${open}>${children.join('')}</${name}>`;
}

/** Text as markup. */
export const escaped = (text: string): string =>
  text
    .replaceAll(CONTROL, '')
    .replaceAll('&', '&amp;')
    .replaceAll('<', '&lt;')
    .replaceAll('>', '&gt;')
    .replaceAll('"', '&quot;');

/** Characters that XML does not allow. */
const CONTROL = /[\p{Cc}\p{Cs}\ufffe\uffff]/gu;

const shown = (value: string | number): string => (typeof value === 'number' ? String(two(value)) : value);
/** A number with two digits at most, never a negative nought. */
export const two = (value: number): number => Math.round(value * 100) / 100 + 0;

export interface Point {
  readonly x: number;
  readonly y: number;
}

/** How a line is drawn. Black throughout: what tells two things apart is width and dashes, so that print and every eye can. */
export type Stroke = 'outline' | 'bold' | 'dashed' | 'dotted' | 'fine';
const STROKES: Readonly<Record<Stroke, Attributes>> = {
  outline: { 'stroke-width': 1.2 },
  bold: { 'stroke-width': 2.4 },
  dashed: { 'stroke-width': 1.4, 'stroke-dasharray': '6 4' },
  dotted: { 'stroke-width': 0.8, 'stroke-dasharray': '1.5 3' },
  fine: { 'stroke-width': 0.6 },
};

export const stroked = (stroke: Stroke): Attributes => ({ fill: 'none', stroke: '#000', ...STROKES[stroke] });

export const line = (from: Point, to: Point, stroke: Stroke): string =>
  element('line', { x1: from.x, y1: from.y, x2: to.x, y2: to.y, ...stroked(stroke) });

export const polyline = (points: readonly Point[], stroke: Stroke): string =>
  element('polyline', { points: points.map(({ x, y }) => `${two(x)},${two(y)}`).join(' '), ...stroked(stroke) });

export const circle = (centre: Point, radius: number, stroke: Stroke): string =>
  element('circle', { cx: centre.x, cy: centre.y, r: radius, ...stroked(stroke) });

export const dot = ({ x, y }: Point): string => element('circle', { cx: x, cy: y, r: 3, fill: '#000' });

/** A dot that is white inside. */
export const hollow = ({ x, y }: Point): string =>
  element('circle', { cx: x, cy: y, r: 3, fill: '#fff', stroke: '#000', 'stroke-width': 1.2 });

export type Anchor = 'start' | 'middle' | 'end';
export const label = ({ x, y }: Point, words: string, anchor: Anchor = 'start', size = 12): string =>
  element('text', { x, y, 'text-anchor': anchor, 'font-size': size, fill: '#000' }, [escaped(words)]);

/** A group with a name and a description that screen readers speak. */
export const figure = (id: string, title: string, description: string, body: readonly string[], at: Point): string =>
  element(
    'g',
    {
      role: 'img',
      'aria-labelledby': `${id}-title ${id}-desc`,
      transform: `translate(${two(at.x)} ${two(at.y)})`,
    },
    [
      element('title', { id: `${id}-title` }, [escaped(title)]),
      element('desc', { id: `${id}-desc` }, [escaped(description)]),
      ...body,
    ],
  );

/** A piece of the sheet: how large it is and what is on it, from its upper left corner. */
export interface Panel {
  readonly width: number;
  readonly height: number;
  readonly body: readonly string[];
}
