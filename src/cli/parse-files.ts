/** What parses files: loaded only when the cache does not have them. */
export { NO_SHOP, NO_STOCK, readCatalog, readShop, readStock } from '../catalog/index.ts';
