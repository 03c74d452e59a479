import { parseMoney } from '../../src/quantity/money.ts';
import { type Book, known } from './book.ts';
import { replacementOf } from './replaced.ts';
import type { Scene } from './scene.ts';

/** How a thing that is sold can be had: so many packs at once, any number later, or no more. */
export interface Offer {
  /** Minor units a pack; null where nobody says. */
  readonly price: number | null;
  readonly atOnce: number;
  /** Days until any number is there (null: nobody knows), or no more than is there at once. */
  readonly later: { readonly days: number | null } | 'no';
}

export function offerOf(scene: Scene, sku: string, listPrice: string | undefined): Offer {
  const { book, now } = scene;
  const row = book.stock.get(sku);
  const replaced = replacementOf(book, now, sku);
  const price = money(book, row?.price || listPrice);
  if (!row) return { price, atOnce: 0, later: replaced === null ? { days: null } : 'no' };
  const shelf = Math.max(0, whole(row.on_hand) - whole(row.reserved));
  const atOnce = replaced?.['old-stock'] === 'not-usable' ? 0 : shelf;
  const ordered = replaced === null && row.state !== 'discontinued';
  return { price, atOnce, later: ordered ? lead(row.lead_days ?? '') : 'no' };
}

const whole = (text: string | undefined): number => (text === undefined || text === '' ? 0 : Number(text));

function lead(text: string): Offer['later'] {
  if (text === '') return 'no';
  return { days: text === 'unknown' ? null : Number(text) };
}

/** A decimal price in minor units; null for none. */
export function money(book: Book, text: string | undefined): number | null {
  if (text === undefined) return null;
  return known(parseMoney(text, book.digits), `a price: ${text}`);
}

/** Whether so many pieces can be had under this number: of a replaced one, what is at hand and on the shelf. */
export function areLeft(scene: Scene, sku: string, pieces: number): boolean {
  const replaced = replacementOf(scene.book, scene.now, sku);
  if (replaced === null) return true;
  if (replaced['old-stock'] === 'not-usable') return false;
  const atHand = scene.question.have
    .filter((one) => one.sku === sku)
    .reduce((sum, { quantity = 1 }) => sum + quantity, 0);
  const inPack = scene.book.parts.get(sku)?.pack ?? 1;
  return atHand + inPack * offerOf(scene, sku, undefined).atOnce >= pieces;
}

/** Whether at least one piece of a part can be had: at hand, on the shelf, or ordered. */
export function canBeHad(scene: Scene, sku: string): boolean {
  if (replacementOf(scene.book, scene.now, sku)?.['old-stock'] === 'not-usable') return false;
  if (scene.question.have.some((one) => one.sku === sku)) return true;
  const { atOnce, later } = offerOf(scene, sku, undefined);
  return atOnce > 0 || later !== 'no';
}
