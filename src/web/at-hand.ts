import type { QuestionInput } from '../plan/index.ts';
import { haveText } from './parts.ts';
import type { KitRecord, Known, SupplyRecord } from './records.ts';
import { matching, plain, type Suggestion } from './suggestion.ts';
import { decimalOf } from './words/numbers.ts';
import { words } from './words/words.ts';

/** What the catalogue sells beside parts, for what one may have at hand. */
export interface Shelf {
  readonly kits: readonly KitRecord[];
  readonly supplies: readonly SupplyRecord[];
}

/** So much of something: "2 x QN-VS", "120 mL bath oil". */
interface Measured {
  readonly quantity: number;
  readonly amount: { readonly value: number; readonly unit: 'mL' | 'g' } | null;
  readonly rest: string;
}

/** What one may have at hand, in pieces, or in mL or g where that is typed before it. */
export function atHandSuggestions(
  question: QuestionInput,
  known: Known,
  shelf: Shelf,
  typed: string,
): readonly Suggestion[] {
  if (question.chassis === undefined && question.bike === undefined) return [];
  const { quantity, amount, rest } = measuredIn(typed);
  const { have = [] } = question;
  const all = amount === null ? inPieces(known, shelf) : measured(shelf, amount.unit);
  const offered = all
    .filter(({ sku }) => !have.some((one) => one.sku === sku))
    .map(({ sku, name }): Suggestion => {
      const item = amount === null ? { sku, quantity } : { sku, amount };
      return {
        key: `have ${sku}`,
        kind: 'have',
        text: words.part.have(haveText(item, name)),
        also: 'have',
        next: { ...question, have: [...have, item] },
      };
    });
  return matching(offered, rest);
}

function measuredIn(typed: string): Measured {
  const text = plain(typed);
  const pieces = /^(?:with |have )*([1-9][0-9]{0,2}) ?[x×*] ?(.*)$/.exec(text);
  if (pieces) return { quantity: Number(pieces[1]), amount: null, rest: pieces[2] ?? '' };
  const [, value, unit, rest = ''] = /^(?:with |have )*([0-9]{1,5}(?:[.,][0-9]+)?) ?(ml|g)(?: (.*))?$/.exec(text) ?? [];
  if (value === undefined || decimalOf(value) <= 0) return { quantity: 1, amount: null, rest: typed };
  return { quantity: 1, amount: { value: decimalOf(value), unit: unit === 'g' ? 'g' : 'mL' }, rest };
}

interface Named {
  readonly sku: string;
  readonly name: string;
}

function inPieces({ choices }: Known, { kits, supplies }: Shelf): readonly Named[] {
  const parts = (choices?.slots ?? []).flatMap((slot) => slot.parts);
  const packs = supplies.flatMap(({ name, packs: sizes }) =>
    sizes.map(({ sku, size }) => ({ sku, name: `${name}, ${size}` })),
  );
  const pieces = supplies.filter(({ unit }) => unit === 'piece');
  return [...new Map([...parts, ...packs, ...pieces, ...kits].map((one) => [one.sku, one])).values()];
}

const measured = ({ supplies }: Shelf, unit: 'mL' | 'g'): readonly Named[] =>
  supplies.filter((one) => one.unit === unit);
