import type { Language, ListName, Words } from './language.ts';

type Value = string | number | boolean | null | readonly string[];
/** A code with its values, as every stage hands it over. */
export interface Coded {
  readonly code: string;
  readonly params: Readonly<Record<string, Value>>;
}

/** The sentence for a code; where a language has none, the code and its values, so that nothing is ever lost. */
export function say(language: Language, list: ListName, { code, params }: Coded): string {
  return wordsOf(language, list, code)?.say(params) ?? bare({ code, params });
}

/** What to do about it; empty where there is nothing to say. */
export function wayOut(language: Language, list: ListName, { code, params }: Coded): string {
  return wordsOf(language, list, code)?.way(params) ?? '';
}

/** The words for a code by its name. The one place where a name read at run time meets the typed tables. */
export function wordsOf(language: Language, list: ListName, code: string): Words<Coded['params']> | null {
  const table: object = language.codes[list];
  return Object.hasOwn(table, code)
    ? ((table as Readonly<Record<string, Words<Coded['params']>>>)[code] ?? null)
    : null;
}

const bare = ({ code, params }: Coded): string =>
  [code, ...Object.entries(params).map(([key, value]) => `${key} ${String(value)}`)].join(', ');
