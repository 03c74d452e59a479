import type { Plan } from '../../plan/index.ts';
import { whyWords } from '../document.ts';
import { section, wrapped } from '../layout.ts';
import type { Scene } from '../scene.ts';

/** Why the lines of a plan stand there, where that was asked for; each reason once. */
export function whyLines({ page, language }: Scene, { lines }: Plan): string[] {
  const reasons = new Set(lines.flatMap(({ why }) => (why === null ? [] : [whyWords(language, why)])));
  return section(
    page,
    language.phrases.heading.why,
    [...reasons].flatMap((reason) => wrapped(page, reason, '  - ')),
  );
}
