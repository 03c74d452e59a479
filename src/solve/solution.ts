import type { Problem } from './problem.ts';

/** True where a whole assignment meets every table and every sum, whoever the members are. No search: one look at each. */
export const isSolution = ({ sizes, tables, sums }: Problem, values: readonly number[]): boolean =>
  tables.every(({ scope, allowed }) => {
    const index = scope.reduce((sum, variable) => sum * (sizes[variable] ?? 1) + (values[variable] ?? 0), 0);
    return allowed[index] === 1;
  }) &&
  sums.every(({ scope, weights, least, greatest }) => {
    const sum = scope.reduce((total, variable, at) => total + (weights[at]?.[values[variable] ?? 0] ?? 0), 0);
    return least <= sum && sum <= greatest;
  });
