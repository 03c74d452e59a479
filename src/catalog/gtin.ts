/**
 * The check digit of a GTIN body (GS1 General Specifications: weights 3, 1, 3, 1 ... from the right of the body;
 * the digit brings the sum to a multiple of ten).
 */
export function gtinCheckDigit(body: string): number {
  let sum = 0;
  for (let i = 0; i < body.length; i++) sum += Number(body[body.length - 1 - i]) * (i % 2 === 0 ? 3 : 1);
  return (10 - (sum % 10)) % 10;
}
