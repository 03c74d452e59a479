export { type Conflict, corrections, type Oracle, smallestConflict } from './conflict.ts';
export { enumerate, type SearchEnd, StepBudget } from './enumerate.ts';
export { beats, Front, noWorse, sameVector, type Vector } from './front.ts';
export { type Problem, type Table, tableOf } from './problem.ts';
