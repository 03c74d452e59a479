/** A whole number as JSON can hold it exactly: above 2^53 as a string of digits. */
export const exactNumber = (value: bigint): number | string =>
  value <= BigInt(Number.MAX_SAFE_INTEGER) ? Number(value) : value.toString();
