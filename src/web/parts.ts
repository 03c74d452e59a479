import type { QuestionInput } from '../plan/index.ts';
import type { Known } from './records.ts';
import { words } from './words/words.ts';

type Wants = NonNullable<QuestionInput['wants']>;
/** What kind of thing a part of the sentence says: a part is said otherwise by another of its kind. */
export type PartKind =
  | 'fork'
  | 'size'
  | 'built'
  | 'now'
  | 'holds'
  | 'maybe'
  | 'setting'
  | 'tyre'
  | 'steerer'
  | 'have'
  | 'travel'
  | 'wheel'
  | 'onto'
  | 'onto-size'
  | 'keep'
  | 'use'
  | 'renew'
  | 'service'
  | 'trait'
  | 'spacers'
  | 'rider'
  | 'coil'
  | 'axle-to-crown'
  | 'offset'
  | 'serial'
  | 'manner';

/** A part of the sentence: its words, and the question without it. */
export interface Part {
  readonly key: string;
  readonly kind: PartKind;
  readonly text: string;
  readonly without: QuestionInput;
}

/** The question as the parts of a sentence, in the order in which one says it. */
export function partsOf(question: QuestionInput, known: Known): readonly Part[] {
  return [...forkParts(question, known), ...wantParts(question, known), ...mannerParts(question, known)];
}

const part = (kind: PartKind, key: string, text: string, without: QuestionInput): Part => ({
  kind,
  key: `${kind} ${key}`,
  text,
  without,
});

function forkParts(question: QuestionInput, { fork, bike, onto }: Known): readonly Part[] {
  const { part: say } = words;
  const { chassis, bike: from, size, built, serial, travelNow, with: holds = {}, tyre, steererLength } = question;
  return [
    ...(chassis === undefined ? [] : [part('fork', chassis, fork?.name ?? chassis, forkless(question))]),
    ...(from === undefined ? [] : [part('fork', from, say.bike(bike?.name ?? from), forkless(question))]),
    ...(size === undefined ? [] : [part('size', size, say.size(size), omit(question, 'size'))]),
    ...(built === undefined ? [] : [part('built', built, say.built(built), omit(question, 'built'))]),
    ...(serial === undefined ? [] : [part('serial', serial, say.serial(serial), omit(question, 'serial'))]),
    ...(travelNow === undefined ? [] : [part('now', '', say.now(travelNow), omit(question, 'travelNow'))]),
    ...Object.entries(holds).map(([slot, content]) =>
      part('holds', slot, say.holds(slot, content === null ? words.changes.none : contentText(content)), {
        ...question,
        with: omit(holds, slot),
      }),
    ),
    ...Object.entries(question.maybe ?? {}).flatMap(([slot, contents]) => maybeParts(question, slot, contents)),
    ...Object.entries(question.settings ?? {}).map(([name, value]) =>
      part('setting', name, say.setting(name, value), { ...question, settings: omit(question.settings ?? {}, name) }),
    ),
    ...(steererLength === undefined
      ? []
      : [part('steerer', '', say.steerer(steererLength), omit(question, 'steererLength'))]),
    ...(question.onto === undefined
      ? []
      : [part('onto', question.onto, say.onto(onto?.name ?? question.onto), omit(omit(question, 'onto'), 'ontoSize'))]),
    ...(question.ontoSize === undefined
      ? []
      : [part('onto-size', question.ontoSize, say.size(question.ontoSize), omit(question, 'ontoSize'))]),
    ...(tyre === undefined ? [] : [part('tyre', tyre, say.tyre(tyre), omit(question, 'tyre'))]),
  ];
}

type Contents = NonNullable<QuestionInput['maybe']>[string];
/** What a slot may hold instead: a part each; the last one takes the slot with it. */
function maybeParts(question: QuestionInput, slot: string, contents: Contents): readonly Part[] {
  const { maybe = {} } = question;
  return contents.map((content, at) => {
    const others = contents.filter((_, other) => other !== at);
    const text = words.part.maybe(slot, content === null ? words.changes.none : contentText(content));
    return part('maybe', `${slot} ${at}`, text, {
      ...question,
      maybe: others.length === 0 ? omit(maybe, slot) : { ...maybe, [slot]: others },
    });
  });
}

/** Another fork is another question: nothing of it holds any more but how it is to be answered. */
function forkless(question: QuestionInput): QuestionInput {
  const { prefer, rider, supplies, substitutes, allowUnknown } = question;
  return Object.fromEntries(
    Object.entries({ prefer, rider, supplies, substitutes, allowUnknown }).filter(([, value]) => value !== undefined),
  );
}

