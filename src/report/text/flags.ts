import type { Flag } from '../../plan/index.ts';
import { section, wrapped } from '../layout.ts';
import { type Scene, sourceWords } from '../scene.ts';
import { say, wayOut } from '../words/say.ts';

const ORDER: readonly Flag['severity'][] = ['blocks', 'verify', 'advice'];
const STYLE = { blocks: 'bad', verify: 'warn', advice: 'faint' } as const;

/** What stops the job, what must be looked up, and what is worth knowing; the gravest first, each with its source. */
export function flagLines(scene: Scene, flags: readonly Flag[]): string[] {
  const { page, language } = scene;
  const sorted = ORDER.flatMap((severity) => flags.filter((flag) => flag.severity === severity));
  const shown = new Set<string>();
  const lines = sorted.flatMap((flag) => {
    const message = say(language, 'flags', flag);
    if (shown.has(message)) return [];
    shown.add(message);
    const mark = page.paint(STYLE[flag.severity], language.phrases.severity[flag.severity]);
    const way = flag.severity === 'advice' ? '' : ` ${wayOut(language, 'flags', flag)}`;
    const source = flag.severity === 'advice' ? '' : sourceWords(scene, flag.source);
    return [
      ...wrapped(page, `${message}${way}`, `  ${mark.padEnd(5)} `, ' '.repeat(8)),
      ...(source === '' ? [] : wrapped(page, page.paint('faint', source), ' '.repeat(8))),
    ];
  });
  return section(page, language.phrases.heading.watch, lines);
}
