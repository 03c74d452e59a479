import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { Domains } from '../../src/solve/domains.ts';
import { type Problem, tableOf } from '../../src/solve/index.ts';
import { Propagator } from '../../src/solve/propagate.ts';
import { hold } from '../laws/hold.ts';
import { allSolutions, randomProblem } from './random-problem.ts';

const alive = (domains: Domains): number[][] =>
  domains.alive.map((values) => [...values].flatMap((possible, value) => (possible === 1 ? [value] : [])));

/** What is left of each variable after filtering; null where it proved that nothing is. */
function left(problem: Problem): number[][] | null {
  const domains = new Domains(problem.sizes);
  return new Propagator(problem, () => true).start(domains) ? alive(domains) : null;
}

const none = { tables: [], sums: [], members: 0 };
const { POSITIVE_INFINITY: MOST, NEGATIVE_INFINITY: LEAST } = Number;

describe('propagation', () => {
  it('tables: a table with one open variable is filtered exactly', () => {
    expect(left({ ...none, sizes: [4], tables: [tableOf([4], [0], null, ([value = 0]) => value % 2 === 1)] })).toEqual([
      [1, 3],
    ]);
  });

  it('tables: of two open variables the values with a partner stay', () => {
    const sizes = [3, 3];
    const less = tableOf(sizes, [0, 1], null, ([a = 0, b = 0]) => a < b);
    expect(left({ ...none, sizes, tables: [less] })).toEqual([
      [0, 1],
      [1, 2],
    ]);
  });

  it('tables: the order of the scope, not of the variables, says what the index means', () => {
    const sizes = [2, 4];
    const table = tableOf(sizes, [1, 0], null, ([b = 0, a = 0]) => b === 3 && a === 1);
    expect(left({ ...none, sizes, tables: [table] })).toEqual([[1], [3]]);
  });

  it('sums: what would burst a bound goes, and both bounds may be open', () => {
    const weights = [
      [0, 2, 5],
      [1, 4],
    ];
    const sum = (least: number, greatest: number): number[][] | null =>
      left({ ...none, sizes: [3, 2], sums: [{ scope: [0, 1], weights, least, greatest, member: null }] });
    expect(sum(LEAST, 5)).toEqual([
      [0, 1],
      [0, 1],
    ]);
    expect(sum(8, MOST)).toEqual([[2], [1]]);
    expect(sum(LEAST, MOST)).toEqual([
      [0, 1, 2],
      [0, 1],
    ]);
    expect(sum(10, MOST)).toBeNull();
  });

  it('over nothing: a table or a sum without variables stands or not by itself', () => {
    const table = (allowed: number): Problem => ({
      ...none,
      sizes: [],
      tables: [{ scope: [], allowed: Uint8Array.of(allowed), member: null }],
    });
    expect([left(table(1)), left(table(0))]).toEqual([[], null]);
    const sum = (least: number, greatest: number): Problem => ({
      ...none,
      sizes: [2],
      sums: [{ scope: [], weights: [], least, greatest, member: null }],
    });
    expect([sum(0, 0), sum(1, MOST), sum(LEAST, -1)].map(left)).toEqual([[[0, 1]], null, null]);
  });

  it('members: what belongs to a member that is not held says nothing', () => {
    const sizes = [2];
    const never = tableOf(sizes, [0], 0, () => false);
    const propagator = new Propagator({ ...none, sizes, tables: [never], members: 1 }, () => false);
    const domains = new Domains(sizes);
    expect([propagator.start(domains), alive(domains)]).toEqual([true, [[0, 1]]]);
  });

  it('domains: undo gives back everything taken away since the mark, and nothing more', () => {
    const domains = new Domains([3, 2]);
    domains.remove(0, 1);
    const mark = domains.mark();
    expect([domains.remove(0, 2), domains.remove(0, 2), domains.remove(1, 0)]).toEqual([true, false, true]);
    expect([alive(domains), [...domains.count], domains.isFixed(1)]).toEqual([[[0], [1]], [1, 1], true]);
    domains.undo(mark);
    expect([alive(domains), [...domains.count], domains.first(0)]).toEqual([
      [
        [0, 2],
        [0, 1],
      ],
      [2, 2],
      0,
    ]);
  });

  it('law: no value of a solution is taken away, before or after a decision', () => {
    const cases = fc.tuple(randomProblem({ variables: 5, values: 4, members: 0 }), fc.nat(), fc.nat());
    hold('propagation is sound', 1500, cases, ([problem, variableDie, valueDie]) => {
      const solutions = allSolutions(problem);
      const propagator = new Propagator(problem, () => true);
      const domains = new Domains(problem.sizes);
      const sound = propagator.start(domains);
      if (!sound) expect(solutions).toEqual([]);
      // a variable that has lost its last value is always noticed
      else expect(problem.sizes.filter((size, at) => size > 0 && (domains.count[at] ?? 0) === 0)).toEqual([]);
      for (const solution of solutions)
        for (const [variable, value] of solution.entries()) expect(domains.has(variable, value)).toBe(true);
      const variable = variableDie % problem.sizes.length;
      const possible = alive(domains)[variable] ?? [];
      const value = possible[valueDie % Math.max(1, possible.length)];
      if (!sound || value === undefined) return;
      for (const other of possible) if (other !== value) domains.remove(variable, other);
      const decided = solutions.filter((solution) => solution[variable] === value);
      const goesOn = propagator.changed(domains, variable);
      if (!goesOn) expect(decided).toEqual([]);
      else expect(problem.sizes.filter((size, at) => size > 0 && (domains.count[at] ?? 0) === 0)).toEqual([]);
      for (const solution of decided)
        for (const [one, held] of solution.entries()) expect(domains.has(one, held)).toBe(true);
    });
  });
});