function wantParts(question: QuestionInput, { named: heard }: Known): readonly Part[] {
  const { part: say } = words;
  const wants: Wants = question.wants ?? {};
  const { keep = [], use = [], renew = [], service = [], traits = {} } = wants;
  const wanting = (next: Wants): QuestionInput => ({ ...question, wants: next });
  const one = <Name extends keyof Wants>(kind: PartKind, name: Name, text: string): Part =>
    part(kind, name, text, wanting(omit(wants, name)));
  const each = (kind: PartKind, name: 'keep' | 'use' | 'renew' | 'service', text: (item: string) => string): Part[] =>
    (wants[name] ?? []).map((item) =>
      part(
        kind,
        item,
        text(item),
        wanting({ ...wants, [name]: (wants[name] ?? []).filter((other) => other !== item) }),
      ),
    );
  const nameOf = (sku: string): string => named(sku, partName(heard, sku));
  return [
    ...(wants.travel === undefined ? [] : [one('travel', 'travel', say.travel(wants.travel))]),
    ...(wants.wheel === undefined ? [] : [one('wheel', 'wheel', say.wheel(wants.wheel))]),
    ...(keep.length === 0 ? [] : each('keep', 'keep', say.keep)),
    ...(use.length === 0 ? [] : each('use', 'use', (sku) => say.use(nameOf(sku)))),
    ...(renew.length === 0 ? [] : each('renew', 'renew', say.renew)),
    ...(service.length === 0
      ? []
      : each('service', 'service', (id) => say.service(heard?.services.find((one) => one.id === id)?.name ?? id))),
    ...(wants.spacers === undefined ? [] : [one('spacers', 'spacers', say.spacers(wants.spacers))]),
    ...Object.entries(traits).map(([name, value]) =>
      part('trait', name, say.trait(name, value), wanting({ ...wants, traits: omit(traits, name) })),
    ),
    ...(wants.coilRate === undefined ? [] : [one('coil', 'coilRate', say.coil(wants.coilRate))]),
    ...(wants.axleToCrown === undefined
      ? []
      : [one('axle-to-crown', 'axleToCrown', say.axleToCrown(wants.axleToCrown.least, wants.axleToCrown.greatest))]),
    ...(wants.offset === undefined
      ? []
      : [one('offset', 'offset', say.offset(wants.offset.least, wants.offset.greatest))]),
  ];
}

function mannerParts(question: QuestionInput, { named: heard }: Known): readonly Part[] {
  const { part: say } = words;
  const { rider, prefer, supplies, substitutes, allowUnknown, have = [], why } = question;
  return [
    ...(rider?.mass === undefined
      ? []
      : [part('rider', '', say.rider(rider.mass), { ...question, rider: omit(rider, 'mass') })]),
    ...(prefer === 'time' || prefer === 'wait'
      ? [part('manner', 'prefer', say.prefer[prefer], omit(question, 'prefer'))]
      : []),
    ...(supplies === 'bulk' ? [part('manner', 'supplies', say.bulk, omit(question, 'supplies'))] : []),
    ...(substitutes === true ? [part('manner', 'substitutes', say.substitutes, omit(question, 'substitutes'))] : []),
    ...(allowUnknown === true ? [part('manner', 'unknown', say.allowUnknown, omit(question, 'allowUnknown'))] : []),
    ...have.map((one, at) =>
      part('have', `${at} ${one.sku}`, say.have(haveText(one, partName(heard, one.sku))), {
        ...question,
        have: have.filter((other) => other !== one),
      }),
    ),
    ...(why === true ? [part('manner', 'why', say.why, omit(question, 'why'))] : []),
  ];
}

type Had = NonNullable<QuestionInput['have']>[number];
/** So much of what is at hand, by its name where that is known. */
export const haveText = ({ sku, quantity = 1, amount, used }: Had, name: string | null): string => {
  const what = named(sku, name);
  const much = amount ? `${words.amount(amount.value, amount.unit)} ${what}` : contentText({ sku: what, quantity });
  return used === true ? words.part.used(much) : much;
};
const named = (sku: string, name: string | null): string => (name === null ? sku : `${name} (${sku})`);
const partName = (heard: Known['named'], sku: string): string | null =>
  heard?.slots.flatMap((slot) => slot.parts).find((one) => one.sku === sku)?.name ?? null;

export const contentText = ({ sku, quantity }: { readonly sku: string; readonly quantity: number }): string =>
  words.pieces(sku, quantity);

/** The same without one entry. */
function omit<T extends object, Name extends keyof T>(value: T, name: Name): Omit<T, Name> {
  const { [name]: _, ...rest } = value;
  return rest;
}
