import type { Book } from './catalog.ts';
import { price } from './measure.ts';
import { number } from './read.ts';
import { isBarred, leftOf, replacement } from './replaced.ts';
import type { Market, Scene } from './scene.ts';

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

/** How long so many packs take to come. A replaced number is not ordered any more (section 10). */
export function delivery(scene: Scene, sku: string, packs: number): Delivery {
  const stock = scene.market.stock.get(sku);
  const replaced = replacement(scene, sku) !== null;
  if (isBarred(scene, sku)) return { kind: 'never' };
  if (!stock) return { kind: replaced ? 'never' : 'unknown' };
  if (packs <= onShelf(scene.market, sku)) return { kind: 'days', days: 0 };
  const lead = stock.lead_days?.trim() ?? '';
  if (replaced || stock.state?.trim() === 'discontinued' || lead === '') return { kind: 'never' };
  return /^[0-9]{1,6}$/.test(lead) ? { kind: 'days', days: Number(lead) } : { kind: 'unknown' };
}

/** A replaced part of which so many pieces are no longer to be had: its replacement may stand for it. */
export function isGone(scene: Scene, sku: string, pieces: number): boolean {
  if (!replacement(scene, sku)) return false;
  const inPack = number(scene.book.parts.get(sku)?.pack) ?? 1;
  return leftOf(scene, scene.question, onShelf(scene.market, sku) * inPack, sku) < pieces;
}

const onShelf = (market: Market, sku: string): number => {
  const stock = market.stock.get(sku);
  return Math.max(0, count(stock?.on_hand) - count(stock?.reserved));
};

const count = (shown: string | undefined): number =>
  shown !== undefined && /^[0-9]{1,12}$/.test(shown.trim()) ? Number(shown.trim()) : 0;
