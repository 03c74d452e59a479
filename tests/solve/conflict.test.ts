import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { smallestHittingSet } from '../../src/solve/conflict.ts';
import { corrections, type Oracle, Search, StepBudget, smallestConflict } from '../../src/solve/index.ts';
import { hold } from '../laws/hold.ts';
import { allSolutions, inOrder, randomProblem } from './random-problem.ts';
import { minimalOf, subsetsOf } from './subsets.ts';

/** A made-up world of members: those that cannot stand together are listed. */
interface Clash {
  readonly members: readonly number[];
  readonly clashes: readonly (readonly number[])[];
}
/** Of one digit and of more: what tells sets apart must not run together. */
const MEMBERS = [0, 1, 2, 11, 12, 21, 112, 121];
const clash = (least: number): fc.Arbitrary<Clash> =>
  fc.record({
    members: fc.shuffledSubarray(MEMBERS, { minLength: MEMBERS.length }),
    clashes: fc.array(fc.subarray(MEMBERS, { minLength: 1 }), { minLength: least, maxLength: 6 }),
  });
const oracle =
  ({ clashes }: Clash): Oracle =>
  (held) =>
    !clashes.some((set) => set.every((member) => held.has(member)));

/** Of the smallest conflicts the one whose members come first in the order of preference. */
function firstSmallest(
  conflicts: readonly (readonly number[])[],
  members: readonly number[],
): readonly number[] | null {
  const ranked = minimalOf(conflicts)
    .map((set) => set.map((member) => members.indexOf(member)).sort((a, b) => a - b))
    .sort((a, b) => a.length - b.length || inOrder(a, b));
  return ranked[0]?.map((rank) => members[rank] ?? -1) ?? null;
}

describe('smallest conflict', () => {
  it('law: none is smaller, and of equally small ones the preferred is found', () => {
    hold('smallest conflict equals brute force', 1000, clash(1), (one) => {
      const found = smallestConflict(one.members, oracle(one));
      expect(found).toEqual({ members: firstSmallest(one.clashes, one.members), smallest: true });
    });
  });

  it('law: it cannot stand, and every proper subset can', () => {
    hold('smallest conflicts are irreducible', 500, clash(1), (one) => {
      const { members } = smallestConflict(one.members, oracle(one)) ?? { members: [] };
      for (const subset of subsetsOf(members))
        expect(oracle(one)(new Set(subset))).toBe(subset.length < members.length);
    });
  });

  it('law: members of tables and sums behave the same', () => {
    const problems = randomProblem({ variables: 4, values: 3, members: 6 });
    hold('smallest conflict of random problems', 400, problems, (problem) => {
      const stands = (held: ReadonlySet<number>): boolean => allSolutions(problem, (one) => held.has(one)).length > 0;
      const members = [0, 1, 2, 3, 4, 5];
      const conflicts = subsetsOf(members).filter((subset) => !stands(new Set(subset)));
      const found = smallestConflict(members, (held) => {
        const end = new Search(problem, (one) => held.has(one)).run(new StepBudget(10_000), { leaf: () => false });
        return end === 'stopped' ? null : end === 'enough';
      });
      expect(found?.members ?? null).toEqual(firstSmallest(conflicts, members));
    });
  });

  it('none: members that can stand together have no conflict', () => {
    expect(smallestConflict([0, 1], () => true)).toBeNull();
    expect(smallestConflict([], () => true)).toBeNull();
  });

  it('facts alone: what cannot stand without any member is the empty conflict', () => {
    expect(smallestConflict([0, 1], () => false)).toEqual({ members: [], smallest: true });
  });

  it('law: when the steps run out it says nothing; it never names a wrong conflict', () => {
    hold('a stopped oracle gives no conflict', 200, clash(1), (one) => {
      const asked = (limit: number): readonly [readonly number[] | undefined, number] => {
        let calls = 0;
        const conflict = smallestConflict(one.members, (held) => (calls++ < limit ? oracle(one)(held) : null));
        return [conflict?.members, calls];
      };
      const [whole, calls] = asked(1_000_000);
      for (let limit = 0; limit < Math.min(calls, 25); limit++) expect(asked(limit)[0]).toBeUndefined();
      expect(asked(calls)[0]).toEqual(whole);
    });
  });
});

describe('smallest hitting set', () => {
  it('law: it hits every set, and no smaller one does', () => {
    hold('hitting sets equal brute force', 800, clash(0), ({ members, clashes }) => {
      const hits = (chosen: readonly number[]): boolean =>
        clashes.every((set) => set.some((one) => chosen.includes(one)));
      const found = smallestHittingSet(
        members,
        clashes.map((set) => new Set(set)),
      );
      expect(hits(found)).toBe(true);
      const smaller = subsetsOf(MEMBERS).filter((chosen) => chosen.length < found.length);
      expect(smaller.filter(hits)).toEqual([]);
    });
  });
});

describe('corrections', () => {
  /** A clash whose members are split into fixed and optional ones; the fixed alone can stand. */
  const split = clash(1).chain((one) =>
    fc.integer({ min: 0, max: 4 }).map((at) => ({
      ...one,
      fixed: one.members.slice(0, at),
      optional: one.members.slice(at),
    })),
  );

  it('law: exactly the minimal sets to give up, smallest first', () => {
    hold('corrections equal brute force', 600, split, (one) => {
      const stands = (given: readonly number[]): boolean | null =>
        oracle(one)(new Set([...one.fixed, ...one.optional.filter((member) => !given.includes(member))]));
      const { found, complete } = corrections(one.fixed, one.optional, oracle(one), new StepBudget(10_000));
      const expected = minimalOf(subsetsOf(one.optional).filter(stands));
      const keyed = (sets: readonly (readonly number[])[]): string[] =>
        sets.map((set) => [...set].sort((a, b) => a - b).join(' ')).sort();
      expect(complete).toBe(true);
      expect(keyed(found)).toEqual(keyed(expected));
      expect(found.map((set) => set.length)).toEqual(found.map((set) => set.length).sort((a, b) => a - b));
    });
  });

  it('none: where all can stand together there is nothing to give up', () => {
    expect(corrections([0], [1, 2], () => true, new StepBudget(99))).toEqual({ found: [], complete: true });
  });

  it('steps: when they run out the list says that it is not complete', () => {
    expect(corrections([], [1, 2], () => null, new StepBudget(99))).toEqual({ found: [], complete: false });
    expect(corrections([], [1, 2], () => false, new StepBudget(0))).toEqual({ found: [], complete: false });
  });
});
