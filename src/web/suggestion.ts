import type { QuestionInput } from '../plan/index.ts';
import type { PartKind } from './parts.ts';

/** Something that can be said next, and the question that it makes. */
export interface Suggestion {
  readonly key: string;
  readonly kind: PartKind;
  readonly text: string;
  /** What it is found by beside its text. */
  readonly also?: string;
  readonly next: QuestionInput;
}

const MOST_SHOWN = 40;

/** Those that hold every word of what is typed, the ones that begin with it first. */
export function matching(suggestions: readonly Suggestion[], typed: string): readonly Suggestion[] {
  const asked = plain(typed).split(' ').filter(Boolean);
  const ranked = suggestions.flatMap((suggestion) => {
    const text = `${plain(suggestion.text)} ${plain(suggestion.also ?? '')}`;
    const spoken = text.split(' ');
    if (!asked.every((word) => text.includes(word))) return [];
    return [{ suggestion, whole: asked.every((word) => spoken.some((one) => one.startsWith(word))) }];
  });
  return [...ranked.filter(({ whole }) => whole), ...ranked.filter(({ whole }) => !whole)]
    .slice(0, MOST_SHOWN)
    .map(({ suggestion }) => suggestion);
}

/** A text as it is compared: small letters, one blank between words. */
export const plain = (text: string): string =>
  text
    .toLowerCase()
    .replaceAll(/[\s\u00A0()]+/g, ' ')
    .trim();
