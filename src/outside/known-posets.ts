import type { Precedence } from './read-precedence.ts';

/** Precedence graphs that mathematics knows by name, in the families that the outside data lists: `key` of the listing, and how far along it. */
const FAMILIES: readonly (readonly [pattern: RegExp, make: (sizes: readonly number[], index: number) => Precedence])[] =
  [
    [/^boolean_lattice_B(\d+)_to_B\d+$/, ([from = 1], index) => lattice(from + index)],
    [/^zigzag_n(\d+)_to_n\d+$/, ([from = 1], index) => zigzag(from + index)],
    [/^grid_(\d+)xn_n(\d+)_to_n\d+$/, ([rows = 1, from = 1], index) => grid(rows, from + index)],
    [/^grid_(\d+)x(\d+)$/, ([rows = 1, columns = 1]) => grid(rows, columns)],
    [/^three_chains_of_(\d+)$/, ([length = 1]) => chains(3, length)],
  ];

/** The graph that a line of the listing speaks of; null where its name is not known here. */
export function knownPoset(key: string, index: number): Precedence | null {
  for (const [pattern, make] of FAMILIES) {
    const found = pattern.exec(key);
    if (found) return make(found.slice(1).map(Number), index);
  }
  return null;
}

/** Subsets of `bits` things, a set before those that hold one thing more. */
export function lattice(bits: number): Precedence {
  const sets = upTo(1 << bits);
  return graph(
    sets.length,
    sets.flatMap((set) =>
      upTo(bits).flatMap((bit) => ((set & (1 << bit)) === 0 ? [[set, set | (1 << bit)] as const] : [])),
    ),
  );
}

/** A fence: 1 < 2 > 3 < 4 ... */
export const zigzag = (size: number): Precedence =>
  graph(
    size,
    upTo(size - 1).map((at) => (at % 2 === 0 ? [at, at + 1] : [at + 1, at])),
  );

/** A grid in which each cell comes after those above and to the left. */
export const grid = (rows: number, columns: number): Precedence =>
  graph(
    rows * columns,
    upTo(rows * columns).flatMap((at) => [
      ...(at % columns < columns - 1 ? [[at, at + 1] as const] : []),
      ...(at + columns < rows * columns ? [[at, at + columns] as const] : []),
    ]),
  );

/** So many chains of one length, with nothing between them. */
export const chains = (count: number, length: number): Precedence =>
  graph(
    count * length,
    upTo(count * length).flatMap((at) => (at % length < length - 1 ? [[at, at + 1] as const] : [])),
  );

const upTo = (most: number): number[] => Array.from({ length: Math.max(0, most) }, (_one, at) => at);

const graph = (size: number, pairs: readonly (readonly [number, number])[]): Precedence => ({
  tasks: upTo(size).map((at) => String(at + 1)),
  pairs: pairs.map(([before, after]) => [String(before + 1), String(after + 1)]),
});
