import { createRequire } from 'node:module';
import { evaluated } from './programme.ts';
import type { Solver } from './solver.ts';

// a CommonJS build whose names the loader of modules does not see
const { init } = createRequire(import.meta.url)('clingo-wasm') as Pick<typeof import('clingo-wasm'), 'init'>;

/** Stops a search that goes on too long after so many conflicts: no verdict, and the same on every machine. */
const MOST_CONFLICTS = 20_000;

/**
 * clingo, which learns clauses and adds in whole numbers: nothing in it is like a mixed-integer solver.
 * M. Gebser, R. Kaminski, B. Kaufmann, T. Schaub, "Multi-shot ASP solving with clingo", Theory and Practice of Logic Programming 19 (2019).
 */
export async function clauseSolver(): Promise<Solver> {
  const run = await init({ singleThreaded: true });
  return (programme, least) => {
    // 0 models: go on to the best one
    const said = run(programme.toRules(least.terms), 0, [`--solve-limit=${MOST_CONFLICTS}`, '--opt-strategy=bb,lin']);
    if (said.Result === 'UNSATISFIABLE') return { kind: 'none' };
    if (said.Result !== 'OPTIMUM FOUND') return { kind: 'no-verdict', why: said.Result };
    const values = Array.from({ length: programme.variables }, () => 0);
    for (const atom of said.Call.at(-1)?.Witnesses.at(-1)?.Value ?? []) {
      const [, variable = '', digit = ''] = /^x\(([0-9]+),([0-9]+)\)$/.exec(atom) ?? [];
      values[Number(variable)] = (values[Number(variable)] ?? 0) + Number(digit);
    }
    if (!programme.isMetBy(values)) return { kind: 'no-verdict', why: 'what it found does not hold' };
    return { kind: 'least', value: evaluated(least, values), values };
  };
}
