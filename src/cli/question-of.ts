import type { Catalog } from '../catalog/index.ts';
import type { Coded } from '../report/words/say.ts';
import type { Fill, Keyed } from './fill.ts';
import type { OptionSpec } from './options.ts';
import type { Given } from './read-options.ts';
import type { GivenContent, Value } from './read-values.ts';

/** A question as far as a command line gives it: keys of the question, nothing checked yet. */
export type Filled = Readonly<Record<string, unknown>>;
/** A command line as a question; the counts that were left out wait for the catalogue. */
export interface AskedQuestion {
  readonly question: (catalog: Catalog) => Filled;
  readonly faults: readonly Coded[];
}

/** Reads options as a question, by the table that says where each belongs. Every value that cannot be read is a fault. */
export async function questionOf(given: Given, options: readonly OptionSpec[]): Promise<AskedQuestion> {
  const faults: Coded[] = [];
  const filled: Record<string, unknown> = {};
  const inside: Record<string, Record<string, unknown>> = { wants: {} };
  for (const { name, fill } of options) {
    const texts = given.values.get(name);
    if (!fill || texts === undefined) continue;
    const [first = '', inner] = fill.path.split('.');
    const value = fill.as === 'switch' ? true : await readAll(`--${name}`, fill, texts, faults);
    if (value === undefined) continue;
    if (inner === undefined) filled[first] = value;
    else inside[first] = { ...inside[first], [inner]: value };
  }
  return { question: (catalog) => withCounts(catalog, { ...filled, ...inside }), faults };
}

async function readAll(
  option: string,
  fill: Exclude<Fill, { as: 'switch' }>,
  texts: readonly string[],
  faults: Coded[],
): Promise<unknown> {
  const taken: { readonly text: string; readonly value: unknown }[] = [];
  for (const text of fill.path === 'have' ? texts : new Set(texts)) {
    const read: Value<unknown> = await fill.read(text);
    if (read.ok) taken.push({ text, value: read.value });
    else faults.push({ code: 'bad-option-value', params: { option, found: text, expected: read.expected } });
  }
  if (taken.length === 0) return undefined;
  switch (fill.as) {
    case 'one':
      return taken[0]?.value;
    case 'list':
      return taken.map(({ value }) => value);
    case 'record': {
      const keyed = taken.map(({ text, value }) => ({ text, ...(value as Keyed) }));
      for (const key of new Set(keyed.map((one) => one.key))) {
        const same = keyed.filter((one) => one.key === key);
        if (same.length > 1)
          faults.push({
            code: 'option-twice',
            params: { option: `${option} ${key}`, values: same.map(({ text }) => text) },
          });
      }
      return Object.fromEntries(keyed.map(({ key, value }) => [key, value]));
    }
    case 'lists': {
      const lists: Record<string, unknown[]> = {};
      for (const { value } of taken) {
        const one = value as Keyed;
        lists[one.key] = [...(lists[one.key] ?? []), one.value];
      }
      return lists;
    }
  }
}

/** A content without a count holds one spacer, or as many pieces as its slot takes. */
function withCounts(catalog: Catalog, question: Filled): Filled {
  const counted = (name: string, content: GivenContent): GivenContent =>
    content && { ...content, quantity: content.quantity ?? usualCount(catalog, question, name, content.sku) };
  const held = Object.entries((question.with ?? {}) as Record<string, GivenContent>);
  const possible = Object.entries((question.maybe ?? {}) as Record<string, readonly GivenContent[]>);
  return {
    ...question,
    with: Object.fromEntries(held.map(([name, content]) => [name, counted(name, content)])),
    maybe: Object.fromEntries(possible.map(([name, all]) => [name, all.map((content) => counted(name, content))])),
  };
}

/** How many pieces a slot takes, in the family of the chassis, or else in one that the part fits. */
function usualCount(catalog: Catalog, question: Filled, name: string, sku: string): number {
  const own = catalog.chassis.get(String(question.chassis))?.family;
  const families = own === undefined ? (catalog.parts.get(sku)?.fits ?? []).map(({ family }) => family) : [own];
  const slot = families
    .flatMap((family) => catalog.families.get(family)?.slots ?? [])
    .find((known) => known.name === name);
  return slot && !slot.counted ? slot.pieces : 1;
}
