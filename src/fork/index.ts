export {
  axleToCrown,
  type Build,
  contentKey,
  familyOf,
  givingClause,
  sameContent,
  spacerCounts,
  travelOf,
  travelsOf,
} from './build.ts';
export type { Member, Params, Wish } from './member.ts';
export { buildNow, type Now, type NowFault } from './now.ts';
export { buildOf, type ForkProblem, forkProblem, travelOfValues } from './problem.ts';
export { TOWARD_TRAVEL } from './want-tables.ts';
export { type ForkWants, takesWheel } from './wants.ts';
