import type { Catalog, Shop, Stock } from '../catalog/index.ts';
import { type Market, makeMarket } from '../supply/index.ts';

/** What an answer is worked out from: the catalogue, the stock and the shop, and the market that they make. */
export interface World {
  readonly catalog: Catalog;
  readonly stock: Stock;
  readonly shop: Shop;
  readonly market: Market;
  /** False where no shop file was given: labour then has no price. */
  readonly hasShop: boolean;
}

export const makeWorld = (catalog: Catalog, stock: Stock, shop: Shop): World => ({
  catalog,
  stock,
  shop,
  market: makeMarket(catalog, stock, shop),
  hasShop: shop.name !== '',
});
