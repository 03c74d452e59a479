import { beadSeatOf } from '../quantity/index.ts';
import type { Keyed } from './fill.ts';

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

/** A wheel by its bead-seat diameter ("mm" may stand behind it), or as the trade says it in inches. */
export function readWheel(text: string): Value<number> {
  const inches = beadSeatOf(text);
  if (inches !== null) return good(inches);
  const expected = 'a bead-seat diameter in mm, such as 622 (it stands on the tyre: 60-622), or 26, 27.5 or 29 in';
  return readWhole(text.replace(/\s*mm$/, ''), 100, expected);
}

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

/** Any text that is not empty; what it may be is for the question to say. */
export const readText = (text: string): Value<string> => (text.trim() === '' ? bad('a value') : good(text.trim()));

/** A rate of a coil in N/mm. */
export async function readRate(text: string): Promise<Value<number>> {
  const trimmed = text.trim();
  if (DECIMAL.test(trimmed)) return good(Number(trimmed));
  const expected = 'a rate, such as 7.5, "7.5 N/mm" or "43 lbf/in"';
  if (!/^[0-9]/.test(trimmed)) return bad(expected);
  const { parseQuantity } = await import('../quantity/parse.ts');
  const parsed = parseQuantity('rate', trimmed);
  return parsed.ok ? good(parsed.value / 1000) : bad(expected);
}

/** A mass in kg; a bare number is kg. */
export async function readMass(text: string): Promise<Value<number>> {
  const expected = 'a mass, such as 80, "80 kg" or "176 lb"';
  const read = await readQuantity('mass', text, expected);
  return read.ok ? good(typeof read.value === 'string' ? Number(read.value) : read.value.held / 1e6) : read;
}

/** An angle in degrees; a bare number is degrees. */
export async function readAngle(text: string): Promise<Value<number>> {
  const expected = 'an angle, such as 65.5 or "65.5 deg"';
  const read = await readQuantity('angle', text, expected);
  return read.ok ? good(typeof read.value === 'string' ? Number(read.value) : read.value.held / 1e3) : read;
}

/** A bare number as it is written, or a quantity in its held unit. */
async function readQuantity(
  dimension: 'mass' | 'angle',
  text: string,
  expected: string,
): Promise<Value<string | { readonly held: number }>> {
  const trimmed = text.trim();
  if (DECIMAL.test(trimmed)) return good(trimmed);
  if (!/^[0-9]/.test(trimmed)) return bad(expected);
  const { parseQuantity } = await import('../quantity/parse.ts');
  const parsed = parseQuantity(dimension, trimmed);
  return parsed.ok ? good({ held: parsed.value }) : bad(expected);
}

/** A share: "25 %", or 25 for the same. Always per cent, so that 0.25 is not taken for something else. */
export function readShare(text: string): Value<number> {
  const [, number] = /^([0-9]+(?:\.[0-9]+)?)\s*%?$/.exec(text.trim()) ?? [];
  const share = Number(number);
  return number !== undefined && share >= 1 && share <= 100
    ? good(Math.round(share * 1000) / 1e5)
    : bad('a share in per cent from 1 to 100, such as 25 or "25 %"');
}

/** A temperature in °C; below zero with a minus. */
export function readTemperature(text: string): Value<number> {
  const [, number] = /^([-+]?[0-9]+(?:\.[0-9]+)?)\s*(?:°?C|degC)?$/.exec(text.trim()) ?? [];
  return number === undefined ? bad('a temperature in °C, such as 20, "20 °C" or -5') : good(Number(number));
}

/** Bounds of a length in mm: LEAST..GREATEST, or one length for both. */
export async function readBounds(text: string): Promise<Value<{ readonly least: number; readonly greatest: number }>> {
  const [first = '', second = first, ...more] = text.split('..');
  const [least, greatest] = [await readLength(first), await readLength(second)];
  const expected = 'LEAST..GREATEST in mm, such as 510..525';
  if (!least.ok || !greatest.ok || more.length > 0 || least.value > greatest.value) return bad(expected);
  return good({ least: least.value, greatest: greatest.value });
}

/** NAME=LENGTH. */
export async function readSetting(text: string): Promise<Value<Keyed>> {
  const [, key, value] = /^\s*([^=\s]+)\s*=\s*(.+?)\s*$/.exec(text) ?? [];
  const length = await readLength(value ?? '');
  return key !== undefined && length.ok ? good({ key, value: length.value }) : bad('NAME=LENGTH');
}

/** SLOT.TRAIT=VALUE. */
export function readTrait(text: string): Value<Keyed> {
  const [, key, value] = /^\s*([a-z0-9-]+\.[a-z0-9-]+)\s*=\s*([^=\s]+)\s*$/.exec(text) ?? [];
  return key === undefined ? bad('SLOT.TRAIT=VALUE, such as damper.lockout=none') : good({ key, value });
}

/** What a slot holds. Without a count, the count is left to the slot. */
export type GivenContent = { readonly sku: string; readonly quantity: number | null } | null;

export function readContent(text: string): Value<{ readonly key: string; readonly value: GivenContent }> {
  const [, key, what] = /^\s*([^=\s]+)\s*=\s*(.+?)\s*$/.exec(text) ?? [];
  const [, sku, count] = /^([^*\s]+?)(?:\*([0-9]{1,4}))?$/.exec(what ?? '') ?? [];
  if (key === undefined || sku === undefined || count === '0' || !SKU.test(sku))
    return bad('SLOT=SKU, SLOT=SKU*N or SLOT=none');
  if (sku === 'none' && count === undefined) return good({ key, value: null });
  return good({ key, value: { sku, quantity: count === undefined ? null : Number(count) } });
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
