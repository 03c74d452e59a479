import { createRequire } from 'node:module';

/** What is used of the solver. Its package ships TypeScript sources that this project's compiler settings refuse, hence `require`. */
interface OdexSolver {
  absoluteTolerance: number;
  relativeTolerance: number;
  maxSteps: number;
  readonly solve: (
    derivative: (x: number, y: readonly number[]) => readonly number[],
    from: number,
    initial: readonly number[],
    to: number,
  ) => { readonly y: readonly number[]; readonly outcome: number };
}
const require = createRequire(import.meta.url);
const odex: { readonly Solver: new (dimension: number) => OdexSolver } = require('odex');

/**
 * Integrates y' = f(x, y) with Hairer and Wanner's extrapolation method (ODEX), far tighter than any test asks.
 * A run that does not reach the end throws: a test that compares with it must not pass by accident.
 */
export function integrate(
  derivative: (x: number, y: readonly number[]) => readonly number[],
  from: number,
  initial: readonly number[],
  to: number,
): readonly number[] {
  const solver = new odex.Solver(initial.length);
  solver.relativeTolerance = 1e-11;
  solver.absoluteTolerance = 1e-13;
  solver.maxSteps = 100_000;
  const { y, outcome } = solver.solve(derivative, from, initial, to);
  if (outcome !== 0) throw new Error(`not integrated to the end: outcome ${outcome}`);
  return y;
}
