import { describe, expect, it } from 'vitest';
import { clauseSolver } from './clauses.ts';
import { shareOf, told, upFrom } from './share.ts';

/** Seeds far from those that the mixed-integer solver gets. Ten questions each. */
const FIRST_SEED = 900_001;
const CATALOGUES = 1;

describe('engine and clause-learning solver, generated catalogues', () => {
  it('the same feasibility, the same least total, minutes and days, and no plan missing from the front', async () => {
    const share = shareOf(upFrom(FIRST_SEED, CATALOGUES), await clauseSolver());
    console.log(told('clause-learning solver', share));
    expect(share.differences).toEqual([]);
    expect(share.noVerdict).toBeLessThan(share.questions / 10);
  }, 180_000);
});
