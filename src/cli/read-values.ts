/** A value as the question has it, or what it should have been. */
export type Value<T> = { readonly ok: true; readonly value: T } | { readonly ok: false; readonly expected: string };

const good = <T>(value: T): Value<T> => ({ ok: true, value });
const bad = <T>(expected: string): Value<T> => ({ ok: false, expected });
const DECIMAL = /^[0-9]+(?:\.[0-9]+)?$/;

/** A length in mm: a bare number is mm; with a unit it is read exactly. */
export async function readLength(text: string): Promise<Value<number>> {
  const trimmed = text.trim();
  if (DECIMAL.test(trimmed)) return good(Number(trimmed));
  const expected = 'a length of 0 mm or more, such as 130, "130 mm" or "5.5 in"';
  if (!/^[0-9]/.test(trimmed)) return bad(expected);
  const { parseQuantity } = await import('../quantity/parse.ts');
  const parsed = parseQuantity('length', trimmed);
  return parsed.ok ? good(parsed.value / 1000) : bad(expected);
}

/** A whole number within bounds. */
export function readWhole(text: string, least: number, what: string): Value<number> {
  const trimmed = text.trim();
  return /^[0-9]{1,10}$/.test(trimmed) && Number(trimmed) >= least ? good(Number(trimmed)) : bad(what);
}

/** A wheel by its bead-seat diameter; "mm" may stand behind it. */
export const readWheel = (text: string): Value<number> =>
  readWhole(text.replace(/\s*mm$/, ''), 1, 'a bead-seat diameter in mm, such as 622');

/** One of a few words. */
export const readChoice = <const T extends string>(text: string, choices: readonly T[]): Value<T> => {
  const found = choices.find((choice) => choice === text.trim());
  return found === undefined ? bad(`one of ${choices.join(', ')}`) : good(found);
};

export const readDate = (text: string): Value<string> => {
  const trimmed = text.trim();
  if (!/^[0-9]{4}-[0-9]{2}-[0-9]{2}$/.test(trimmed)) return bad('a day written as YYYY-MM-DD');
  const day = new Date(`${trimmed}T00:00:00Z`);
  return !Number.isNaN(day.getTime()) && day.toISOString().startsWith(trimmed)
    ? good(trimmed)
    : bad('a day of the calendar');
};

/** What is in a slot. Without a count, the count is left to the slot. */
export interface GivenContent {
  readonly slot: string;
  readonly content: { readonly sku: string; readonly quantity: number | null } | null;
}

export function readContent(text: string): Value<GivenContent> {
  const [, slot, what] = /^\s*([^=\s]+)\s*=\s*(.+?)\s*$/.exec(text) ?? [];
  const [, sku, count] = /^([^*\s]+?)(?:\*([0-9]{1,4}))?$/.exec(what ?? '') ?? [];
  if (slot === undefined || sku === undefined || count === '0' || !SKU.test(sku))
    return bad('SLOT=SKU, SLOT=SKU*N or SLOT=none');
  if (sku === 'none' && count === undefined) return good({ slot, content: null });
  return good({ slot, content: { sku, quantity: count === undefined ? null : Number(count) } });
}
const SKU = /^[A-Za-z0-9](?:[A-Za-z0-9._/-]*[A-Za-z0-9])?$/;

/** Something at hand, as the question has it. */
export interface GivenHave {
  readonly sku: string;
  readonly quantity?: number;
  readonly amount?: { readonly value: number; readonly unit: 'mL' | 'g' };
  readonly used: boolean;
}

export function readHave(text: string): Value<GivenHave> {
  const match = /^\s*([^*:\s]+)(?:\*([0-9]+(?:\.[0-9]+)?)\s*(mL|ml|g)?)?(:used)?\s*$/.exec(text);
  const [, sku, number, unit, used] = match ?? [];
  const expected = 'SKU, SKU*2, SKU*8mL or SKU*5g, with :used behind it for a used part';
  if (sku === undefined || !SKU.test(sku)) return bad(expected);
  const base = { sku, used: used !== undefined };
  if (number === undefined) return good(base);
  if (unit !== undefined)
    return Number(number) > 0
      ? good({ ...base, amount: { value: Number(number), unit: unit === 'g' ? 'g' : 'mL' } })
      : bad(expected);
  return /^[1-9][0-9]{0,3}$/.test(number) ? good({ ...base, quantity: Number(number) }) : bad(expected);
}
