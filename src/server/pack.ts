import type { Catalog, Shop, Stock } from '../catalog/index.ts';
import { makeWorld, type World } from '../plan/index.ts';

/** What a thread needs to answer: plain data. */
export interface Packed {
  readonly catalog: Catalog;
  readonly stock: Stock;
  readonly shop: Shop;
}

export const worldOf = ({ catalog, stock, shop }: Packed): World => makeWorld(catalog, stock, shop);
