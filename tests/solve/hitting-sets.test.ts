import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { minimalHittingSets } from '../../src/solve/hitting-sets.ts';
import { hold } from '../laws/hold.ts';
import { inOrder } from './random-problem.ts';
import { minimalOf, subsetsOf } from './subsets.ts';

const sorted = (sets: Iterable<readonly number[]>): readonly (readonly number[])[] =>
  [...sets].map((set) => [...set].sort((a, b) => a - b)).sort((a, b) => a.length - b.length || inOrder(a, b));

/** So many that not all fit into one word of bits, one of which hits the set that they make. */
const CROWD = Array.from({ length: 40 }, (_one, at) => at);

describe('hitting sets', () => {
  it('law: with more than 32 members they are still those of trying every set, each once', () => {
    const few = [50, 51, 52, 53, 54, 55];
    const sets = fc.array(fc.subarray(few, { maxLength: 4 }), { maxLength: 5 });
    hold('hitting sets over two words equal brute force', 100, fc.tuple(sets, fc.nat(5)), ([given, place]) => {
      const hitting = subsetsOf(few).filter((set) => given.every((one) => one.some((member) => set.includes(member))));
      const expected = minimalOf(hitting).flatMap((set) => CROWD.map((one) => [...set, one]));
      const all = [...given.slice(0, place), CROWD, ...given.slice(place)];
      expect(sorted(minimalHittingSets(all))).toEqual(sorted(expected));
    });
  });

  it('law: one of each of sets that share nothing, those with the fewest members first', () => {
    const parts = fc.tuple(
      fc.shuffledSubarray(CROWD, { minLength: 40 }),
      fc.uniqueArray(fc.integer({ min: 1, max: 39 }), { maxLength: 7 }),
    );
    hold('hitting sets of parts', 200, parts, ([members, given]) => {
      const cuts = [0, ...given, 40].sort((a, b) => a - b);
      const sets = cuts.slice(1).map((cut, at) => members.slice(cuts[at], cut));
      const [first] = minimalHittingSets(sets);
      // a stable sort: of equally large sets the earlier
      expect(first).toEqual([...sets].sort((a, b) => a.length - b.length).map((set) => Math.min(...set)));
    });
  });

  it('a set of fewest members that are still free: what has been given up does not count', () => {
    // with 0 taken 1 is given up, so that of the last set 6 alone is left: it goes before the pair
    const sets = [
      [0, 1],
      [2, 3],
      [1, 4, 5],
      [1, 6],
    ];
    expect([...minimalHittingSets(sets)][0]?.slice(0, 2)).toEqual([0, 6]);
  });

  it('nothing: no sets are hit by nothing, a set without members by no set', () => {
    expect([...minimalHittingSets([])]).toEqual([[]]);
    expect([...minimalHittingSets([[1], []])]).toEqual([]);
  });
});
