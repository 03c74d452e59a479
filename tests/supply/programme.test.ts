import { describe, expect, it } from 'vitest';
import { isCover, type Programme, weighed } from '../../src/supply/index.ts';

const programme: Programme = {
  needs: [4, 1],
  columns: [
    {
      gives: [
        [0, 2],
        [1, 1],
      ],
      cost: 5,
      limit: 2,
    },
    { gives: [[0, 1]], cost: 1, limit: 3 },
  ],
  caps: [{ weights: [2, 1], most: 5 }],
};

describe('whole-number programme', () => {
  it('cover: every need, limit and cap is met', () => {
    const are = (...all: readonly (readonly number[])[]): boolean[] => all.map((packs) => isCover(programme, packs));
    expect(are([2, 0], [1, 2], [2, 1])).toEqual([true, true, true]);
    // too little of the first row, of the second
    expect(are([1, 1], [0, 3], [])).toEqual([false, false, false]);
    // beyond a limit, below nothing, beyond the cap of 5
    expect(are([3, -1], [2, -1], [1, 4], [2, 2])).toEqual([false, false, false, false]);
    expect([isCover({ ...programme, caps: [] }, [2, 2]), isCover({ ...programme, caps: [] }, [3, 0])]).toEqual([
      true,
      false,
    ]);
  });

  it('weights: summed over the packs', () => {
    expect([weighed([2, 1], [3, 4]), weighed([2, 1], [])]).toEqual([10, 0]);
  });
});
