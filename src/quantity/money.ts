import { type Minor, minor } from './brands.ts';

/** Digits behind the point of a currency (ISO 4217): EUR 2, JPY 0. Null for a code that is not a currency. */
export function minorDigits(currency: string): number | null {
  if (!/^[A-Z]{3}$/.test(currency) || !currencies().has(currency)) return null;
  return new Intl.NumberFormat('en', { style: 'currency', currency }).resolvedOptions().maximumFractionDigits ?? null;
}

let known: ReadonlySet<string> | null = null;
const currencies = (): ReadonlySet<string> => {
  known ??= new Set(Intl.supportedValuesOf('currency'));
  return known;
};

/** Reads a decimal price ("12.50", 12.5) exactly into minor units; null if it is no price or has too many digits. */
export function parseMoney(text: string | number, digits: number): Minor | null {
  const match = /^([0-9]{1,12})(?:\.([0-9]+))?$/.exec(String(text));
  if (!match?.[1]) return null;
  const fraction = match[2] ?? '';
  if (fraction.length > digits && /[1-9]/.test(fraction.slice(digits))) return null;
  return minor(Number(match[1] + fraction.slice(0, digits).padEnd(digits, '0')));
}

/** Minor units as a decimal string: 1250 with 2 digits is "12.50". */
export function formatMoney(amount: Minor, digits: number): string {
  const text = String(Math.abs(amount)).padStart(digits + 1, '0');
  const sign = amount < 0 ? '-' : '';
  return digits === 0 ? `${sign}${text}` : `${sign}${text.slice(0, -digits)}.${text.slice(-digits)}`;
}

/** a*b/c for whole numbers of any size, rounded half up (towards plus infinity). c > 0. */
export function multiplyDivide(a: number, b: number, c: number): number {
  const [x, y, z] = [BigInt(a), BigInt(b), BigInt(c)];
  const doubled = 2n * x * y + z;
  const quotient = doubled / (2n * z);
  return Number(doubled < 0n && doubled % (2n * z) !== 0n ? quotient - 1n : quotient);
}
