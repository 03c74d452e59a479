import { StepBudget } from '../solve/index.ts';
import { coverFront, leastCover, type Programme } from '../supply/index.ts';
import { highsSolver, type LeastSolver } from './highs.ts';
import { readCover } from './read-cover.ts';

/** The answer for one set cover; columns from 1. No cover at all: nulls, proved. */
export interface CoverAnswer {
  readonly optimum: number | null;
  readonly proved: true;
  readonly chosen: readonly number[] | null;
}

/** The answer for the whole front of (cost, number of columns), cheapest first. */
export interface FrontAnswer {
  readonly front: readonly (readonly [cost: number, columns: number])[];
}

/**
 * Up to so many entries (ones of the matrix) a cover is searched by the product's own method; from there on, and where a search takes more than so many nodes,
 * a mixed-integer solver is handed the same programme.
 */
const OWN_ENTRIES = 150_000;
const OWN_NODES = 400_000;

export async function answerCover(text: string, rows: number | null): Promise<CoverAnswer> {
  const { least } = await withSolver(readCover(text, rows), (programme, solver) => ({ least: solver(programme) }));
  if (!least) return { optimum: null, proved: true, chosen: null };
  return {
    optimum: least.cost,
    proved: true,
    chosen: least.packs.flatMap((count, at) => (count > 0 ? [at + 1] : [])),
  };
}

export async function answerFront(text: string, rows: number | null): Promise<FrontAnswer> {
  const front = await withSolver(readCover(text, rows), (programme, solver) =>
    coverFront(
      programme,
      programme.columns.map(() => 1),
      solver,
    ),
  );
  return { front: front.map(({ cost, weight }) => [cost, weight]) };
}

/** Does the work with the product's own search where it reaches, else with the other solver. */
async function withSolver<T>(programme: Programme, work: (programme: Programme, solver: LeastSolver) => T): Promise<T> {
  const entries = programme.columns.reduce((sum, { gives }) => sum + gives.length, 0);
  const budget = new StepBudget(entries > OWN_ENTRIES ? 0 : OWN_NODES);
  let reached = true;
  const own: LeastSolver = (one) => {
    const { least, proved } = leastCover(one, budget);
    reached &&= proved;
    return reached ? least : null;
  };
  const answer = work(programme, own);
  return reached ? answer : work(programme, await highsSolver());
}
