import { type Page, wrapped } from './layout.ts';
import type { Language, ListName } from './words/language.ts';
import { type Coded, say, wayOut } from './words/say.ts';

/** A fault with the list its code stands in. */
export interface ListedFault extends Coded {
  readonly list: ListName;
}

/** Faults as text: each with its code, what is wrong, and the way out. */
export function faultLines(page: Page, language: Language, faults: readonly ListedFault[]): string[] {
  return faults.flatMap((fault) => {
    const way = wayOut(language, fault.list, fault);
    return [
      ...wrapped(page, say(language, fault.list, fault), `${page.paint('bad', 'error')} ${fault.code}: `, '  '),
      ...(way === '' ? [] : wrapped(page, way, '  ')),
    ];
  });
}
