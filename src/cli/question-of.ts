import type { Catalog } from '../catalog/index.ts';
import type { QuestionInput } from '../plan/index.ts';
import type { Coded } from '../report/words/say.ts';
import type { Given } from './read-options.ts';
import {
  type GivenContent,
  readChoice,
  readContent,
  readDate,
  readHave,
  readLength,
  readWheel,
  readWhole,
  type Value,
} from './read-values.ts';

/** A command line as a question; the counts that were left out wait for the catalogue. */
export interface AskedQuestion {
  readonly question: (catalog: Catalog) => QuestionInput;
  readonly faults: readonly Coded[];
}

/** Reads the options of `plan` as a question. Every value that cannot be read is a fault. */
export async function questionOf(given: Given): Promise<AskedQuestion> {
  const faults: Coded[] = [];
  const all = (name: string): readonly string[] => given.values.get(name) ?? [];
  const taken = <T>(name: string, text: string, value: Value<T>): T[] => {
    if (value.ok) return [value.value];
    faults.push({ code: 'bad-option-value', params: { option: `--${name}`, found: text, expected: value.expected } });
    return [];
  };
  const read = <T>(name: string, reader: (text: string) => Value<T>): T[] =>
    [...new Set(all(name))].flatMap((text) => taken(name, text, reader(text)));
  const length = async (name: string): Promise<number | undefined> => {
    const text = all(name)[0];
    return text === undefined ? undefined : taken(name, text, await readLength(text))[0];
  };
  const contents = read('with', readContent);
  faults.push(...contradictions(contents, all('with')));
  const [travelNow, travel] = [await length('travel-now'), await length('travel')];
  const wheel = read('wheel', readWheel)[0];
  const spacers = read('spacers', (text) => readWhole(text, 0, 'a whole number of spacers'))[0];
  const date = read('date', readDate)[0];
  const stepLimit = read('step-limit', (text) => readWhole(text, 1, 'a whole number above 0'))[0];
  const prefer = read('prefer', (text) => readChoice(text, ['money', 'time', 'wait']))[0];
  const supplies = read('supplies', (text) => readChoice(text, ['packs', 'bulk']))[0];
  const have = all('have').flatMap((text) => taken('have', text, readHave(text)));
  const question = (catalog: Catalog): QuestionInput => ({
    chassis: all('chassis')[0] ?? '',
    travelNow: travelNow ?? Number.NaN,
    with: withContents(catalog, all('chassis')[0] ?? '', contents),
    wants: {
      ...(travel === undefined ? {} : { travel }),
      ...(wheel === undefined ? {} : { wheel }),
      use: [...new Set(all('use'))],
      keep: [...new Set(all('keep'))],
      renew: [...new Set(all('renew'))],
      service: [...new Set(all('service'))],
      ...(spacers === undefined ? {} : { spacers }),
    },
    have,
    ...(prefer === undefined ? {} : { prefer }),
    ...(supplies === undefined ? {} : { supplies }),
    allowUnknown: given.values.has('allow-unknown'),
    ...(date === undefined ? {} : { date }),
    ...(stepLimit === undefined ? {} : { stepLimit }),
  });
  return { question, faults };
}

/** Two different contents for one slot. */
function contradictions(contents: readonly GivenContent[], texts: readonly string[]): Coded[] {
  const slots = contents.map(({ slot }) => slot);
  return [...new Set(slots.filter((slot, at) => slots.indexOf(slot) !== at))].map((slot) => ({
    code: 'option-twice',
    params: {
      option: `--with ${slot}`,
      values: [...new Set(texts.filter((text) => text.trim().startsWith(`${slot}=`)))],
    },
  }));
}

/** A content without a count holds one spacer, or as many pieces as the slot takes. */
function withContents(
  catalog: Catalog,
  chassis: string,
  contents: readonly GivenContent[],
): NonNullable<QuestionInput['with']> {
  const family = catalog.families.get(catalog.chassis.get(chassis)?.family ?? '');
  return Object.fromEntries(
    contents.map(({ slot: name, content }) => {
      const slot = family?.slots.find((known) => known.name === name);
      const usual = slot && !slot.counted ? slot.pieces : 1;
      return [name, content && { sku: content.sku, quantity: content.quantity ?? usual }];
    }),
  );
}
