import { describe, expect, it } from 'vitest';
import { shareOf, told, upFrom } from '../mip/share.ts';
import { highsSolver } from '../mip/solver.ts';

/** Seeds behind those of `npm test`; ten questions each. LEGWORK_LONG_MINUTES ends it early, LEGWORK_LONG_SEED begins elsewhere. */
const CATALOGUES = 10_000;
const FIRST_SEED = Number(process.env.LEGWORK_LONG_SEED ?? 51);
const MINUTES = Number(process.env.LEGWORK_LONG_MINUTES ?? Number.POSITIVE_INFINITY);

describe('engine and mixed-integer solver, generated catalogues', () => {
  it('a hundred thousand questions: the same feasibility, least values and fronts; oracle and auditor agree', async () => {
    const begun = performance.now();
    const isOver = (): boolean => performance.now() - begun > MINUTES * 60_000;
    const share = shareOf(upFrom(FIRST_SEED, CATALOGUES), await highsSolver(), isOver);
    console.log(told(`from seed ${FIRST_SEED}`, share));
    expect(share.differences).toEqual([]);
    expect(share.questions).toBeGreaterThan(0);
  });
});
