import { describe, expect, it } from 'vitest';
import { clauseSolver } from '../mip/clauses.ts';
import { shareOf, told, upFrom } from '../mip/share.ts';
import { highsSolver } from '../mip/solver.ts';

/** Seeds behind those of `npm test`; ten questions each. LEGWORK_LONG_MINUTES ends it early, LEGWORK_LONG_SEED begins elsewhere. */
const CATALOGUES = 10_000;
const FIRST_SEED = Number(process.env.LEGWORK_LONG_SEED ?? 51);
/** The clause-learning solver is slower: a smaller share, with seeds of its own. */
const CLAUSE_SEED = 910_001;
const CLAUSE_CATALOGUES = 200;
const MINUTES = Number(process.env.LEGWORK_LONG_MINUTES ?? Number.POSITIVE_INFINITY);

describe('engine and solvers, generated catalogues', () => {
  it('a hundred thousand questions: the same feasibility, least values and fronts; oracle and auditor agree', async () => {
    const begun = performance.now();
    const isOver = (): boolean => performance.now() - begun > MINUTES * 60_000;
    const share = shareOf(upFrom(FIRST_SEED, CATALOGUES), await highsSolver(), isOver);
    console.log(told(`from seed ${FIRST_SEED}`, share));
    expect(share.differences).toEqual([]);
    expect(share.questions).toBeGreaterThan(0);
  });

  it('two thousand questions to a clause-learning solver as well', async () => {
    const begun = performance.now();
    const isOver = (): boolean => performance.now() - begun > (MINUTES / 4) * 60_000;
    const share = shareOf(upFrom(CLAUSE_SEED, CLAUSE_CATALOGUES), await clauseSolver(), isOver);
    console.log(told(`clause-learning solver from seed ${CLAUSE_SEED}`, share));
    expect(share.differences).toEqual([]);
    expect(share.questions).toBeGreaterThan(0);
  });
});
