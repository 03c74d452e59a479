export { AGREEMENTS, type Agreement, type Disagreement, disagreement } from './agreements.ts';
export { fitVerdict, type NoReason, type Verdict } from './verdict.ts';
