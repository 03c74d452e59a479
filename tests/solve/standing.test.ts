import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { isSolution, Standing, StepBudget } from '../../src/solve/index.ts';
import { hold } from '../laws/hold.ts';
import { allSolutions, randomProblem } from './random-problem.ts';

const MEMBERS = [0, 1, 2, 3, 4, 5];
const problems = randomProblem({ variables: 4, values: 3, members: MEMBERS.length });
const choices = fc.array(fc.subarray(MEMBERS), { minLength: 1, maxLength: 20 });
const holdsOf =
  (held: readonly number[]) =>
  (member: number): boolean =>
    held.includes(member);

describe('standing', () => {
  it('law: whatever was asked before, the answer is that of the enumerator', () => {
    hold('standing equals brute force', 800, fc.tuple(problems, choices), ([problem, asked]) => {
      const standing = new Standing(problem, []);
      const budget = new StepBudget(100_000);
      for (const held of asked)
        expect(standing.canStand(holdsOf(held), budget)).toBe(allSolutions(problem, holdsOf(held)).length > 0);
    });
  });

  it('law: what was settled once takes no more steps', () => {
    hold('settled questions are free', 300, fc.tuple(problems, choices), ([problem, asked]) => {
      const standing = new Standing(problem, []);
      const first = asked.map((held) => standing.canStand(holdsOf(held), new StepBudget(100_000)));
      const none = new StepBudget(0);
      expect(asked.map((held) => standing.canStand(holdsOf(held), none))).toEqual(first);
    });
  });

  it('a search that ran out of steps settles nothing', () => {
    const problem = { sizes: [2, 2], tables: [], sums: [], members: 0 };
    const standing = new Standing(problem, []);
    expect(standing.canStand(() => true, new StepBudget(0))).toBe(null);
    expect(standing.canStand(() => true, new StepBudget(10))).toBe(true);
  });
});

describe('solution', () => {
  it('law: an assignment is one exactly where the enumerator lists it', () => {
    const values = fc.tuple(...[0, 1, 2, 3].map(() => fc.nat({ max: 2 })));
    hold('solutions equal brute force', 800, fc.tuple(problems, values), ([problem, drawn]) => {
      const one = problem.sizes.map((size, variable) => (drawn[variable] ?? 0) % size);
      const listed = allSolutions(problem).some((other) => other.join() === one.join());
      expect(isSolution(problem, one)).toBe(listed);
    });
  });
});
