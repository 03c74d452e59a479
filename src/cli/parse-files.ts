/**
 * What parses files: loaded only when the cache does not have them. Built as a bundle of its own (scripts/build.ts),
 * so that nothing of it is loaded with a plan; only plain data passes between the two.
 */
export { mergeRaw, NO_SHOP, NO_STOCK, readCatalog, readShop, readStock } from '../catalog/index.ts';
export { parseSource } from '../catalog/source-file.ts';
export { contradictions } from '../check/index.ts';
