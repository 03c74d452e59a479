export { type Book, openBook } from './book.ts';
export { missingWays } from './least-ways.ts';
export { type OracleAnswer, oracle } from './oracle.ts';
export type { OraclePlan } from './plans.ts';
export { checkProof, restsOnSilence } from './proof.ts';
