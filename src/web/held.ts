import type { ChoicesDocument, QuestionInput } from '../plan/index.ts';
import { contentText } from './parts.ts';
import type { Known } from './records.ts';
import type { Suggestion } from './suggestion.ts';
import { words } from './words/words.ts';

type Slot = ChoicesDocument['slots'][number];
type Content = { readonly sku: string; readonly quantity: number } | null;
/** Most marks of a setting that are offered. */
const MOST_MARKS = 60;

/** What can be said of the fork in front of you: what a slot holds, what it may hold where nobody is sure, how it is set. */
export function heldSuggestions(question: QuestionInput, { choices }: Known): readonly Suggestion[] {
  if (choices === null) return [];
  return [
    ...choices.slots.flatMap((slot) => holds(question, slot)),
    ...choices.settings.flatMap((setting) => marks(question, setting)),
    ...choices.slots.flatMap((slot) => mayHold(question, slot)),
  ];
}

function holds(question: QuestionInput, slot: Slot): readonly Suggestion[] {
  const { with: said = {} } = question;
  if (slot.name in said) return [];
  return contentsOf(slot).map((content) => ({
    key: `holds ${slot.name} ${keyOf(content)}`,
    kind: 'holds',
    text: words.part.holds(slot.name, wordsOf(content)),
    also: 'has now',
    next: { ...question, with: { ...said, [slot.name]: content } },
  }));
}

function mayHold(question: QuestionInput, slot: Slot): readonly Suggestion[] {
  const { maybe = {} } = question;
  const said = maybe[slot.name] ?? [];
  return contentsOf(slot)
    .filter((content) => !said.some((one) => keyOf(one) === keyOf(content)))
    .map((content) => ({
      key: `maybe ${slot.name} ${keyOf(content)}`,
      kind: 'maybe',
      text: words.part.maybe(slot.name, wordsOf(content)),
      also: 'may hold perhaps not sure',
      next: { ...question, maybe: { ...maybe, [slot.name]: [...said, content] } },
    }));
}

/** What else a slot can hold than what is taken to be in it: each part, each count of one that is counted, nothing where it may be empty. */
function contentsOf({ parts, pieces, counted, mayBeEmpty, held }: Slot): readonly Content[] {
  const counts = counted ? Array.from({ length: pieces }, (_, at) => at + 1) : [pieces];
  const all: readonly Content[] = [
    ...parts.flatMap(({ sku }) => counts.map((quantity) => ({ sku, quantity }))),
    ...(mayBeEmpty ? [null] : []),
  ];
  return all.filter((content) => keyOf(content) !== keyOf(held));
}

const keyOf = (content: Content): string => (content === null ? '' : `${content.sku}*${content.quantity}`);
const wordsOf = (content: Content): string => (content === null ? words.changes.none : contentText(content));

function marks(
  question: QuestionInput,
  { name, least, greatest, step }: ChoicesDocument['settings'][number],
): readonly Suggestion[] {
  const { settings = {} } = question;
  if (name in settings) return [];
  const count = step > 0 ? Math.min(MOST_MARKS, Math.floor((greatest - least) / step + 1e-9) + 1) : 1;
  return Array.from({ length: count }, (_, at) => Math.round((least + at * step) * 1000) / 1000).map((value) => ({
    key: `setting ${name} ${value}`,
    kind: 'setting',
    text: words.part.setting(name, value),
    also: 'setting',
    next: { ...question, settings: { ...settings, [name]: value } },
  }));
}
