export { StepBudget } from './budget.ts';
export { corrections, type Oracle, smallestConflict } from './conflict.ts';
export type { Domains } from './domains.ts';
export { Front, noWorse, sameVector, type Vector } from './front.ts';
export { type FrontResult, paretoFront } from './pareto.ts';
export { type Problem, type Sum, type Table, tableOf } from './problem.ts';
export { Search, type SearchEnd } from './search.ts';
export { brokenBy, isSolution } from './solution.ts';
export { Standing } from './standing.ts';
