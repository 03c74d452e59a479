/** Compares texts by code units: the same in every place and language. */
export const byCodeUnit = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);

/** A sorted copy by code units of a key. */
export const sortedBy = <T>(items: Iterable<T>, key: (item: T) => string): T[] =>
  [...items].sort((a, b) => byCodeUnit(key(a), key(b)));
