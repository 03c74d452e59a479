import { countSolutions, Search, StepBudget, unusedValues } from '../solve/index.ts';
import { exactNumber } from './exact-number.ts';
import { OutsideStopped } from './fault.ts';
import { type Configuration, readTables, type Value } from './read-tables.ts';

/** How many solutions there are (a string of digits above 2^53), the values that are in none, and one solution: the first that the search comes to; null without any. */
export interface TablesAnswer {
  readonly solutions: number | string;
  readonly neverUsed: readonly string[];
  readonly first: Readonly<Record<string, Value>> | null;
}

/** Steps after which nothing is claimed: for the count, and for all searches for values together. */
const MOST_STEPS = 5_000_000;

export function answerTables(text: string): TablesAnswer {
  const { names, values, problem } = readTables(text);
  const order = orderOf({ names, values, problem });
  const solutions = countSolutions(problem, new StepBudget(MOST_STEPS));
  if (solutions === null) throw new OutsideStopped(`the count was not finished in ${MOST_STEPS} steps`);
  const budget = new StepBudget(MOST_STEPS);
  const unused = unusedValues(problem, order, budget);
  if (unused === null) throw new OutsideStopped(`the look for unused values was not finished in ${MOST_STEPS} steps`);
  let first: Record<string, Value> | null = null;
  new Search(problem, () => true, order).run(budget, {
    leaf: (found) => {
      first = Object.fromEntries(names.map((name, at) => [name, values[at]?.[found[at] ?? 0] ?? '']));
      return false;
    },
  });
  if (first === null && solutions > 0n) throw new OutsideStopped(`no solution was reached in ${MOST_STEPS} steps`);
  const neverUsed = unused.map(([variable, value]) => `${names[variable]}=${values[variable]?.[value]}`);
  return { solutions: exactNumber(solutions), neverUsed, first };
}

/** Variables of the widest tables first: what hangs together most is decided first. */
function orderOf({ problem }: Configuration): readonly number[] {
  const widest = [...problem.tables].sort(
    (a, b) => b.scope.length - a.scope.length || b.allowed.length - a.allowed.length,
  );
  return [...new Set(widest.flatMap(({ scope }) => scope))];
}
