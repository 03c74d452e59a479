import { describe, expect, it } from 'vitest';
import { countSolutions, type Problem, StepBudget, type Sum, tableOf } from '../../src/solve/index.ts';
import { hold } from '../laws/hold.ts';
import { allSolutions, randomProblem } from './random-problem.ts';

function counted(problem: Problem, limit = 1_000_000): readonly [number: bigint | null, steps: number] {
  const budget = new StepBudget(limit);
  return [countSolutions(problem, budget), budget.used];
}
const numberOf = (problem: Problem): bigint | null => counted(problem)[0];
const times = <T>(count: number, of: (at: number) => T): T[] => Array.from({ length: count }, (_one, at) => of(at));

/** Variables of equally many values that differ along edges: the colourings of a graph. */
function colourings(points: number, colours: number, edges: readonly (readonly [number, number])[]): Problem {
  const sizes = times(points, () => colours);
  const tables = edges.map((edge) => tableOf(sizes, edge, null, ([a, b]) => a !== b));
  return { sizes, tables, sums: [], members: 0 };
}
const path = (points: number): [number, number][] => times(points - 1, (at) => [at, at + 1]);
const circle = (points: number): [number, number][] => [...path(points), [points - 1, 0]];

/** Squares of `size` by `size` with every number once in each row and column. */
const latin = (size: number): Problem => {
  const line = (cell: (at: number) => number): [number, number][] =>
    times(size, (at) => times(at, (before): [number, number] => [cell(before), cell(at)])).flat();
  const lines = times(size, (one) => [...line((at) => one * size + at), ...line((at) => at * size + one)]).flat();
  return colourings(size * size, size, lines);
};

/** Numbers 1 to `count`, each taken or not, that come to no less and no more. */
const taken = (count: number, least: number, greatest: number): Problem => {
  const sum: Sum = {
    scope: times(count, (at) => at),
    weights: times(count, (at) => [0, at + 1]),
    least,
    greatest,
    member: null,
  };
  return { sizes: times(count, () => 2), tables: [], sums: [sum], members: 0 };
};

