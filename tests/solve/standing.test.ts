import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  brokenBy,
  type Domains,
  isSolution,
  type Problem,
  Standing,
  StepBudget,
  tableOf,
} from '../../src/solve/index.ts';
import type { Terms } from '../../src/solve/standing.ts';
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

describe('standing: what was settled once', () => {
  /** Three wishes that differ from each other and have two values: it takes a step to see that they cannot. A fourth is free. */
  const sizes = [2, 2, 2, 2];
  const pairs = [
    [0, 1],
    [1, 2],
    [0, 2],
  ] as const;
  const problem: Problem = {
    sizes,
    tables: [
      ...pairs.map((scope, member) => tableOf(sizes, scope, member, ([a, b]) => a !== b)),
      tableOf(sizes, [3], 40, ([value]) => value === 1),
    ],
    sums: [],
    members: 41,
  };
  const none = new StepBudget(0);

  it('a choice that failed answers for those that hold more, and for no other', () => {
    const standing = new Standing(problem, []);
    const budget = new StepBudget(100);
    expect(standing.canStand(holdsOf([0, 1, 2]), none)).toBeNull();
    expect([standing.canStand(holdsOf([0, 1, 2]), budget), budget.used]).toEqual([false, 2]);
    expect(standing.canStand(holdsOf([0, 1, 2]), none)).toBe(false);
    expect(standing.canStand(holdsOf([0, 1, 2, 40]), none)).toBe(false);
    for (const fewer of [[0, 1], [0, 2, 40], [40]]) expect(standing.canStand(holdsOf(fewer), none)).toBeNull();
  });

  it('a solution answers for every choice that it meets, and for no other', () => {
    const standing = new Standing(problem, []);
    // the first with 0 and 1 other than each other and 2 as 0: it has 0 for the last variable
    expect(standing.canStand(holdsOf([0, 1]), new StepBudget(100))).toBe(true);
    for (const met of [[0, 1], [0], [1], []]) expect(standing.canStand(holdsOf(met), none)).toBe(true);
    for (const other of [[2], [0, 40], [40]]) expect(standing.canStand(holdsOf(other), none)).toBeNull();
  });
});

describe('standing: terms', () => {
  it('law: only a solution that is accepted counts, and a cut that leaves none of those out changes nothing', () => {
    const cases = fc.tuple(problems, choices, fc.func(fc.boolean()), fc.boolean());
    hold('standing under terms equals brute force', 300, cases, ([problem, asked, accepts, cuts]) => {
      const accepted = allSolutions(problem, () => false).filter((values) => accepts(values));
      const isHopeless = (domains: Domains): boolean =>
        !accepted.some((values) => values.every((value, variable) => domains.has(variable, value)));
      const standing = new Standing(problem, [], { accepts, ...(cuts ? { cut: isHopeless } : {}) });
      const budget = new StepBudget(100_000);
      for (const held of asked) {
        const expected = allSolutions(problem, holdsOf(held)).some((values) => accepts(values));
        expect(standing.canStand(holdsOf(held), budget)).toBe(expected);
      }
    });
  });

  it('effort: a cut node is not gone into', () => {
    const problem: Problem = { sizes: [3, 3, 3], tables: [], sums: [], members: 0 };
    const steps = (terms: Terms): number => {
      const budget = new StepBudget(100);
      expect(new Standing(problem, [], terms).canStand(() => true, budget)).toBe(false);
      return budget.used;
    };
    const accepts = (): boolean => false;
    expect([steps({ accepts }), steps({ accepts, cut: (domains) => domains.isFixed(0) })]).toEqual([39, 3]);
  });
});

describe('solution', () => {
  it('law: an assignment breaks exactly the members that it does not meet', () => {
    const values = fc.tuple(...[0, 1, 2, 3].map(() => fc.nat({ max: 2 })));
    hold('broken members equal brute force', 400, fc.tuple(problems, values), ([problem, drawn]) => {
      if (problem.sizes.includes(0)) return;
      const one = problem.sizes.map((size, variable) => (drawn[variable] ?? 0) % size);
      const free = {
        ...problem,
        tables: problem.tables.filter(({ member }) => member !== null),
        sums: problem.sums.filter(({ member }) => member !== null),
      };
      const members = MEMBERS.filter(
        (member) => !allSolutions(free, (other) => other === member).some((other) => other.join() === one.join()),
      );
      expect([...brokenBy(problem, one)].sort()).toEqual(members);
    });
  });

  it('what lies outside the domains is none, whatever the tables say', () => {
    const problem: Problem = { sizes: [2, 3], tables: [], sums: [], members: 0 };
    const verdicts = [
      [1, 2],
      [2, 0],
      [0, 3],
      [-1, 0],
      [0, -1],
      [3, 3],
    ].map((values) => isSolution(problem, values));
    expect(verdicts).toEqual([true, false, false, false, false, false]);
  });

  it('law: an assignment is one exactly where the enumerator lists it', () => {
    const values = fc.tuple(...[0, 1, 2, 3].map(() => fc.nat({ max: 2 })));
    hold('solutions equal brute force', 800, fc.tuple(problems, values), ([problem, drawn]) => {
      const one = problem.sizes.map((size, variable) => (drawn[variable] ?? 0) % size);
      const listed = allSolutions(problem).some((other) => other.join() === one.join());
      expect(isSolution(problem, one)).toBe(listed);
    });
  });
});
