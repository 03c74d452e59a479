import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { minimalHittingSets } from '../../src/solve/hitting-sets.ts';
import {
  type Dispute,
  disputeOf,
  everyConflict,
  type Problem,
  Search,
  Standing,
  StepBudget,
  smallestConflict,
  tableOf,
} from '../../src/solve/index.ts';
import { hold } from '../laws/hold.ts';
import { allSolutions, inOrder, randomProblem } from './random-problem.ts';
import { minimalOf, subsetsOf } from './subsets.ts';

const plenty = (): StepBudget => new StepBudget(1_000_000);
/** By trying every set of the members that occur. */
function byHand(problem: Problem): Dispute {
  const members = membersOf(problem);
  const all = subsetsOf(members);
  const stands = new Map(all.map((set) => [set, allSolutions(problem, (member) => set.includes(member)).length > 0]));
  const conflicts = sorted(minimalOf(all.filter((set) => stands.get(set) === false)));
  const given = all.filter((set) => stands.get(set)).map((set) => members.filter((member) => !set.includes(member)));
  return { conflicts, corrections: sorted(minimalOf(given)), complete: true };
}
const membersOf = ({ tables, sums }: Problem): number[] => [
  ...new Set([...tables, ...sums].flatMap(({ member }) => member ?? [])),
];

/** The same with so many variables of two values more, tied to the first and to each other by tables that rule nothing out. */
function padded(problem: Problem, more: number): Problem {
  const { sizes, tables } = problem;
  const all = [...sizes, ...Array.from({ length: more }, () => 2)];
  const ties = Array.from({ length: more }, (_one, at) =>
    tableOf(all, [at === 0 ? 0 : sizes.length + at - 1, sizes.length + at], null, () => true),
  );
  return { ...problem, sizes: all, tables: [...tables, ...ties] };
}
const sorted = (sets: readonly (readonly number[])[]): readonly (readonly number[])[] =>
  sets.map((set) => [...set].sort((a, b) => a - b)).sort((a, b) => a.length - b.length || inOrder(a, b));

describe('dispute', () => {
  it('law: conflicts and corrections are those of trying every set of members, by values and by asking', () => {
    const problems = randomProblem({ variables: 4, values: 3, members: 6 });
    hold('disputes equal brute force', 400, problems, (problem) => {
      const members = membersOf(problem);
      const expected = byHand(problem);
      expect(disputeOf(problem, plenty())).toEqual(expected);
      const standing = new Standing(problem, []);
      const asked = everyConflict(members, (held) => standing.canStand((one) => held.has(one), plenty()), plenty());
      expect(asked).toEqual(expected);
      const smallest = smallestConflict(
        members,
        (held) => new Search(problem, (one) => held.has(one)).run(plenty(), { leaf: () => false }) === 'enough',
      );
      expect(smallest?.members.length ?? null).toBe(expected.conflicts[0]?.length ?? null);
    });
  });

  it('law: the same where there are too many assignments to go through them', () => {
    const problems = randomProblem({ variables: 4, values: 3, members: 6 });
    hold('disputes among many assignments equal brute force', 60, problems, (problem) => {
      expect(disputeOf(padded(problem, 22), plenty())).toEqual(byHand(problem));
    });
  });

  it('law: with too few steps it says so, and what it lists is true', () => {
    const problems = randomProblem({ variables: 4, values: 3, members: 6 });
    hold('a stopped dispute is never called complete', 100, problems, (problem) => {
      const budget = plenty();
      const whole = disputeOf(problem, budget);
      for (let limit = 0; limit < Math.min(budget.used, 30); limit++) {
        const { conflicts, corrections, complete } = disputeOf(problem, new StepBudget(limit));
        expect(complete).toBe(false);
        for (const one of conflicts) expect(whole.conflicts).toContainEqual(one);
        for (const one of corrections) expect(whole.corrections).toContainEqual(one);
      }
      expect(disputeOf(problem, new StepBudget(budget.used))).toEqual(whole);
    });
  });

  it('law: minimal hitting sets are those of trying every set, each once', () => {
    const sets = fc.array(fc.uniqueArray(fc.integer({ min: 0, max: 6 }), { maxLength: 4 }), { maxLength: 6 });
    hold('hitting sets equal brute force', 1000, sets, (given) => {
      const hitting = subsetsOf([0, 1, 2, 3, 4, 5, 6]).filter((set) =>
        given.every((one) => one.some((member) => set.includes(member))),
      );
      expect(sorted([...minimalHittingSets(given)])).toEqual(sorted(minimalOf(hitting)));
    });
  });

  it('steps: a dispute that runs out of them is not called complete', () => {
    const two = {
      sizes: [2],
      tables: [0, 1].map((value) => ({ scope: [0], allowed: Uint8Array.of(1 - value, value), member: value })),
      sums: [],
      members: 2,
    };
    expect(disputeOf(two, new StepBudget(0)).complete).toBe(false);
    // one value cannot be 0 and 1: the two conflict, and giving up either helps
    expect(disputeOf(two, plenty())).toEqual({ conflicts: [[0, 1]], corrections: [[0], [1]], complete: true });
  });
});
