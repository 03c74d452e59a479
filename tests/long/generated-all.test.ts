import { describe, expect, it } from 'vitest';
import { clauseSolver } from '../mip/clauses.ts';
import { type Share, shareOf, told, upFrom, type Watch } from '../mip/share.ts';
import { highsSolver } from '../mip/solver.ts';

/** Seeds behind those of `npm test`; ten questions each. LEGWORK_LONG_MINUTES ends it early, LEGWORK_LONG_SEED begins elsewhere. */
const CATALOGUES = 10_000;
const FIRST_SEED = Number(process.env.LEGWORK_LONG_SEED ?? 51);
/** The clause-learning solver is slower: a smaller share, with seeds of its own. */
const CLAUSE_SEED = 910_001;
const CLAUSE_CATALOGUES = 200;
const MINUTES = Number(process.env.LEGWORK_LONG_MINUTES ?? Number.POSITIVE_INFINITY);

/** Stops after so many minutes; each difference is printed as it is found, and every thousand questions how far it has come. */
function watchFor(what: string, minutes: number): Watch {
  const begun = performance.now();
  let [shown, next] = [0, 1000];
  return {
    isOver: () => performance.now() - begun > minutes * 60_000,
    hear: (share: Share) => {
      for (const difference of share.differences.slice(shown)) console.log(difference);
      shown = share.differences.length;
      if (share.questions < next) return;
      console.log(`so far, ${told(what, share)}`);
      next += 1000;
    },
  };
}

describe('engine and solvers, generated catalogues', () => {
  it('a hundred thousand questions: the same feasibility, least values and fronts; oracle and auditor agree', async () => {
    const what = `from seed ${FIRST_SEED}`;
    const share = shareOf(upFrom(FIRST_SEED, CATALOGUES), await highsSolver(), watchFor(what, MINUTES));
    console.log(told(what, share));
    expect(share.differences).toEqual([]);
    expect(share.questions).toBeGreaterThan(0);
  });

  it('two thousand questions to a clause-learning solver as well', async () => {
    const what = `clause-learning solver from seed ${CLAUSE_SEED}`;
    const share = shareOf(upFrom(CLAUSE_SEED, CLAUSE_CATALOGUES), await clauseSolver(), watchFor(what, MINUTES / 4));
    console.log(told(what, share));
    expect(share.differences).toEqual([]);
    expect(share.questions).toBeGreaterThan(0);
  });
});
