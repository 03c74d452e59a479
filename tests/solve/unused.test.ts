import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Problem, StepBudget, unusedValues } from '../../src/solve/index.ts';
import { hold } from '../laws/hold.ts';
import { allSolutions, randomProblem } from './random-problem.ts';

/** Every value of every variable that no solution of the enumerator has. */
function byHand(problem: Problem): (readonly [number, number])[] {
  const solutions = allSolutions(problem);
  return problem.sizes.flatMap((size, variable) =>
    Array.from({ length: size }, (_one, value) => [variable, value] as const).filter(
      ([, value]) => !solutions.some((solution) => solution[variable] === value),
    ),
  );
}

describe('unused values', () => {
  const problems = randomProblem({ variables: 5, values: 4, members: 3 });
  const cases = problems.chain((problem) =>
    fc.tuple(fc.constant(problem), fc.shuffledSubarray([...problem.sizes.keys()])),
  );

  it('law: exactly the values that no solution of the enumerator has, in whatever order it decides', () => {
    hold('unused values equal brute force', 800, cases, ([problem, order]) => {
      expect(unusedValues(problem, order, new StepBudget(1_000_000))).toEqual(byHand(problem));
    });
  });

  it('law: with too few steps it says nothing', () => {
    hold('a stopped look for unused values claims none', 200, cases, ([problem, order]) => {
      const budget = new StepBudget(1_000_000);
      const whole = unusedValues(problem, order, budget);
      for (let limit = 0; limit < Math.min(budget.used, 20); limit++)
        expect(unusedValues(problem, order, new StepBudget(limit))).toBeNull();
      expect(unusedValues(problem, order, new StepBudget(budget.used))).toEqual(whole);
    });
  });

  it('effort: a solution that was found answers for all of its values', () => {
    // three variables of four, nothing tied: a solution is 2 steps beside the value that is asked for. The first answers for three values; after it each value of the
    // first variable is asked for, and of the others each but 0: 4 + 3 + 3 questions
    const budget = new StepBudget(1000);
    expect(unusedValues({ sizes: [4, 4, 4], tables: [], sums: [], members: 0 }, [], budget)).toEqual([]);
    expect(budget.used).toBe(20);
  });
});
