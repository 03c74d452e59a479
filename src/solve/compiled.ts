import type { Problem, Sum, Table } from './problem.ts';

/** A table with the step in its index that each variable of its scope makes. */
export interface CompiledTable extends Table {
  readonly strides: Int32Array;
}
export type CompiledSum = Sum;

/** What every search of a problem goes by, made once: constraints are the tables, then the sums, by number. */
export interface Compiled {
  readonly tables: readonly CompiledTable[];
  readonly sums: readonly CompiledSum[];
  /** For each variable the constraints that speak of it. */
  readonly watching: readonly Int32Array[];
}

const made = new WeakMap<Problem, Compiled>();

/** The compiled form of a problem, remembered with it: a problem never changes. */
export function compiled(problem: Problem): Compiled {
  const known = made.get(problem);
  if (known) return known;
  const tables = problem.tables.map(
    (table): CompiledTable => ({ ...table, strides: stridesOf(problem.sizes, table.scope) }),
  );
  const watching: number[][] = problem.sizes.map(() => []);
  [...tables, ...problem.sums].forEach(({ scope }, at) => {
    for (const variable of scope) watching[variable]?.push(at);
  });
  const found = { tables, sums: problem.sums, watching: watching.map((touched) => Int32Array.from(touched)) };
  made.set(problem, found);
  return found;
}

function stridesOf(sizes: readonly number[], scope: readonly number[]): Int32Array {
  const strides = new Int32Array(scope.length).fill(1);
  for (let at = scope.length - 2; at >= 0; at--)
    strides[at] = (strides[at + 1] ?? 1) * (sizes[scope[at + 1] ?? 0] ?? 1);
  return strides;
}
