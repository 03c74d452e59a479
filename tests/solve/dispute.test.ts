import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { correctionsByValue } from '../../src/solve/corrections-by-value.ts';
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

  it('members that bind in two groups: what is given up helps in both', () => {
    const sizes = [2, 2];
    const wants = (variable: number, value: number, member: number) =>
      tableOf(sizes, [variable], member, ([one]) => one === value);
    const tables = [wants(0, 0, 0), wants(1, 0, 0), wants(0, 1, 1), wants(1, 1, 2)];
    expect(disputeOf({ sizes, tables, sums: [], members: 3 }, plenty())).toEqual({
      conflicts: [
        [0, 1],
        [0, 2],
      ],
      corrections: [[0], [1, 2]],
      complete: true,
    });
  });

  it('many members: twenty that want one value and twenty that want the other, in words of bits of their own or not', () => {
    const sizes = [2];
    const members = Array.from({ length: 40 }, (_one, member) => member);
    const wanting = (wanted: (member: number) => number) => {
      const tables = members.map((member) => tableOf(sizes, [0], member, ([value]) => value === wanted(member)));
      const [one = [], other = []] = [0, 1].map((value) => members.filter((member) => wanted(member) === value));
      const pairs = one.flatMap((first) => other.map((second) => [first, second]));
      const expected = { conflicts: sorted(pairs), corrections: sorted([one, other]), complete: true };
      expect(disputeOf({ sizes, tables, sums: [], members: 40 }, plenty())).toEqual(expected);
    };
    wanting((member) => member % 2);
    wanting((member) => (member < 20 ? 1 : 0));
    wanting((member) => (member < 20 ? 0 : 1));
  });

  it('cuts: a table with two open variables is not broken yet', () => {
    // with 0 for the first the second is 0, which the first member does not want; the second member wants that 0
    const sizes = [2, 2, 2];
    const tables = [
      tableOf(sizes, [0, 1], null, ([a, b]) => a === 1 || b === 0),
      tableOf(sizes, [1, 2], 0, ([b]) => b === 1),
      tableOf(sizes, [0], 1, ([a]) => a === 0),
    ];
    expect(disputeOf({ sizes, tables, sums: [], members: 2 }, plenty())).toEqual({
      conflicts: [[0, 1]],
      corrections: [[0], [1]],
      complete: true,
    });
  });

  it('steps: what was settled before they ran out is listed', () => {
    const pairs: Problem = {
      sizes: [2, 2],
      tables: [0, 1, 2, 3].map((member) => tableOf([2, 2], [member >> 1], member, ([value]) => value === member % 2)),
      sums: [],
      members: 4,
    };
    const budget = plenty();
    disputeOf(pairs, budget);
    const listed = Array.from({ length: budget.used }, (_one, limit) => disputeOf(pairs, new StepBudget(limit)));
    expect(listed.filter(({ complete }) => complete)).toEqual([]);
    // what is listed stays listed with more steps
    const counts = listed.map(({ conflicts }) => conflicts.length);
    expect(counts).toEqual([...counts].sort((a, b) => a - b));
    expect(new Set(counts)).toEqual(new Set([0, 1, 2]));
    expect(listed.at(-1)?.conflicts).toEqual([
      [0, 1],
      [2, 3],
    ]);
  });

  it('steps: where they run out at the last assignment nothing is claimed', () => {
    // all alike; that they are 0, and that they are 1, each shows only once the first is decided: a step for each value, and two for each correction
    const sizes = [2, 2, 2, 2];
    const tables = [
      ...[1, 2, 3].map((other) => tableOf(sizes, [0, other], null, ([a, b]) => a === b)),
      ...[0, 1].map((value) => tableOf(sizes, [1, 2, 3], value, (values) => values.some((one) => one !== value))),
    ];
    const problem: Problem = { sizes, tables, sums: [], members: 2 };
    const found = (steps: number) => correctionsByValue(problem, [0, 1], [], new StepBudget(steps));
    expect([0, 1, 2, 3, 4, 5].map(found)).toEqual([null, null, null, null, null, null]);
    expect(found(6)).toEqual([[0], [1]]);
  });

  it('law: corrections by values are those of trying every set, while members that are not optional hold', () => {
    const cases = randomProblem({ variables: 4, values: 3, members: 6 }).chain((problem) =>
      fc.tuple(
        fc.constant(problem),
        fc.shuffledSubarray(membersOf(problem)),
        fc.shuffledSubarray([...problem.sizes.keys()]),
      ),
    );
    hold('corrections by values equal brute force', 400, cases, ([problem, optional, order]) => {
      const stands = (given: readonly number[]): boolean =>
        allSolutions(problem, (member) => !given.includes(member)).length > 0;
      const budget = plenty();
      const found = correctionsByValue(problem, optional, order, budget);
      expect(sorted(found ?? [])).toEqual(sorted(minimalOf(subsetsOf(optional).filter(stands))));
      for (const set of found ?? []) expect(set).toEqual([...set].sort((a, b) => a - b));
      // with fewer steps it says nothing
      for (let limit = Math.max(0, budget.used - 12); limit < budget.used; limit++)
        expect(correctionsByValue(problem, optional, order, new StepBudget(limit))).toBeNull();
    });
  });

  it('law: an oracle that stops answering ends the dispute, and what is listed is true', () => {
    const clashes = fc.array(fc.subarray([1, 2, 3, 11, 12], { minLength: 1 }), { maxLength: 5 });
    hold('a stopped oracle gives no whole dispute', 200, clashes, (given) => {
      const members = [1, 2, 3, 11, 12];
      const asked = (limit: number): readonly [Dispute, number] => {
        let calls = 0;
        const canStand = (held: ReadonlySet<number>): boolean | null =>
          calls++ < limit ? !given.some((set) => set.every((member) => held.has(member))) : null;
        return [everyConflict(members, canStand, plenty()), calls];
      };
      const [whole, calls] = asked(1_000_000);
      const free = subsetsOf(members).filter(
        (one) => !given.some((set) => set.every((member) => !one.includes(member))),
      );
      expect(whole).toEqual({
        conflicts: sorted(minimalOf(given)),
        corrections: sorted(minimalOf(free)),
        complete: true,
      });
      for (let limit = 0; limit < calls; limit++) {
        const [{ conflicts, corrections, complete }] = asked(limit);
        expect(complete).toBe(false);
        for (const one of conflicts) expect(whole.conflicts).toContainEqual(one);
        for (const one of corrections) expect(whole.corrections).toContainEqual(one);
      }
    });
  });

  it('asking: two members of one digit are not one of two', () => {
    const canStand = (held: ReadonlySet<number>): boolean => !held.has(12) && !(held.has(1) && held.has(2));
    expect(everyConflict([1, 2, 12], canStand, plenty())).toEqual({
      conflicts: [[12], [1, 2]],
      corrections: [
        [1, 12],
        [2, 12],
      ],
      complete: true,
    });
  });

  it('effort: sets that an oracle is asked about', () => {
    const asked = (clashes: readonly (readonly number[])[]): number => {
      let calls = 0;
      const canStand = (held: ReadonlySet<number>): boolean => {
        calls++;
        return !clashes.some((set) => set.every((member) => held.has(member)));
      };
      everyConflict([0, 1, 2, 3, 4, 5, 6, 7], canStand, plenty());
      return calls;
    };
    expect(
      [
        [
          [0, 1],
          [2, 3],
          [4, 5],
        ],
        [
          [0, 1, 2],
          [2, 3, 4],
          [4, 5, 0],
        ],
        [[7], [0, 1, 2, 3]],
      ].map(asked),
    ).toEqual([63, 53, 32]);
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
