export { mergeRaw, readCatalog, type TextFile } from './catalog.ts';
export { clauseMatches } from './link/index.ts';
export type * from './linked.ts';
export { nearest } from './nearest.ts';
export type { Outcome, Place, Problem, ProblemCode, ProblemParams } from './problems.ts';
export type { Side, Use } from './raw.ts';
export { NO_SHOP, readShop } from './shop.ts';
export { NO_STOCK, readStock, STOCK_COLUMNS } from './stock.ts';
