export { type BikeContext, bikeSlots, forksOf, headTubeLength } from './bike.ts';
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
export { chassisMeasures } from './measures.ts';
export type { Member, Params, Wish } from './member.ts';
export type { Given } from './now.ts';
export { buildNow, type Now, type NowFault } from './now.ts';
export { buildOf, type ForkProblem, forkProblem, silencesOf, travelOfValues } from './problem.ts';
export { TOWARD_TRAVEL } from './want-tables.ts';
export type { Bounds } from './wants.ts';
export { type ForkWants, takesWheel } from './wants.ts';
