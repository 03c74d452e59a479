import { formatMoney, minor, parseMoney } from '../quantity/index.ts';
import { parseQuantity } from '../quantity/parse.ts';
import { whole } from './read.ts';

export type Unit = 'piece' | 'mL' | 'g';

export const isUnit = (value: unknown): value is Unit => value === 'piece' || value === 'mL' || value === 'g';

const quantity = (
  dimension: 'length' | 'volume' | 'mass' | 'time' | 'torque' | 'rate',
  value: unknown,
): number | null => {
  if (typeof value !== 'string') return null;
  const parsed = parseQuantity(dimension, value);
  return parsed.ok ? parsed.value : null;
};

/** "150 mm" as whole micrometres. */
export const length = (value: unknown): number | null => quantity('length', value);
/** "310 g" as whole milligrams. */
export const mass = (value: unknown): number | null => quantity('mass', value);
/** "12 min" as whole minutes. */
export const minutes = (value: unknown): number | null => quantity('time', value);
/** "7 N·m" as whole millinewton metres. */
export const torque = (value: unknown): number | null => quantity('torque', value);

/** "9.5 N/mm" as whole newton per metre. */
export const rate = (value: unknown): number | null => quantity('rate', value);

/** An amount of the catalogue as whole microlitres, milligrams or pieces. */
export function amount(value: unknown, unit: Unit): number | null {
  if (unit === 'piece') return whole(value);
  return quantity(unit === 'mL' ? 'volume' : 'mass', value);
}

/** A number as an answer shows it, in the same whole units. */
export const shownAmount = (value: number, unit: Unit): number => (unit === 'piece' ? value : Math.round(value * 1000));

/** A price of the catalogue, the stock file or the shop file in whole minor units. */
export function price(value: unknown, digits: number): number | null {
  return typeof value === 'string' || typeof value === 'number' ? parseMoney(value, digits) : null;
}

/** True where a decimal string of an answer is exactly this amount, with the digits the currency has. */
export function isMoney(shown: unknown, amountInMinor: number, digits: number): boolean {
  if (typeof shown !== 'string') return false;
  const decimals = shown.includes('.') ? shown.length - shown.indexOf('.') - 1 : 0;
  return decimals === digits && parseMoney(shown, digits) === amountInMinor;
}

/** An amount of money for the detail of a finding. */
export const inWords = (amountInMinor: number, digits: number): string =>
  Number.isSafeInteger(amountInMinor) ? formatMoney(minor(amountInMinor), digits) : String(amountInMinor);
