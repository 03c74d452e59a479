import type { QuestionInput } from '../plan/index.ts';
import { heldSuggestions } from './held.ts';
import type { PartKind } from './parts.ts';
import type { BikeRecord, Hits, Known } from './records.ts';
import type { Suggestion } from './suggestion.ts';
import { words } from './words/words.ts';

/** What was found by name: forks, and bikes that left the works with one. */
export function forksFound(question: QuestionInput, { hits }: Hits): readonly Suggestion[] {
  return hits.flatMap(({ kind, id, name }): readonly Suggestion[] => {
    if (kind === 'chassis') return [{ key: id, kind: 'fork', text: name, next: { ...question, chassis: id } }];
    if (kind === 'bikes')
      return [{ key: id, kind: 'fork', text: words.part.bike(name), next: { ...question, bike: id } }];
    return [];
  });
}

/** What can be said of a question besides: only what exists, and what is not said yet. Narrowed to one kind, what may stand in its place. */
export function suggestionsFor(question: QuestionInput, known: Known, only: PartKind | null): readonly Suggestion[] {
  const all = [
    ...forkSuggestions(question, known),
    ...wantSuggestions(question, known),
    ...heldSuggestions(question, known),
    ...mannerSuggestions(question),
  ];
  return only === null ? all : all.filter(({ kind }) => kind === only);
}

function forkSuggestions(question: QuestionInput, { choices, bike, onto }: Known): readonly Suggestion[] {
  const { part: say } = words;
  const sizes = (of: BikeRecord | null): readonly string[] => of?.sizes ?? [];
  return [
    ...(question.bike !== undefined && question.size === undefined
      ? sizes(bike).map(
          (size): Suggestion => ({
            key: `size ${size}`,
            kind: 'size',
            text: say.size(size),
            next: { ...question, size },
          }),
        )
      : []),
    ...(question.bike !== undefined && question.built === undefined
      ? monthsOf(bike).map(
          (built): Suggestion => ({
            key: `built ${built}`,
            kind: 'built',
            text: say.built(built),
            next: { ...question, built },
          }),
        )
      : []),
    ...(question.travelNow === undefined
      ? [...(choices?.travelsNow ?? []), ...(choices?.travelsBuilt ?? [])].map(
          (travelNow): Suggestion => ({
            key: `now ${travelNow}`,
            kind: 'now',
            text: say.now(travelNow),
            next: { ...question, travelNow },
          }),
        )
      : []),
    ...(question.onto !== undefined && question.ontoSize === undefined
      ? sizes(onto).map(
          (ontoSize): Suggestion => ({
            key: `onto ${ontoSize}`,
            kind: 'onto-size',
            text: say.size(ontoSize),
            next: { ...question, ontoSize },
          }),
        )
      : []),
  ];
}

/** A month in each span of production that the forks of a bike tell apart. */
function monthsOf(bike: BikeRecord | null): readonly string[] {
  const spans = (bike?.forks ?? []).flatMap(({ built }) => (built === null ? [] : [built.from ?? built.to]));
  return [...new Set(spans)].flatMap((month) => (month === null ? [] : [month])).sort();
}

function wantSuggestions(question: QuestionInput, { choices }: Known): readonly Suggestion[] {
  if (choices === null) return [];
  const { part: say } = words;
  const wants = question.wants ?? {};
  const { keep = [], use = [], renew = [], service = [], traits = {} } = wants;
  const wanting = (more: typeof wants): QuestionInput => ({ ...question, wants: { ...wants, ...more } });
  const { slots } = choices;
  return [
    ...(wants.travel === undefined ? choices.travels : []).map(
      (travel): Suggestion => ({
        key: `travel ${travel}`,
        kind: 'travel',
        text: say.travel(travel),
        also: 'travel to',
        next: wanting({ travel }),
      }),
    ),
    ...(wants.wheel === undefined ? choices.wheels : []).map(
      (wheel): Suggestion => ({
        key: `wheel ${wheel}`,
        kind: 'wheel',
        text: say.wheel(wheel),
        next: wanting({ wheel }),
      }),
    ),
    ...(question.onto === undefined ? choices.bikes : []).map(
      ({ id, name }): Suggestion => ({
        key: `onto ${id}`,
        kind: 'onto',
        text: say.onto(name),
        also: 'bike',
        next: { ...question, onto: id },
      }),
    ),
    ...choices.services
      .filter(({ id }) => !service.includes(id))
      .map(
        ({ id, name }): Suggestion => ({
          key: `service ${id}`,
          kind: 'service',
          text: say.service(name),
          next: wanting({ service: [...service, id] }),
        }),
      ),
    ...slots
      .filter(({ name, held, renewable }) => held !== null && !renewable && !keep.includes(name))
      .map(
        ({ name }): Suggestion => ({
          key: `keep ${name}`,
          kind: 'keep',
          text: say.keep(name),
          next: wanting({ keep: [...keep, name] }),
        }),
      ),
    ...slots
      .filter(({ name, renewable }) => renewable && !renew.includes(name))
      .map(
        ({ name }): Suggestion => ({
          key: `renew ${name}`,
          kind: 'renew',
          text: say.renew(name),
          next: wanting({ renew: [...renew, name] }),
        }),
      ),
    ...slots.flatMap(({ name: slot, parts, held }) =>
      parts
        .filter(({ sku }) => sku !== held?.sku && !use.includes(sku))
        .map(
          ({ sku, name }): Suggestion => ({
            key: `use ${sku}`,
            kind: 'use',
            text: say.use(`${name} (${sku})`),
            also: words.role(slot),
            next: wanting({ use: [...use, sku] }),
          }),
        ),
    ),
    ...choices.traits
      .filter(({ name, values }) => values.length > 1 && !(name in traits))
      .flatMap(({ name, values }) =>
        values.map(
          (value): Suggestion => ({
            key: `trait ${name} ${value}`,
            kind: 'trait',
            text: say.trait(name, value),
            next: wanting({ traits: { ...traits, [name]: value } }),
          }),
        ),
      ),
    ...spacerCounts(slots, wants.spacers).map(
      (spacers): Suggestion => ({
        key: `spacers ${spacers}`,
        kind: 'spacers',
        text: say.spacers(spacers),
        next: wanting({ spacers }),
      }),
    ),
  ];
}

function spacerCounts(slots: NonNullable<Known['choices']>['slots'], said: number | undefined): readonly number[] {
  const slot = slots.find(({ name }) => name === 'volume-spacers');
  return said !== undefined || !slot ? [] : Array.from({ length: slot.pieces + 1 }, (_, count) => count);
}

function mannerSuggestions(question: QuestionInput): readonly Suggestion[] {
  const { part: say } = words;
  const { prefer = 'money', supplies = 'packs' } = question;
  const manner = (key: string, text: string, more: QuestionInput): Suggestion => ({
    key,
    kind: 'manner',
    text,
    next: { ...question, ...more },
  });
  if (question.chassis === undefined && question.bike === undefined) return [];
  return [
    ...(prefer === 'money'
      ? [manner('time', say.prefer.time, { prefer: 'time' }), manner('wait', say.prefer.wait, { prefer: 'wait' })]
      : []),
    ...(supplies === 'packs' ? [manner('bulk', say.bulk, { supplies: 'bulk' })] : []),
    ...(question.substitutes === true ? [] : [manner('substitutes', say.substitutes, { substitutes: true })]),
    ...(question.allowUnknown === true ? [] : [manner('unknown', say.allowUnknown, { allowUnknown: true })]),
  ];
}
