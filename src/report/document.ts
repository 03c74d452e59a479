import type { Catalog } from '../catalog/index.ts';
import type { Answer, AnswerDocument, Flag, Line, Source, SpringSide } from '../plan/index.ts';
import type { Language } from './words/language.ts';
import { type Coded, say, wordsOf } from './words/say.ts';

/** Whether facts are shown with the file and line they stand at. */
export type Places = 'with-places' | 'without-places';

/** Puts words to every code of an answer. With places, each source says its file and line in the catalogue. */
export function answerDocument(answer: Answer, language: Language, catalog: Catalog, places: Places): AnswerDocument {
  const place = placer(catalog, places);
  const flag = (one: Flag): AnswerDocument['flags'][number] => ({
    ...flagDocument(one, language),
    source: place(one.source),
  });
  return {
    ...plain(answer),
    flags: answer.flags.map(flag),
    plans: answer.plans.map((plan) => ({
      ...plain(plan),
      lines: plan.lines.map((line) => lineDocument(line, language, place)),
      steps: plan.steps.map((step) => ({ ...plain(step), source: placed(step.source, place) })),
      effects: { ...plain(plan.effects), spring: springDocument(plan.effects.spring, language) },
      flags: plan.flags.map(flag),
    })),
    refusal: answer.refusal && {
      ...plain(answer.refusal),
      conflicts: answer.refusal.conflicts.map((conflict) =>
        conflict.map((member) => ({
          kind: member.kind,
          code: member.code,
          params: values(member.params),
          message: say(language, 'members', member),
          source: place(member.source),
        })),
      ),
      instead: answer.refusal.instead.map((way) => ({
        ...plain(way),
        drop: way.drop.map((member) => ({
          code: member.code,
          params: values(member.params),
          message: say(language, 'members', member),
        })),
      })),
    },
  };
}

type Place = (source: Source | null) => Source | null;

function placer(catalog: Catalog, places: Places): Place {
  if (places === 'without-places') return (source) => source && { ...source };
  return (source) => {
    const at = source && placeOf(catalog, source.record);
    return source && (at === null ? { ...source } : { ...source, place: at });
  };
}

const placed = (source: Source, place: Place): Source => place(source) ?? source;

/** File and line of a record, or of the whole record where a part of it has no place of its own. */
export const placeOf = (catalog: Catalog, record: string): string | null =>
  catalog.places.get(record) ?? catalog.places.get(record.split('#', 1)[0] ?? '') ?? null;

/** A flag with its words. */
export const flagDocument = (one: Flag, language: Language): AnswerDocument['flags'][number] => ({
  severity: one.severity,
  code: one.code,
  params: values(one.params),
  message: say(language, 'flags', one),
  source: one.source && { ...one.source },
});

type Spring = Answer['plans'][number]['effects']['spring'];
type SpringDocument = AnswerDocument['plans'][number]['effects']['spring'];

/** Spring and rider, with words for why a figure is not given. */
function springDocument(spring: Spring, language: Language): SpringDocument {
  if (spring === null) return null;
  const side = (one: SpringSide | null) => springSideDocument(one, language);
  return { ...plain(spring), before: side(spring.before), after: side(spring.after) };
}

/** One side of it. */
export function springSideDocument(side: SpringSide | null, language: Language): NonNullable<SpringDocument>['after'] {
  return (
    side && {
      ...plain(side),
      outside: side.outside && outsideDocument(side.outside, language),
    }
  );
}

/** Why a figure is not given, with its words. */
export const outsideDocument = (outside: Coded, language: Language) => ({
  code: outside.code,
  params: values(outside.params),
  message: say(language, 'outsides', outside),
});

/** A line with its fields in the order in which people read them, whatever order they were put together in. */
function lineDocument(line: Line, language: Language, place: Place): AnswerDocument['plans'][number]['lines'][number] {
  const { action, sku, name, role, quantity, unit, packs, unitPrice, total, leftOver, from, because, why, ...rest } =
    plain(line);
  return {
    action,
    sku,
    name,
    role,
    quantity,
    unit,
    packs,
    unitPrice,
    total,
    leftOver,
    from,
    because,
    why: why && { ...why, message: whyWords(language, why) },
    ...rest,
    source: place(line.source),
  };
}

/** Why a line stands as it does, and the one fact against the nearest alternative: a rule is worded as in a refusal. */
export function whyWords(language: Language, why: NonNullable<Line['why']>): string {
  const said = say(language, 'whys', why);
  if (why.against === null) return said;
  const list = wordsOf(language, 'against', why.against.code) ? 'against' : 'members';
  const { sku } = why.against.params;
  const about = list === 'members' && typeof sku === 'string' ? `against ${sku}: ` : '';
  return `${said}; ${about}${say(language, list, why.against)}`;
}

type Writable<T> = T extends readonly (infer Item)[]
  ? Writable<Item>[]
  : T extends object
    ? { -readonly [Key in keyof T]: Writable<T[Key]> }
    : T;

/** The same value as the document's type has it: nothing is copied, and nobody writes to it. */
const plain = <T>(value: T): Writable<T> => value as Writable<T>;
const values = (params: Coded['params']): Writable<Coded['params']> => plain(params);