describe('number of solutions', () => {
  it('law: it is how many the enumerator lists, with tables and sums', () => {
    hold('counts equal brute force', 1500, randomProblem({ variables: 6, values: 4, members: 3 }), (problem) => {
      expect(numberOf(problem)).toBe(BigInt(allSolutions(problem).length));
    });
  });

  it('nothing tied: the product of the sizes, exact beyond what a double holds', () => {
    const free = (sizes: readonly number[]): Problem => ({ sizes, tables: [], sums: [], members: 0 });
    expect(counted(free([]))).toEqual([1n, 0]);
    expect(counted(free([2, 3, 5, 1]))).toEqual([30n, 0]);
    expect(counted(free([2, 0, 5]))).toEqual([0n, 0]);
    expect(counted(free(times(41, () => 3)))).toEqual([36472996377170786403n, 0]); // 3^41
  });

  it('colourings: the chromatic polynomials of a path and a circle', () => {
    // k (k - 1)^(n - 1) and (k - 1)^n + (-1)^n (k - 1): any textbook on graphs
    expect(numberOf(colourings(40, 4, path(40)))).toBe(4n * 3n ** 39n);
    expect(numberOf(colourings(15, 4, circle(15)))).toBe(3n ** 15n - 3n);
    expect(numberOf(colourings(16, 4, circle(16)))).toBe(3n ** 16n + 3n);
    expect(numberOf(colourings(15, 2, circle(15)))).toBe(0n);
  });

  it('groups: what nothing ties together multiplies', () => {
    const [three, four] = [circle(3), circle(4).map(([a, b]): [number, number] => [a + 3, b + 3])];
    // (2^3 - 2) (2^4 + 2), and one point by itself
    expect(numberOf(colourings(8, 3, [...three, ...four]))).toBe(6n * 18n * 3n);
    // a triangle takes three colours: one step, and the rest is not looked at
    expect(counted(colourings(8, 2, [...three, ...four]))).toEqual([0n, 1]);
  });

  it('squares: 12 Latin squares of three, 576 of four', () => {
    // https://oeis.org/A002860
    expect([latin(3), latin(4)].map(numberOf)).toEqual([12n, 576n]);
  });

  it('sums: how many choices among 1 to 10 come to 27, to 3, to no more than 3, to 52 at least', () => {
    // 40 is the greatest coefficient of (1 + x)(1 + x^2) ... (1 + x^10): https://oeis.org/A025591
    expect(numberOf(taken(10, 27, 27))).toBe(40n);
    // 3 and 1 + 2; nothing, 1, 2 and these; of 55 in all as many leave out no more than 3
    expect(numberOf(taken(10, 3, 3))).toBe(2n);
    expect(numberOf(taken(10, Number.NEGATIVE_INFINITY, 3))).toBe(5n);
    expect(numberOf(taken(10, 52, Number.POSITIVE_INFINITY))).toBe(5n);
  });

  it('wide tables: those too wide to be written out count the same', () => {
    const sizes = times(12, () => 2);
    const even = tableOf(sizes, [...sizes.keys()], null, (values) => values.reduce((a, b) => a + b) % 2 === 0);
    expect(numberOf({ sizes, tables: [even], sums: [], members: 0 })).toBe(2n ** 11n);
    const [sums] = taken(12, 3, 3).sums;
    // even many of 1 to 12 that come to 3: 1 + 2
    expect(numberOf({ sizes, tables: [even], sums: sums ? [sums] : [], members: 0 })).toBe(1n);
  });

  it('relations: what the same two variables still tell each other is part of what is remembered', () => {
    // by the first: equal, unequal, no more, no less; beside it a second of 0 never goes with a third of 1; two more are other than the first, which so ties most
    const RELATIONS = [
      (a: number, b: number) => a === b,
      (a: number, b: number) => a !== b,
      (a: number, b: number) => a <= b,
      (a: number, b: number) => a >= b,
    ];
    const sizes = [4, 3, 3, 4, 4];
    const tables = [
      tableOf(sizes, [0, 1, 2], null, ([which = 0, a = 0, b = 0]) => RELATIONS[which]?.(a, b) ?? false),
      tableOf(sizes, [1, 2], null, ([a, b]) => a !== 0 || b !== 1),
      tableOf(sizes, [0, 3], null, ([which, other]) => which !== other),
      tableOf(sizes, [0, 4], null, ([which, other]) => which !== other),
    ];
    expect(numberOf({ sizes, tables, sums: [], members: 0 })).toBe((3n + 5n + 5n + 6n) * 9n);
  });

  it('effort: what is left of a group is counted once, the variable that ties most goes first', () => {
    const steps = (problem: Problem): number => counted(problem)[1];
    // a star is settled by its middle, whatever its number
    const star = times(12, (at): [number, number] => [at, 12]);
    expect([colourings(40, 4, path(40)), colourings(15, 4, circle(15)), colourings(13, 3, star)].map(steps)).toEqual([
      77, 101, 1,
    ]);
    expect([latin(3), latin(4), taken(10, 27, 27), taken(10, 52, Number.POSITIVE_INFINITY)].map(steps)).toEqual([
      10, 587, 66, 2,
    ]);
  });

  it('members: whoever they are, all hold', () => {
    const sizes = [3, 3];
    const tables = [0, 1].map((member) => tableOf(sizes, [member], member, ([value]) => value !== 0));
    expect(numberOf({ sizes, tables, sums: [], members: 2 })).toBe(4n);
  });

  it('law: with too few steps it says nothing, with enough the same', () => {
    hold('a stopped count is no number', 300, randomProblem({ variables: 5, values: 3, members: 0 }), (problem) => {
      const [number, steps] = counted(problem);
      for (let limit = 0; limit < Math.min(steps, 20); limit++) expect(counted(problem, limit)).toEqual([null, limit]);
      expect(counted(problem, steps)).toEqual([number, steps]);
    });
  });
});
