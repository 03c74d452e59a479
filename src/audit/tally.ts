/** Adds up numbers by key; what adds up to nothing is left out. */
export function tally(entries: Iterable<readonly [string, number]>): ReadonlyMap<string, number> {
  const sums = new Map<string, number>();
  for (const [key, value] of entries) sums.set(key, (sums.get(key) ?? 0) + value);
  return new Map([...sums].filter(([, value]) => value !== 0));
}
