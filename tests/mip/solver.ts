import { createRequire } from 'node:module';
import type { Highs } from 'highs';
import { type Expression, evaluated, type Programme } from './programme.ts';

/** What a solver says; a time-out, or an answer that does not hold when it is worked out in whole numbers, is no verdict. */
export type Verdict =
  | { readonly kind: 'least'; readonly value: number; readonly values: readonly number[] }
  | { readonly kind: 'none' }
  | { readonly kind: 'no-verdict'; readonly why: string };

/** `doubted`: it said none where there is a plan, and is asked again in another way, if it has one. */
export type Solver = (programme: Programme, least: Expression, doubted?: boolean) => Verdict;

// its types speak of the default export of the CommonJS build
const loadHighs = createRequire(import.meta.url)('highs') as () => Promise<Highs>;

/** Gaps that prove whole costs; the heuristic that is switched off hangs now and then. */
const SETTINGS = {
  output_flag: false,
  random_seed: 0,
  mip_rel_gap: 0,
  mip_abs_gap: 0.999,
  mip_heuristic_run_feasibility_jump: false,
  mip_feasibility_tolerance: 1e-9,
  primal_feasibility_tolerance: 1e-9,
  time_limit: 20,
} as const;

/** HiGHS. Q. Huangfu, J. A. J. Hall, "Parallelizing the dual revised simplex method", Mathematical Programming Computation 10 (2018). */
export async function highsSolver(): Promise<Solver> {
  const highs = await loadHighs();
  return (programme, least, doubted = false) => {
    // its presolve has called programmes infeasible of which it finds the optimum without (seed 5742: two objectives of three)
    const settings = doubted ? { ...SETTINGS, presolve: 'off' as const } : SETTINGS;
    const solved = highs.solve(programme.toLp(least.terms), settings);
    if (solved.Status === 'Infeasible') return { kind: 'none' };
    if (solved.Status !== 'Optimal') return { kind: 'no-verdict', why: solved.Status };
    const values = Array.from({ length: programme.variables }, (_, at) =>
      Math.round(solved.Columns[`x${at}`]?.Primal ?? 0),
    );
    if (!programme.isMetBy(values)) return { kind: 'no-verdict', why: 'what it found does not hold in whole numbers' };
    return { kind: 'least', value: evaluated(least, values), values };
  };
}
