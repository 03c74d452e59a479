import { ask } from '../../src/plan/index.ts';
import { frontGrid, type Grid, singleGrid } from '../generator/grid.ts';
import { loaded } from '../generator/load.ts';
import { modelOf } from '../mip/model.ts';
import { highsSolver } from '../mip/solver.ts';
import { cpuMilliseconds, type Samples, sampled } from './measure.ts';
import { plainBranchAndBound, plainChoiceOf } from './peers.ts';

/** One size of grid: what the engine takes for the whole answer, and peers for the cheapest plan. */
export interface GridTimes {
  readonly engine: Samples;
  readonly solver: Samples | null;
  readonly plain: Samples | null;
  /** Building the solver's model, left out of its time. */
  readonly building: Samples | null;
  /** Instances on which the search limit came first. */
  readonly stopped: number;
  /** Instances on which engine and solver do not find the same least total. */
  readonly differences: number;
}

/** Search steps after which an instance counts as stopped. */
const STEP_LIMIT = 100_000;

export async function gridTimes(
  kind: 'single' | 'front',
  slots: number,
  candidates: number,
  seeds: readonly number[],
  warmUp: number,
): Promise<GridTimes> {
  const highs = await highsSolver();
  const times: Record<'engine' | 'solver' | 'plain' | 'building', number[]> = {
    engine: [],
    solver: [],
    plain: [],
    building: [],
  };
  let [stopped, differences] = [0, 0];
  for (const seed of seeds) {
    const grid: Grid = kind === 'single' ? singleGrid(seed, slots, candidates) : frontGrid(seed, slots, candidates);
    const { world } = loaded(grid.generated);
    const question = { ...grid.question, stepLimit: STEP_LIMIT };
    const answer = (): ReturnType<typeof ask> => {
      world.market.remembered.clear();
      return ask(world, question);
    };
    const first = answer();
    const isStopped = first.kind === 'answer' && (first.answer.status === 'stopped' || !first.answer.complete);
    if (isStopped) stopped++;
    for (let round = 1; round < warmUp && !isStopped; round++) answer();
    times.engine.push(cpuMilliseconds(answer));
    if (kind === 'front') continue;
    let model = modelOf(grid.generated, grid.question);
    times.building.push(cpuMilliseconds(() => (model = modelOf(grid.generated, grid.question))));
    const [total] = model.parts;
    let least: number | null = null;
    times.solver.push(
      cpuMilliseconds(() => {
        const verdict = highs(model.programme, total);
        least = verdict.kind === 'least' ? verdict.value : null;
      }),
    );
    const ours = first.kind === 'answer' ? first.answer.plans[0]?.money.total : undefined;
    if (!isStopped && least !== null && Math.round(Number(ours) * 100) !== least) differences++;
    const choice = plainChoiceOf(grid);
    plainBranchAndBound(choice);
    times.plain.push(cpuMilliseconds(() => plainBranchAndBound(choice)));
  }
  const samples = (all: readonly number[]): Samples | null => (all.length === 0 ? null : sampled(all));
  return {
    engine: sampled(times.engine),
    solver: samples(times.solver),
    plain: samples(times.plain),
    building: samples(times.building),
    stopped,
    differences,
  };
}
