import type { Problem, SearchEnd, StepBudget, Table } from '../../src/solve/index.ts';

/**
 * Visits every assignment that all tables of the held members allow, in lexicographic order of the variables' values.
 * Depth-first; a table is asked as soon as all of its variables have values. `visit` returns false when it has enough.
 */
export function enumerate(
  problem: Problem,
  holds: (member: number) => boolean,
  budget: StepBudget,
  visit: (values: readonly number[]) => boolean,
): SearchEnd {
  const due = tablesByLastVariable(problem, holds);
  const values = problem.sizes.map(() => 0);
  const descend = (variable: number): SearchEnd => {
    if (variable === problem.sizes.length) return visit(values) ? 'whole' : 'enough';
    const size = problem.sizes[variable] ?? 0;
    for (let value = 0; value < size; value++) {
      if (!budget.take()) return 'stopped';
      values[variable] = value;
      if (!(due[variable] ?? []).every((table) => allows(problem.sizes, table, values))) continue;
      const end = descend(variable + 1);
      if (end !== 'whole') return end;
    }
    return 'whole';
  };
  return descend(0);
}

function tablesByLastVariable(problem: Problem, holds: (member: number) => boolean): Table[][] {
  const due: Table[][] = problem.sizes.map(() => []);
  for (const table of problem.tables) {
    if (table.member !== null && !holds(table.member)) continue;
    due[Math.max(...table.scope)]?.push(table);
  }
  return due;
}

function allows(sizes: readonly number[], table: Table, values: readonly number[]): boolean {
  let index = 0;
  for (const variable of table.scope) index = index * (sizes[variable] ?? 0) + (values[variable] ?? 0);
  return table.allowed[index] === 1;
}
