import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Domains } from '../../src/solve/domains.ts';
import { type Problem, Search, type SearchEnd, StepBudget, tableOf } from '../../src/solve/index.ts';
import { hold } from '../laws/hold.ts';
import { allSolutions, inOrder, randomProblem } from './random-problem.ts';

interface Run {
  readonly found: readonly (readonly number[])[];
  readonly end: SearchEnd;
  readonly used: number;
}

function run(
  problem: Problem,
  order: readonly number[] = [],
  limit = 1_000_000,
  holds?: (member: number) => boolean,
): Run {
  const found: (readonly number[])[] = [];
  const budget = new StepBudget(limit);
  const end = new Search(problem, holds ?? (() => true), order).run(budget, {
    leaf: (values) => {
      found.push(values);
      return true;
    },
  });
  return { found, end, used: budget.used };
}

const problems = randomProblem({ variables: 5, values: 4, members: 3 });

describe('search', () => {
  it('law: the leaves are exactly the solutions, in lexicographic order', () => {
    hold('search finds what the enumerator finds', 1500, problems, (problem) => {
      expect(run(problem)).toMatchObject({ found: allSolutions(problem), end: 'whole' });
    });
  });

  it('law: with any members held and any order of the variables the same solutions, sorted by that order', () => {
    const cases = fc.tuple(problems, fc.subarray([0, 1, 2]), fc.func(fc.nat()));
    hold('search under members and orders', 800, cases, ([problem, held, dice]) => {
      const holds = (member: number): boolean => held.includes(member);
      const order = problem.sizes.map((_size, variable) => variable).sort((a, b) => dice(a) - dice(b));
      const listed = order.slice(0, dice(99) % (order.length + 1));
      const rest = problem.sizes.map((_size, variable) => variable).filter((variable) => !listed.includes(variable));
      const decided = [...listed, ...rest];
      const keyed = (values: readonly number[]): number[] => decided.map((variable) => values[variable] ?? 0);
      const expected = [...allSolutions(problem, holds)].sort((a, b) => inOrder(keyed(a), keyed(b)));
      expect(run(problem, listed, 1_000_000, holds)).toMatchObject({ found: expected, end: 'whole' });
    });
  });

  it('law: with too few steps it says stopped; it never leaves out solutions and calls that the whole', () => {
    hold('the step limit is never silent', 300, problems, (problem) => {
      const whole = run(problem);
      for (let limit = 0; limit <= Math.min(whole.used + 1, 40); limit++) {
        const short = run(problem, [], limit);
        expect(short.end).toBe(limit < whole.used ? 'stopped' : 'whole');
        expect(short.used).toBe(Math.min(limit, whole.used));
        expect(short.found).toEqual(whole.found.slice(0, short.found.length));
      }
    });
  });

  it('enough: the first leaf that is refused ends the search', () => {
    const problem: Problem = { sizes: [3, 3], tables: [], sums: [], members: 0 };
    const seen: (readonly number[])[] = [];
    const end = new Search(problem, () => true).run(new StepBudget(100), {
      leaf: (values) => {
        seen.push(values);
        return seen.length < 2;
      },
    });
    expect([end, seen]).toEqual([
      'enough',
      [
        [0, 0],
        [0, 1],
      ],
    ]);
  });

  it('cut: what lies below a cut node is not visited, and the search still saw the whole', () => {
    const problem: Problem = { sizes: [2, 2], tables: [], sums: [], members: 0 };
    const seen: (readonly number[])[] = [];
    const end = new Search(problem, () => true).run(new StepBudget(100), {
      cut: (domains) => !domains.has(0, 0),
      leaf: (values) => {
        seen.push(values);
        return true;
      },
    });
    expect([end, seen]).toEqual([
      'whole',
      [
        [0, 0],
        [0, 1],
      ],
    ]);
  });

  it('bounds: no variables is one solution; a variable without values is none', () => {
    const empty = { tables: [], sums: [], members: 0 };
    expect(run({ ...empty, sizes: [] })).toEqual({ found: [[]], end: 'whole', used: 0 });
    expect(run({ ...empty, sizes: [2, 0] }).found).toEqual([]);
  });

  it('ranked: values by what they leave, the variables whose best is worst first, equals in their own order', () => {
    const sizes = [3, 3, 2, 2];
    // the last two are the same, and of the first 2 cannot be had
    const problem: Problem = {
      sizes,
      tables: [tableOf(sizes, [0], null, ([value]) => value !== 2), tableOf(sizes, [2, 3], null, ([a, b]) => a === b)],
      sums: [],
      members: 0,
    };
    const cost: readonly (readonly number[])[] = [
      [5, 4, 0],
      [1, 0, 0],
      [0, 1],
      [3, 0],
    ];
    const least = (domains: Domains): readonly number[] =>
      cost.map((costs, variable) => Math.min(...costs.filter((_cost, value) => domains.has(variable, value))));
    const sumOf = (parts: readonly number[]): number => parts.reduce((sum, part) => sum + part, 0);
    const { order, valuesOf } = new Search(problem, () => true).ranked((domains) => [7, sumOf(least(domains))]);
    // of the first 4, of the second 0, of the last two, which are alike, 1: with 0 for either it would be 3
    expect(sizes.map((_size, variable) => valuesOf(variable))).toEqual([
      [1, 0],
      [1, 2, 0],
      [1, 0],
      [1, 0],
    ]);
    expect(order).toEqual([2, 3, 0, 1]);
    // the first part that differs decides
    const other = new Search(problem, () => true).ranked((domains) => [sumOf(least(domains)), -sumOf(least(domains))]);
    expect([other.order, ...sizes.map((_size, variable) => other.valuesOf(variable))]).toEqual([
      order,
      ...sizes.map((_size, variable) => valuesOf(variable)),
    ]);
    const seen: (readonly number[])[] = [];
    new Search(problem, () => true).run(new StepBudget(100), {
      order,
      valuesOf,
      leaf: (values) => {
        seen.push(values);
        return seen.length < 4;
      },
    });
    expect(seen).toEqual([
      [1, 1, 1, 1],
      [1, 2, 1, 1],
      [1, 0, 1, 1],
      [0, 1, 1, 1],
    ]);
  });

  it('ranked: where nothing can stand there are no values', () => {
    const sizes = [2, 2];
    const problem: Problem = { sizes, tables: [tableOf(sizes, [0], null, () => false)], sums: [], members: 0 };
    const { order, valuesOf } = new Search(problem, () => true).ranked(() => [0]);
    expect([order, valuesOf(0), valuesOf(1)]).toEqual([[0, 1], [], []]);
  });

  it('settled: variables that have one value and no other', () => {
    const problem: Problem = { sizes: [2, 3], tables: [], sums: [], members: 0 };
    const seen: (readonly number[])[] = [];
    const budget = new StepBudget(100);
    new Search(problem, () => true, [], new Map([[1, 2]])).run(budget, {
      leaf: (values) => {
        seen.push(values);
        return true;
      },
    });
    expect([seen, budget.used]).toEqual([
      [
        [0, 2],
        [1, 2],
      ],
      2,
    ]);
  });

  it('searches: one prepared search gives the same again, also after it was stopped', () => {
    const sizes = [3, 3, 3];
    const problem: Problem = {
      sizes,
      tables: [tableOf(sizes, [0, 1, 2], null, (values) => new Set(values).size === 3)],
      sums: [],
      members: 0,
    };
    const search = new Search(problem, () => true);
    const leaves = (limit: number): number => {
      let count = 0;
      search.run(new StepBudget(limit), {
        leaf: () => {
          count++;
          return true;
        },
      });
      return count;
    };
    expect([leaves(1000), leaves(3), leaves(1000)]).toEqual([6, 2, 6]);
  });
});
