import type { PictureData } from '../plan/index.ts';
import { bikeView } from './bike-view.ts';
import { forkView } from './fork-view.ts';
import { springPlot } from './spring-plot.ts';
import { element, escaped, figure, label, type Panel, two } from './svg.ts';
import type { PictureWords } from './words.ts';

const MARGIN = 16;
const HEADING = 30;

interface Named {
  readonly id: string;
  readonly title: string;
  readonly description: string;
  readonly panel: Panel;
}

/**
 * One sheet under the other: spring curves, the bike from its side, the fork. Black on white, with a title and a description of every
 * panel for who does not see it. Each panel is also a view of its own: `#spring`, `#bike` or `#fork` behind the address shows that one alone.
 * SVG 1.1 as text; the same bytes for the same plan, in Node as in a browser.
 */
export function pictureSvg({ spring, bike, fork }: PictureData, words: PictureWords): string {
  const panels: readonly Named[] = [
    ...(spring
      ? [
          {
            id: 'spring',
            title: words.spring.title,
            description: words.spring.description(spring),
            panel: springPlot(spring, words),
          },
        ]
      : []),
    ...(bike
      ? [
          {
            id: 'bike',
            title: words.bike.title(bike),
            description: words.bike.description(bike),
            panel: bikeView(bike, words),
          },
        ]
      : []),
    {
      id: 'fork',
      title: words.fork.title,
      description: words.fork.description(fork.before, fork.after),
      panel: forkView(fork.before, fork.after, words),
    },
  ];
  const width = Math.max(...panels.map(({ panel }) => panel.width)) + 2 * MARGIN;
  let y = MARGIN;
  const body = panels.flatMap(({ id, title, description, panel }) => {
    const view = element('view', { id, viewBox: `0 ${two(y)} ${width} ${two(HEADING + panel.height)}` });
    const drawn = figure(id, title, description, [label({ x: 0, y: 14 }, title, 'start', 16), shifted(panel)], {
      x: MARGIN,
      y,
    });
    y += HEADING + panel.height + MARGIN;
    return [view, drawn];
  });
  const height = Math.ceil(y);
  const svg = element(
    'svg',
    {
      xmlns: 'http://www.w3.org/2000/svg',
      viewBox: `0 0 ${width} ${height}`,
      width,
      height,
      lang: words.tag,
      'font-family': 'sans-serif',
      role: 'group',
      'aria-labelledby': 'sheet-title sheet-desc',
    },
    [
      element('title', { id: 'sheet-title' }, [escaped(words.title)]),
      element('desc', { id: 'sheet-desc' }, [escaped(words.description)]),
      element('rect', { width: '100%', height: '100%', fill: '#fff' }),
      ...body,
    ],
  );
  return `<?xml version="1.0" encoding="UTF-8"?>\n${svg}\n`;
}

const shifted = ({ body }: Panel): string => element('g', { transform: `translate(0 ${HEADING})` }, body);
