export { type BikeContext, bikeSlots, forksOf, headTubeLength } from './bike.ts';
export { isLimited, isSettled, wheelOn } from './bike-rules.ts';
export {
  axleToCrown,
  type Build,
  contentKey,
  familyOf,
  givingClause,
  sameContent,
  spacerCounts,
  travelOf,
} from './build.ts';
export type { Member, Wish } from './member.ts';
export { NOTHING_WANTED } from './nothing-wanted.ts';
export { buildNow, type Now, sameNow } from './now.ts';
export { buildOf, type ForkProblem, forkProblem, opensNoMore, silencesOf, travelOfValues } from './problem.ts';
export { TOWARD_TRAVEL } from './want-tables.ts';
export { type Bounds, type ForkWants, shownTraitIn } from './wants.ts';
