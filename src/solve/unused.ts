import type { StepBudget } from './budget.ts';
import { type Problem, tableOf } from './problem.ts';
import { Search } from './search.ts';

/**
 * The values that stand in no solution, as (variable, value). Each solution that is found answers for all its values; a value that none has had is searched for by
 * itself. Null where the steps ran out.
 */
export function unusedValues(
  problem: Problem,
  order: readonly number[],
  budget: StepBudget,
): readonly (readonly [variable: number, value: number])[] | null {
  const { sizes, tables } = problem;
  const used = sizes.map((size) => new Uint8Array(size));
  const unused: [number, number][] = [];
  for (const [variable, size] of sizes.entries()) {
    for (let value = 0; value < size; value++) {
      if (used[variable]?.[value] === 1) continue;
      const fixed = tableOf(sizes, [variable], null, ([one]) => one === value);
      const end = new Search({ ...problem, tables: [...tables, fixed] }, () => true, order).run(budget, {
        leaf: (values) => {
          values.forEach((one, at) => {
            const seen = used[at];
            if (seen) seen[one] = 1;
          });
          return false;
        },
      });
      if (end === 'stopped') return null;
      if (end === 'whole') unused.push([variable, value]);
    }
  }
  return unused;
}
