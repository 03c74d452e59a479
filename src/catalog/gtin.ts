/**
 * The check digit of a GTIN body (GS1 General Specifications: weights 3, 1, 3, 1 ... from the right of the body;
 * the digit brings the sum to a multiple of ten).
 */
export function gtinCheckDigit(body: string): number {
  let sum = 0;
  for (let i = 0; i < body.length; i++) sum += Number(body[body.length - 1 - i]) * (i % 2 === 0 ? 3 : 1);
  return (10 - (sum % 10)) % 10;
}

/** A text that has the length of a GTIN: 8, 12, 13 or 14 digits. */
export const isGtinLike = (text: string): boolean => /^(?:[0-9]{8}|[0-9]{12,14})$/.test(text);

/** A GTIN of any length as 14 digits, zeros in front, so that the same trade item has the same number (GS1 General Specifications). */
export const gtin14 = (gtin: string): string => gtin.padStart(14, '0');
