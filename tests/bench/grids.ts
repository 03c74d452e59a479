import { type ForkProblem, forkProblem } from '../../src/fork/index.ts';
import { planFloors } from '../../src/plan/floor.ts';
import { ask, type World } from '../../src/plan/index.ts';
import { type Prepared, prepare } from '../../src/plan/prepare.ts';
import { type QuestionInput, questionSchema } from '../../src/plan/question.ts';
import { bestPlan, searchPlans } from '../../src/plan/search.ts';
import { StepBudget } from '../../src/solve/index.ts';
import { frontGrid, type Grid, singleGrid } from '../generator/grid.ts';
import { loaded } from '../generator/load.ts';
import { modelOf } from '../mip/model.ts';
import { highsSolver } from '../mip/solver.ts';
import { cpuMilliseconds, type Samples, sampled } from './measure.ts';
import { plainBranchAndBound, plainChoiceOf } from './peers.ts';

/** One size of grid. Each sample is the median of an instance's rounds. */
export interface GridTimes {
  /** The engine's search alone, for the cheapest plan or the whole front: what it is to be held against peers for, since their models are built apart too. */
  readonly search: Samples;
  /** Turning the question into the engine's problem. */
  readonly asked: Samples;
  /** The whole answer: problem, front, lines, steps, flags, and what services and looks would add. */
  readonly whole: Samples;
  /** Peers find the cheapest plan. */
  readonly solver: Samples | null;
  readonly plain: Samples | null;
  /** Building the solver's model, left out of its time. */
  readonly building: Samples | null;
  /** Instances on which the search limit came first. */
  readonly stopped: number;
  /** Instances on which engine and solver do not find the same least total. */
  readonly differences: number;
  /** Instances on which the plain search gave up: its time is then a least. */
  readonly unended: number;
}

/** Search steps after which an instance counts as stopped. */
export const STEP_LIMIT = 1_000_000;
/** Rounds of which the median counts. */
const ROUNDS = 5;

/** A question read and turned into a problem, as the engine does before it searches; `anew`: with nothing known of the fork. */
export function readyFor(
  world: World,
  input: QuestionInput,
  fork: 'known' | 'anew' = 'known',
): { readonly prepared: Prepared; readonly fork: ForkProblem } {
  const question = questionSchema.parse(input);
  const { prepared: read } = prepare(world, question);
  if (read === null) throw new Error('the question is not understood');
  // what is kept of a fork hangs on its object
  const prepared = fork === 'anew' ? { ...read, now: { ...read.now } } : read;
  return { prepared, fork: forkProblem(world.catalog, prepared.now, prepared.wants, question, 'narrow') };
}

export async function gridTimes(
  kind: 'single' | 'front',
  slots: number,
  candidates: number,
  seeds: readonly number[],
  warmUp: number,
): Promise<GridTimes> {
  const highs = await highsSolver();
  const times = new Map<'search' | 'asked' | 'whole' | 'solver' | 'plain' | 'building', number[]>();
  const take = (
    what: Parameters<typeof times.get>[0],
    rounds: number,
    work: () => unknown,
    before: () => void = () => {},
  ): void => {
    const all = Array.from({ length: rounds }, () => {
      before();
      return cpuMilliseconds(work);
    });
    times.set(what, [...(times.get(what) ?? []), sampled(all).median]);
  };
  let [stopped, differences, unended] = [0, 0, 0];
  for (const seed of seeds) {
    const grid: Grid = kind === 'single' ? singleGrid(seed, slots, candidates) : frontGrid(seed, slots, candidates);
    const { world } = loaded(grid.generated);
    // what peers look for
    const question = { ...grid.question, prefer: 'money' as const, stepLimit: STEP_LIMIT };
    const answer = (): ReturnType<typeof ask> => {
      world.market.remembered.clear();
      return ask(world, question);
    };
    const ready = readyFor(world, question);
    const { prepared } = ready;
    let { fork } = ready;
    // what a piece costs belongs to the model, as it does to a solver's; what a search has found out before is forgotten
    const anew = (): void => {
      world.market.remembered.clear();
      fork = { ...fork };
      planFloors(world, prepared, fork);
    };
    const search = (): unknown => {
      const budget = new StepBudget(STEP_LIMIT);
      return kind === 'single' ? bestPlan(world, prepared, fork, budget) : searchPlans(world, prepared, fork, budget);
    };
    const first = answer();
    if (first.kind === 'answer' && (first.answer.status === 'stopped' || !first.answer.complete)) {
      stopped++;
      continue;
    }
    for (let round = 0; round < warmUp; round++) {
      answer();
      anew();
      search();
    }
    take('search', ROUNDS, search, anew);
    take('asked', ROUNDS, () => readyFor(world, question));
    take('whole', ROUNDS, answer);
    if (kind === 'front') continue;
    let model = modelOf(grid.generated, grid.question);
    take('building', 1, () => (model = modelOf(grid.generated, grid.question)));
    const [total] = model.parts;
    let least: number | null = null;
    take('solver', 1, () => {
      const verdict = highs(model.programme, total);
      least = verdict.kind === 'least' ? verdict.value : null;
    });
    const ours = first.kind === 'answer' ? first.answer.plans[0]?.money.total : undefined;
    if (least !== null && Math.round(Number(ours) * 100) !== least) differences++;
    const choice = plainChoiceOf(grid);
    if (plainBranchAndBound(choice) === null) unended++;
    take('plain', 1, () => plainBranchAndBound(choice));
  }
  const samples = (what: Parameters<typeof times.get>[0]): Samples | null => {
    const all = times.get(what);
    return all === undefined ? null : sampled(all);
  };
  return {
    search: sampled(times.get('search') ?? []),
    asked: sampled(times.get('asked') ?? []),
    whole: sampled(times.get('whole') ?? []),
    solver: samples('solver'),
    plain: samples('plain'),
    building: samples('building'),
    stopped,
    differences,
    unended,
  };
}
