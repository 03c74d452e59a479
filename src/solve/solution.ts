import type { Problem, Sum, Table } from './problem.ts';

/** True where a whole assignment lies in the domains and meets every table and every sum, whoever the members are. No search: one look at each. */
export const isSolution = ({ sizes, tables, sums }: Problem, values: readonly number[]): boolean =>
  sizes.every((size, variable) => isIn(size, values[variable] ?? 0)) &&
  tables.every((table) => allows(sizes, table, values)) &&
  sums.every((sum) => keeps(sum, values));

/** The members whose tables or sums a whole assignment does not meet. */
export function brokenBy({ sizes, tables, sums }: Problem, values: readonly number[]): ReadonlySet<number> {
  const broken = new Set<number>();
  for (const table of tables) if (table.member !== null && !allows(sizes, table, values)) broken.add(table.member);
  for (const sum of sums) if (sum.member !== null && !keeps(sum, values)) broken.add(sum.member);
  return broken;
}

const isIn = (size: number, value: number): boolean => value >= 0 && value < size;

function allows(sizes: readonly number[], { scope, allowed }: Table, values: readonly number[]): boolean {
  let index = 0;
  for (const variable of scope) index = index * (sizes[variable] ?? 1) + (values[variable] ?? 0);
  return allowed[index] === 1;
}

function keeps({ scope, weights, least, greatest }: Sum, values: readonly number[]): boolean {
  const sum = scope.reduce((total, variable, at) => total + (weights[at]?.[values[variable] ?? 0] ?? 0), 0);
  return least <= sum && sum <= greatest;
}
