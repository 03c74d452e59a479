import type { Line } from './answer.ts';
import { type Book, inKit, inOnePack, itemOf, supplyUnit } from './catalog.ts';
import { amount, shownAmount } from './measure.ts';
import type { Scene } from './scene.ts';

/** What the buy and take lines of one number put on the bench, and what other lines draw from it. */
export interface Source {
  readonly sku: string;
  readonly lines: readonly Line[];
  /** Pieces, microlitres or milligrams by item. */
  readonly holds: ReadonlyMap<string, number>;
  readonly drawn: ReadonlyMap<string, number>;
}

export function sourcesOf(scene: Scene): ReadonlyMap<string, Source> {
  const giving = scene.plan.lines.filter((line) => line.action === 'buy' || line.action === 'take');
  const skus = new Set(giving.map((line) => line.sku ?? ''));
  return new Map(
    [...skus].map((sku) => {
      const lines = giving.filter((line) => line.sku === sku);
      const holds = addUp(lines.map((line) => lineHolds(scene.book, line)));
      return [sku, { sku, lines, holds, drawn: addUp(drawsFrom(scene, sku)) }];
    }),
  );
}

/** Lines that put something into the fork. */
export const drawing = (scene: Scene): readonly Line[] =>
  scene.plan.lines.filter((line) => ['install', 'renew', 'use'].includes(line.action));

/** The item that a line takes, and how much of it. */
export const itemDrawn = (book: Book, line: Line): ReadonlyMap<string, number> =>
  new Map([[itemOf(book, line.sku ?? ''), shownAmount(line.quantity, line.unit)]]);

const drawsFrom = (scene: Scene, sku: string): readonly ReadonlyMap<string, number>[] =>
  drawing(scene)
    .filter((line) => line.from === sku)
    .map((line) => itemDrawn(scene.book, line));

/** What a line puts on the bench: whole packs where bought; pieces, packs or an amount where taken. */
export function lineHolds(book: Book, line: Line): ReadonlyMap<string, number> {
  const sku = line.sku ?? '';
  if (line.action === 'buy') return times(inOnePack(book, sku) ?? new Map(), line.packs ?? 0);
  return atHand(book, sku, shownAmount(line.quantity, line.unit), line.unit !== 'piece');
}

/** What so many pieces or packs, or an amount, of a number at hand hold. */
export function atHand(book: Book, sku: string, held: number, isAmount: boolean): ReadonlyMap<string, number> {
  const kit = book.kits.get(sku);
  if (kit) return times(inKit(book, kit), held);
  const sold = book.packs.get(sku);
  const size = sold && !isAmount ? (amount(sold.pack.size, supplyUnit(sold.supply)) ?? 0) : 1;
  return new Map([[itemOf(book, sku), held * size]]);
}

const times = (contents: ReadonlyMap<string, number>, by: number): ReadonlyMap<string, number> =>
  new Map([...contents].map(([item, held]) => [item, held * by]));

export function addUp(parts: readonly ReadonlyMap<string, number>[]): ReadonlyMap<string, number> {
  const sum = new Map<string, number>();
  for (const part of parts) for (const [item, held] of part) sum.set(item, (sum.get(item) ?? 0) + held);
  return sum;
}
