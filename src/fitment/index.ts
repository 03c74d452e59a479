export { AGREEMENTS, type Agreement, type Disagreement, disagreement, type Measured } from './agreements.ts';
export {
  clauseStands,
  type Identity,
  monthStands,
  possibleGenerations,
  type Standing,
  serialStands,
  UNKNOWN_IDENTITY,
  worst,
} from './identity.ts';
export { identityKey, rememberedFit } from './memo.ts';
export { doesBothWays, isReplaced, replacementOf, type Successor, successorsOf } from './replaced.ts';
export { fitVerdict, type Verdict } from './verdict.ts';
