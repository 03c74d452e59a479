import type { StockRow } from '../catalog/index.ts';
import type { Minor } from '../quantity/index.ts';

/** Something sold under one number: what one pack gives, what it costs, and when it can be had. */
export interface Offer {
  readonly sku: string;
  readonly kind: 'part' | 'kit' | 'pack';
  /** Pieces of parts and amounts of supplies in one pack, by SKU of the part or supply. */
  readonly gives: readonly { readonly sku: string; readonly amount: number }[];
  readonly price: Minor | null;
  readonly stock: StockRow | null;
  /** Replaced by another number: only what is on the shelf, if that may still be used. */
  readonly replaced: 'no' | 'shelf-only' | 'gone';
}

/** Pieces of a part, or amount of a supply, in one pack of an offer. */
export const amountIn = ({ gives }: Offer, sku: string): number =>
  gives.find((given) => given.sku === sku)?.amount ?? 0;

/** Packs that are there and that nobody has been promised; none of a replaced number whose old stock is not to be used. */
export const onShelf = ({ stock, replaced }: Offer): number =>
  stock && replaced !== 'gone' ? Math.max(0, stock.onHand - stock.reserved) : 0;

/** Days until so many packs are there; Infinity where nobody knows; null where so many cannot be had at all. */
export function daysFor(offer: Offer, packs: number): number | null {
  if (packs <= onShelf(offer)) return 0;
  if (offer.replaced !== 'no') return null;
  const row = offer.stock;
  if (!row) return Number.POSITIVE_INFINITY;
  if (row.discontinued || row.lead === null) return null;
  return row.lead === 'unknown' ? Number.POSITIVE_INFINITY : row.lead;
}

/** Most packs that can be had within so many days. */
export function mostWithin(offer: Offer, days: number): number {
  const later = daysFor(offer, onShelf(offer) + 1);
  return later !== null && later <= days ? Number.MAX_SAFE_INTEGER : onShelf(offer);
}
