/** Numbers as the language of the page writes them. */
const TAG = 'en';

const whole = new Intl.NumberFormat(TAG, { maximumFractionDigits: 0 });
const plain = new Intl.NumberFormat(TAG, { maximumFractionDigits: 2 });
const KILOGRAM_IN_POUNDS = 2.204_622_6;
const NEWTON_METRE_IN_INCH_POUNDS = 8.850_745_8;
const NEWTON_A_MILLIMETRE_IN_POUNDS_AN_INCH = 5.710_147_2;
const NARROW = '\u00A0';

export const count = (value: number): string => whole.format(value);
export const decimal = (value: number): string => plain.format(value);

/** A number as people type it, with a point or a comma. */
export const decimalOf = (typed: string): number => Number(typed.replace(',', '.'));

const units = new Map<string, Intl.NumberFormat>();
/** A number with its unit, by the unit's name in Intl. */
export function unit(
  value: number,
  name: 'millimeter' | 'minute' | 'gram' | 'milliliter' | 'kilogram' | 'degree',
): string {
  const known = units.get(name) ?? new Intl.NumberFormat(TAG, { style: 'unit', unit: name, maximumFractionDigits: 2 });
  units.set(name, known);
  return known.format(value).replaceAll(' ', NARROW);
}

/** "a, b, or c" */
export const either = new Intl.ListFormat(TAG, { type: 'disjunction' });

const currencies = new Map<string, Intl.NumberFormat>();
/** An amount of money; the service gives it as a decimal string. */
export function money(value: string, currency: string): string {
  const known = currencies.get(currency) ?? new Intl.NumberFormat(TAG, { style: 'currency', currency });
  currencies.set(currency, known);
  return known.format(Number(value));
}

/** Pieces, mL or g of a bill. */
export function amount(value: number, of: 'piece' | 'mL' | 'g'): string {
  switch (of) {
    case 'piece':
      return `${plain.format(value)}${NARROW}×`;
    case 'mL':
      return unit(value, 'milliliter');
    case 'g':
      return unit(value, 'gram');
  }
}

/** A mass of a rider: pounds stand beside it, as on pumps and charts. */
export const kilograms = (value: number): string =>
  `${unit(value, 'kilogram')} (${whole.format(value * KILOGRAM_IN_POUNDS)}${NARROW}lb)`;

/** A rate of a coil, with pounds an inch beside it, as coils are marked. */
export const newtonsAMillimetre = (value: number): string =>
  `${plain.format(value)}${NARROW}N/mm (${whole.format(value * NEWTON_A_MILLIMETRE_IN_POUNDS_AN_INCH)}${NARROW}lb/in)`;

/** A torque as the catalogue writes it, such as "7 N·m", with inch-pounds beside it; what is no such number stays as it is. */
export function newtonMetres(torque: string): string {
  const found = /^([0-9]+(?:\.[0-9]+)?) N·m$/.exec(torque);
  if (!found) return torque;
  const value = Number(found[1]);
  return `${plain.format(value)}${NARROW}N·m (${whole.format(value * NEWTON_METRE_IN_INCH_POUNDS)}${NARROW}in·lb)`;
}
