import { describe, expect, it } from 'vitest';
import type { Domains } from '../../src/solve/domains.ts';
import { type Problem, paretoFront, StepBudget, tableOf, type Vector } from '../../src/solve/index.ts';

// The tiny example of docs/solver.md, "A step table": what stands in its table is what is asserted here.

const SPRINGS = ['S20', 'S10', 'S10L'];
const DAMPERS = ['D130', 'D150'];
const sizes = [SPRINGS.length, DAMPERS.length];
const problem: Problem = {
  sizes,
  tables: [
    tableOf(sizes, [0], 0, ([spring = 0]) => spring > 0),
    tableOf(sizes, [0, 1], 1, ([spring, damper]) => spring !== 2 || damper === 1),
  ],
  sums: [],
  members: 2,
};
const SPRING_COST: readonly Vector[] = [
  [0, 0, 0],
  [40, 20, 4],
  [55, 20, 0],
];
const DAMPER_COST: readonly Vector[] = [
  [0, 0, 0],
  [80, 8, 0],
];
/** Money and minutes add up; one waits for the last thing to come. */
const together = (a: Vector, b: Vector): Vector => [
  (a[0] ?? 0) + (b[0] ?? 0),
  (a[1] ?? 0) + (b[1] ?? 0),
  Math.max(a[2] ?? 0, b[2] ?? 0),
];
const least = (costs: readonly Vector[], domains: Domains, variable: number): Vector => {
  const left = costs.filter((_cost, value) => domains.has(variable, value));
  return [0, 1, 2].map((part) => Math.min(...left.map((cost) => cost[part] ?? 0)));
};

describe('docs/solver.md: the step table', () => {
  it('steps: nodes, floors, leaves and the count of steps are those of the table', () => {
    const seen: string[] = [];
    const left = (domains: Domains, names: readonly string[], variable: number): string =>
      names.filter((_name, value) => domains.has(variable, value)).join(' ');
    const budget = new StepBudget(100);
    const { entries, end } = paretoFront(
      problem,
      {
        floor: (domains) => {
          const floor = together(least(SPRING_COST, domains, 0), least(DAMPER_COST, domains, 1));
          seen.push(
            `${budget.used} | ${left(domains, SPRINGS, 0)} | ${left(domains, DAMPERS, 1)} | ${floor.join(', ')}`,
          );
          return floor;
        },
        vectors: ([spring = 0, damper = 0]) => {
          const vector = together(SPRING_COST[spring] ?? [], DAMPER_COST[damper] ?? []);
          seen.push(`leaf ${vector.join(', ')}`);
          return [vector];
        },
      },
      { order: [0, 1], counted: [0, 1] },
      budget,
    );
    expect(seen).toEqual([
      // first pass: the vectors
      '0 | S10 S10L | D130 D150 | 40, 20, 0',
      '1 | S10 | D130 D150 | 40, 20, 4',
      '2 | S10 | D130 | 40, 20, 4',
      'leaf 40, 20, 4',
      '3 | S10 | D150 | 120, 28, 4',
      '4 | S10L | D150 | 135, 28, 0',
      'leaf 135, 28, 0',
      // second pass, 40, 20, 4 with at most one change
      '4 | S10 S10L | D130 D150 | 40, 20, 0',
      '5 | S10 | D130 D150 | 40, 20, 4',
      '6 | S10 | D130 | 40, 20, 4',
      'leaf 40, 20, 4',
      // second pass, 135, 28, 0 with at most two
      '6 | S10 S10L | D130 D150 | 40, 20, 0',
      '7 | S10 | D130 D150 | 40, 20, 4',
      '8 | S10L | D150 | 135, 28, 0',
      'leaf 135, 28, 0',
    ]);
    expect([end, budget.used]).toEqual(['whole', 8]);
    expect(entries).toEqual([
      { vector: [40, 20, 4], values: [1, 0] },
      { vector: [135, 28, 0], values: [2, 1] },
    ]);
  });
});
