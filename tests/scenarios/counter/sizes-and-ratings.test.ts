import { describe, expect, it } from 'vitest';
import { askDemo } from '../../support/ask.ts';
import { conflicts, members, refused, verdict } from './refusals.ts';

// yaldern-corrick: on 622 wheels 120 to 150 mm in size s, 140 to 160 mm in m, l and xl (page 4 of its document).
describe('a limit that goes by the size of the frame, yaldern-corrick of 2024-05', () => {
  const corrick = { bike: 'yaldern-corrick', built: '2024-05' };

  it('size s to 160 mm: its frame allows 120 to 150', async () => {
    const answer = await askDemo({ ...corrick, size: 's', wants: { travel: 160 } });
    expect(answer.status).toBe('impossible');
    expect(members(answer, 'frame-travel')).toMatchObject([
      { params: { least: 120, greatest: 150 }, source: { document: 'yaldern-frames', page: '4' } },
    ]);
  });

  it('size m left the works with 160 mm: nothing to do', async () => {
    const answer = await askDemo({ ...corrick, size: 'm', wants: { travel: 160 } });
    expect([answer.now.travel, answer.status]).toEqual([160, 'nothing-to-do']);
  });
});

// hennivar-ruldan is of category 5; Arbrask is rated up to 4.
describe('category of use, arbrask-584 at 180 mm onto hennivar-ruldan', () => {
  it('rated for less: impossible, with both numbers', async () => {
    const answer = await askDemo({ chassis: 'arbrask-584', travelNow: 180, onto: 'hennivar-ruldan', ontoSize: 'm' });
    expect(verdict(answer)).toEqual(refused('impossible'));
    expect(conflicts(answer)).toContainEqual(['rule not-rated-category', 'want want-onto']);
    expect(members(answer, 'not-rated-category')[0]?.params).toMatchObject({ category: 5, rated: 4 });
  });
});
