import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { beats } from '../../src/solve/front.ts';
import { Front, noWorse, sameVector, type Vector } from '../../src/solve/index.ts';
import { hold } from '../laws/hold.ts';
import { inOrder } from './random-problem.ts';

const UNKNOWN = Number.POSITIVE_INFINITY;
const vectors = fc.integer({ min: 1, max: 4 }).chain((length) =>
  fc.array(
    fc.array(fc.oneof({ weight: 5, arbitrary: fc.integer({ min: 0, max: 3 }) }, fc.constant(UNKNOWN)), {
      minLength: length,
      maxLength: length,
    }),
    { maxLength: 14 },
  ),
);

function frontOf(offers: readonly (readonly [Vector, number])[]): readonly (readonly number[])[] {
  const front = new Front<number>((a, b) => a - b);
  for (const [vector, item] of offers) front.offer(vector, item);
  return front.entries.map(({ vector, item }) => [...vector, item]).sort(inOrder);
}

describe('vectors', () => {
  it('Infinity: what nobody knows ranks after every number and equals itself', () => {
    expect([beats([1, 5], [1, UNKNOWN]), beats([1, UNKNOWN], [1, 5])]).toEqual([true, false]);
    expect([sameVector([UNKNOWN], [UNKNOWN]), noWorse([UNKNOWN], [UNKNOWN]), beats([UNKNOWN], [UNKNOWN])]).toEqual([
      true,
      true,
      false,
    ]);
  });

  it('law: beats is strict, one-way and transitive; no worse both ways means equal', () => {
    const three = fc.tuple(
      ...[1, 2, 3].map(() => fc.array(fc.integer({ min: 0, max: 2 }), { minLength: 3, maxLength: 3 })),
    );
    hold('order of vectors', 1000, three, ([a = [], b = [], c = []]) => {
      expect(beats(a, a)).toBe(false);
      if (beats(a, b)) expect([beats(b, a), noWorse(a, b), sameVector(a, b)]).toEqual([false, true, false]);
      if (beats(a, b) && beats(b, c)) expect(beats(a, c)).toBe(true);
      expect(noWorse(a, b) && noWorse(b, a)).toBe(sameVector(a, b));
    });
  });
});

describe('front', () => {
  it('law: every unbeaten vector once, with the item that comes first among equals, whatever the order of the offers', () => {
    hold('front equals brute force', 1500, fc.tuple(vectors, fc.func(fc.nat())), ([offered, dice]) => {
      const offers = offered.map((vector, item): readonly [Vector, number] => [vector, item]);
      const unbeaten = offers.filter(([vector]) => !offered.some((other) => beats(other, vector)));
      const expected = unbeaten
        .filter(([vector, item]) => !unbeaten.some(([other, earlier]) => earlier < item && sameVector(other, vector)))
        .map(([vector, item]) => [...vector, item])
        .sort(inOrder);
      expect(frontOf(offers)).toEqual(expected);
      expect(frontOf([...offers].sort((a, b) => dice(a[1]) - dice(b[1])))).toEqual(expected);
    });
  });
});
