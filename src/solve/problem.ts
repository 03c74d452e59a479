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

/** Builds a table by asking a predicate for every tuple of the scope. */
export function tableOf(
  sizes: readonly number[],
  scope: readonly number[],
  member: number | null,
  holds: (values: readonly number[]) => boolean,
): Table {
  const widths = scope.map((variable) => sizes[variable] ?? 0);
  const allowed = new Uint8Array(widths.reduce((product, width) => product * width, 1));
  const values = widths.map(() => 0);
  for (let index = 0; index < allowed.length; index++) {
    let rest = index;
    for (let at = widths.length - 1; at >= 0; at--) {
      const width = widths[at] ?? 1;
      values[at] = rest % width;
      rest = Math.floor(rest / width);
    }
    allowed[index] = holds(values) ? 1 : 0;
  }
  return { scope, allowed, member };
}
