import fc from 'fast-check';

/** The seed of every random test: `LEGWORK_SEED=random` draws one, `LEGWORK_SEED=N` repeats a run; else always the same. */
const given = process.env.LEGWORK_SEED ?? '20250611';
export const SEED = given === 'random' ? Date.now() % 2 ** 31 : Number(given);
/** How many times more cases than usual: `LEGWORK_CASES=10` for a long look. */
const TIMES = Number(process.env.LEGWORK_CASES ?? '1');

/** Tries a law on random cases and prints the seed they came from; a case that breaks it is made small and shown. */
export function hold<T>(law: string, cases: number, values: fc.Arbitrary<T>, check: (value: T) => void): void {
  const runs = Math.ceil(cases * TIMES);
  console.log(`${law}: ${runs} cases, seed ${SEED}`);
  fc.assert(fc.property(values, check), { seed: SEED, numRuns: runs });
}

/** Says plainly that a test had nothing to read. Returns null so that callers can end. */
export function absent(what: string, where: string): null {
  console.log(`NOT TESTED: ${what}: there is no ${where} (LEGWORK_OUTSIDE_DATA names the folder)`);
  return null;
}
