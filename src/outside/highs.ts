import { createRequire } from 'node:module';
import type { Highs } from 'highs';
import { isCover, type Least, type Programme, weighed } from '../supply/index.ts';
import { OutsideStopped } from './fault.ts';

/** Finds a cover of least cost; null where there is none. */
export type LeastSolver = (programme: Programme) => Least | null;

// its types speak of the default export of the CommonJS build
const loadHighs = createRequire(import.meta.url)('highs') as () => Promise<Highs>;

const SETTINGS = { output_flag: false, random_seed: 0, mip_rel_gap: 0, mip_abs_gap: 0.999 } as const;

/**
 * HiGHS, a mixed-integer solver, as one that finds covers. Its gaps are set so that costs, which are whole, are proved; what it answers is counted again in whole
 * numbers. Ref: Q. Huangfu, J. A. J. Hall, "Parallelizing the dual revised simplex method", Mathematical Programming Computation 10 (2018).
 */
export async function highsSolver(): Promise<LeastSolver> {
  const highs = await loadHighs();
  return (programme) => {
    const { columns } = programme;
    const solved = highs.solve(modelOf(programme), SETTINGS);
    if (solved.Status === 'Infeasible') return null;
    const packs = columns.map((_column, at) => Math.round(solved.Columns[`x${at}`]?.Primal ?? 0));
    const cost = weighed(
      columns.map((column) => column.cost),
      packs,
    );
    if (solved.Status !== 'Optimal' || !isCover(programme, packs) || Math.abs(cost - solved.ObjectiveValue) >= 0.5)
      throw new OutsideStopped(`the solver ended with "${solved.Status}": no verdict`);
    return { packs, cost };
  };
}

function modelOf({ needs, columns, caps }: Programme): string {
  const byRow: string[][] = needs.map(() => []);
  columns.forEach(({ gives }, at) => {
    for (const [row, amount] of gives) byRow[row]?.push(`${amount} x${at}`);
  });
  const sum = (terms: readonly string[]): string => (terms.length > 0 ? terms.join(' + ') : '0 x0');
  return [
    'Minimize',
    ` cost: ${sum(columns.map(({ cost }, at) => `${cost} x${at}`))}`,
    'Subject To',
    ...needs.map((need, row) => ` r${row}: ${sum(byRow[row] ?? [])} >= ${need}`),
    ...caps.map(({ weights, most }, at) => ` c${at}: ${sum(weights.map((weight, x) => `${weight} x${x}`))} <= ${most}`),
    'Bounds',
    ...columns.map(({ limit }, at) => ` 0 <= x${at} <= ${limit}`),
    'Generals',
    ` ${columns.map((_column, at) => `x${at}`).join(' ')}`,
    'End',
  ].join('\n');
}
