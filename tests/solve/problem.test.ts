import { describe, expect, it } from 'vitest';
import { compiled } from '../../src/solve/compiled.ts';
import { type Problem, tableOf } from '../../src/solve/index.ts';

/** The table that a predicate makes, and the tuples that it was asked about. */
function asked(
  sizes: readonly number[],
  scope: readonly number[],
  holds: (values: readonly number[]) => boolean,
  only?: readonly (number | null)[],
): readonly [allowed: number[], tuples: number[][]] {
  const tuples: number[][] = [];
  const { allowed } = tableOf(
    sizes,
    scope,
    null,
    (values) => {
      tuples.push([...values]);
      return holds(values);
    },
    only,
  );
  return [[...allowed], tuples];
}

describe('tables', () => {
  it('by a predicate: it is asked about each tuple once, the last variable quickest', () => {
    expect(asked([3, 9, 2], [2, 0], ([a = 0, b = 0]) => a + b === 2)).toEqual([
      [0, 0, 1, 0, 1, 0],
      [
        [0, 0],
        [0, 1],
        [0, 2],
        [1, 0],
        [1, 1],
        [1, 2],
      ],
    ]);
  });

  it('by a predicate: over nothing there is one tuple, over a variable without values none', () => {
    expect(asked([], [], () => false)).toEqual([[0], [[]]]);
    expect(asked([2, 0], [0, 1], () => false)).toEqual([[], []]);
  });

  it('only: what has another value there stands unasked', () => {
    expect(asked([2, 3], [0, 1], () => false, [null, 1])).toEqual([
      [1, 0, 1, 1, 0, 1],
      [
        [0, 1],
        [1, 1],
      ],
    ]);
    expect(asked([2, 3], [0, 1], () => false, [1, 0])).toEqual([[1, 1, 1, 0, 1, 1], [[1, 0]]]);
  });
});

describe('compiled problems', () => {
  const sizes = [2, 3, 4];
  const problem: Problem = {
    sizes,
    tables: [tableOf(sizes, [2, 0, 1], null, () => true), tableOf(sizes, [1], null, () => true)],
    sums: [
      {
        scope: [0, 2],
        weights: [
          [0, 1],
          [0, 0, 0, 0],
        ],
        least: 0,
        greatest: 1,
        member: null,
      },
    ],
    members: 0,
  };

  it('steps in the index are those of mixed radix, the last variable quickest', () => {
    expect(compiled(problem).tables.map(({ strides }) => [...strides])).toEqual([[6, 3, 1], [1]]);
  });

  it('each variable knows the constraints that speak of it: tables, then sums', () => {
    expect(compiled(problem).watching.map((touched) => [...touched])).toEqual([
      [0, 2],
      [0, 1],
      [0, 2],
    ]);
  });

  it('a problem is compiled once', () => {
    expect(compiled(problem)).toBe(compiled(problem));
  });
});
