import type { World } from '../../src/plan/index.ts';
import { againstSolver, frontTimes, refusalTimes } from './counter.ts';
import { type GridTimes, gridTimes } from './grids.ts';
import type { Samples } from './measure.ts';
import { reachTimes, sizeTimes, verdictRates } from './sizes.ts';

const seeds = (count: number): readonly number[] => Array.from({ length: count }, (_, at) => at + 1);
const shown = ({ median, p95, most }: Samples): string =>
  `median ${median.toFixed(2)}, p95 ${p95.toFixed(2)}, most ${most.toFixed(2)} ms`;
const times = (one: Samples | null, other: Samples): string =>
  one === null ? '' : ` (${(one.median / other.median).toFixed(2)} times our search)`;

/** Rounds to warm up where a search takes a few milliseconds: with four it runs half in the interpreter. */
export const WELL_WARMED = 24;

/** Each group of rows by its name, as `npm run bench -- NAME...` takes it. */
export const ROWS: Readonly<Record<string, (world: World) => Promise<readonly string[]>>> = {
  'grid-10x5': async () => gridRow('single cheapest, 10 x 5', await gridTimes('single', 10, 5, seeds(12), WELL_WARMED)),
  'grid-15x10': async () =>
    gridRow('single cheapest, 15 x 10', await gridTimes('single', 15, 10, seeds(5), WELL_WARMED)),
  'grid-20x20': async () => gridRow('single cheapest, 20 x 20', await gridTimes('single', 20, 20, seeds(3), 1)),
  'front-12x6': async () => gridRow('whole front, 12 x 6', await gridTimes('front', 12, 6, seeds(6), 2)),
  'counter-front': async () => {
    const { count, plan, first, search } = await frontTimes(9);
    return [
      `counter questions that there is a plan for, ${count}, whole front, purchases and tie-break: ${shown(plan)}; of forks not asked about before ${shown(first)}; the search alone ${shown(search)}`,
    ];
  },
  refusals: async () => {
    const { count, times: taken } = await refusalTimes(9);
    return [`refusals of the demo catalogue with conflicts and ways out, ${count}: ${shown(taken)}`];
  },
  'counter-solver': async () => {
    const { count, engine, solver, ratios } = await againstSolver(5);
    return [
      `counter questions that the solver's encoding knows all of, ${count}: whole front ${shown(engine)}; the mixed-integer solver, least total alone: ${shown(solver)}`,
      `  the solver takes ${ratios.median.toFixed(0)} times our search at the median, ${ratios.least.toFixed(1)} times at the least`,
    ];
  },
  'size-1k': async () => sizeRow(1000),
  'size-10k': async () => sizeRow(10_000),
  'size-100k': async () => sizeRow(100_000),
  verdicts: async () => {
    const { engine, map, packed, sqlite } = verdictRates();
    const million = (rate: number): string => `${(rate / 1e6).toFixed(2)} M/s`;
    return [
      `verdicts at random: ours ${million(engine)}, Map of objects ${million(map)}, packed array ${million(packed)}, better-sqlite3 ${sqlite === null ? 'not installed' : million(sqlite)}`,
    ];
  },
  reach: async (world) => [`reach map, all cells of a chassis: ${shown(reachTimes(world))}`],
};

function sizeRow(size: number): readonly string[] {
  const { parts, plan, plans, reach, fit, uses, heap, heapFromCache, link, fromCache, bareYaml } = sizeTimes(size);
  return [
    `beside ${parts} parts: plan ${shown(plan)} (${plans} plans in all); reach map ${reach.toFixed(2)} ms; fit ${fit.toFixed(4)} and uses ${uses.toFixed(3)} ms a part`,
    `  read and linked from NDJSON in ${link.toFixed(0)} ms, ${(link / bareYaml).toFixed(2)} times the ${bareYaml.toFixed(0)} of the bare YAML library on the same lines, ${heap.toFixed(0)} MiB; from the cache's form in ${fromCache.toFixed(0)} ms, ${heapFromCache.toFixed(0)} MiB`,
  ];
}

function gridRow(
  name: string,
  { search, asked, whole, solver, plain, building, stopped, differences, unended }: GridTimes,
): readonly string[] {
  return [
    `${name}: search ${shown(search)}; the question as a problem ${shown(asked)}; whole answer ${shown(whole)}; stopped at the step limit ${stopped} times; ${differences} differences`,
    ...(solver === null ? [] : [`  mixed-integer solver: ${shown(solver)}${times(solver, search)}`]),
    ...(building === null ? [] : [`  building its model, not counted: ${shown(building)}`]),
    ...(plain === null
      ? []
      : [`  plain branch and bound, modules alone: ${shown(plain)}${times(plain, search)}, given up ${unended} times`]),
  ];
}
