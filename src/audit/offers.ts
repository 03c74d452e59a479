import type { Book } from './catalog.ts';
import { price } from './measure.ts';
import type { Market } from './scene.ts';

/** When a number of packs can be had: days, not known, or not at all. */
type Delivery =
  | { readonly kind: 'days'; readonly days: number }
  | { readonly kind: 'unknown' }
  | { readonly kind: 'never' };

/** What one pack costs: the stock file's price, else the catalogue's; null where neither says (section 6, "Offers"). */
export function packPrice(book: Book, market: Market, sku: string): number | null {
  const shown = market.stock.get(sku)?.price?.trim() ?? '';
  const own = shown === '' ? null : price(shown, book.digits);
  const record = book.parts.get(sku) ?? book.kits.get(sku) ?? book.packs.get(sku)?.pack;
  return own ?? price(record?.price, book.digits);
}

/** How long so many packs take to come. */
export function delivery(market: Market, sku: string, packs: number): Delivery {
  const stock = market.stock.get(sku);
  if (!stock) return { kind: 'unknown' };
  const there = Math.max(0, count(stock.on_hand) - count(stock.reserved));
  if (packs <= there) return { kind: 'days', days: 0 };
  const lead = stock.lead_days?.trim() ?? '';
  if (stock.state?.trim() === 'discontinued' || lead === '') return { kind: 'never' };
  return /^[0-9]{1,6}$/.test(lead) ? { kind: 'days', days: Number(lead) } : { kind: 'unknown' };
}

const count = (shown: string | undefined): number =>
  shown !== undefined && /^[0-9]{1,12}$/.test(shown.trim()) ? Number(shown.trim()) : 0;
