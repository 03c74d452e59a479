/** Whole held units (µm, µL, mg, minutes) of a quantity as the generator writes it: a number, a space, a unit. */
const UNITS: Readonly<Record<string, number>> = { mm: 1000, in: 25_400, mL: 1000, L: 1_000_000, g: 1000, min: 1 };

export function held(written: string | number | undefined): number | undefined {
  if (written === undefined || typeof written === 'number') return written;
  const [number = '', unit = ''] = written.split(' ');
  const factor = UNITS[unit];
  if (factor === undefined || Number.isNaN(Number(number))) throw new Error(`not a quantity: ${written}`);
  return Math.round(Number(number) * factor);
}

/** A quantity that has to be there. */
export function given(written: string | number | undefined): number {
  const read = held(written);
  if (read === undefined) throw new Error('a quantity is missing');
  return read;
}

/** A decimal price in hundredths; null for none. */
export const cents = (price: string | number | undefined): number | null =>
  price === undefined || price === '' ? null : Math.round(Number(price) * 100);

export function listOf<T extends string | number>(one: T | readonly T[] | undefined): readonly T[] | undefined {
  return typeof one === 'string' || typeof one === 'number' ? [one] : one;
}
