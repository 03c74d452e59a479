/**
 * A finite problem: variables with domains 0..size-1, tables of what goes together, and linear sums within bounds. It knows nothing of forks.
 * A table or sum belongs to a member (a want, a rule, a fact) so that a refusal can name who cannot stand with whom; null: always holds.
 */
export interface Problem {
  readonly sizes: readonly number[];
  readonly tables: readonly Table[];
  readonly sums: readonly Sum[];
  readonly members: number;
}

/** What a few variables may be together: `allowed[index]` is 1 where the tuple may stand; the index is mixed radix, first variable slowest. */
export interface Table {
  readonly scope: readonly number[];
  readonly allowed: Uint8Array;
  readonly member: number | null;
}

/** least <= sum over the scope of weights[at][value] <= greatest. Weights are whole numbers; the bounds may be infinite. */
export interface Sum {
  readonly scope: readonly number[];
  readonly weights: readonly (readonly number[])[];
  readonly least: number;
  readonly greatest: number;
  readonly member: number | null;
}

/**
 * Builds a table by asking a predicate for every tuple of the scope. Where `only` gives a variable of the scope a value, tuples with another value there
 * stand unasked.
 */
export function tableOf(
  sizes: readonly number[],
  scope: readonly number[],
  member: number | null,
  holds: (values: readonly number[]) => boolean,
  only: readonly (number | null)[] = [],
): Table {
  const widths = scope.map((variable) => sizes[variable] ?? 0);
  const allowed = new Uint8Array(widths.reduce((product, width) => product * width, 1)).fill(1);
  if (allowed.length === 0) return { scope, allowed, member };
  const values = widths.map((_width, at) => only[at] ?? 0);
  for (;;) {
    let index = 0;
    for (let at = 0; at < widths.length; at++) index = index * (widths[at] ?? 1) + (values[at] ?? 0);
    if (!holds(values)) allowed[index] = 0;
    let at = widths.length - 1;
    for (; at >= 0; at--) {
      if (only[at] != null) continue;
      const next = (values[at] ?? 0) + 1;
      if (next < (widths[at] ?? 0)) {
        values[at] = next;
        break;
      }
      values[at] = 0;
    }
    if (at < 0) return { scope, allowed, member };
  }
}
