import type { Book } from './catalog.ts';
import { type Made, ofGenerations } from './made.ts';
import type { Question } from './question.ts';
import { type Row, row, rows, text, texts, whole } from './read.ts';

/** Whose fork it is that a replaced number is asked for. */
export interface Fork {
  readonly book: Book;
  readonly family: Row;
  readonly made: Made;
}

/** So many of a number. */
export interface Some {
  readonly sku: string;
  readonly quantity: number;
}

/** The first statement that speaks of the fork; null where the number is not replaced. */
export function replacement({ book, family, made }: Fork, sku: string): Row | null {
  const record = book.parts.get(sku) ?? book.kits.get(sku);
  const speaks = (said: Row): boolean => {
    const families = texts(said.families);
    const ofFamily = families.length === 0 || families.some((id) => id === family.id);
    return ofFamily && ofGenerations(said.generations, made) !== 'no';
  };
  return rows(record?.['replaced-by']).find(speaks) ?? null;
}

/** What stands for a number in the end: itself where nothing replaces it, else the statements followed to their end. */
export function lastOf(fork: Fork, sku: string, quantity = 1, above: readonly string[] = []): readonly Some[] {
  const said = above.includes(sku) ? null : replacement(fork, sku);
  if (!said) return [{ sku, quantity }];
  return rows(said.by).flatMap((by) =>
    lastOf(fork, text(by.sku) ?? '', quantity * (whole(by.quantity) ?? 1), [...above, sku]),
  );
}

/** True where what is left of the old number may no longer be fitted. */
export const isBarred = (fork: Fork, sku: string): boolean => replacement(fork, sku)?.['old-stock'] === 'not-usable';

/** Does `there` do where `wanted` is asked for? Itself, its last replacement, or an old number that does both ways. */
export function doesFor(fork: Fork, there: string, wanted: string): boolean {
  if (there === wanted || lastOf(fork, wanted).some(({ sku }) => sku === there)) return true;
  const said = row(replacement(fork, there));
  return said['both-ways'] === true && rows(said.by).some((by) => by.sku === wanted);
}

/** Pieces or packs of a replaced number that are still to be had: on the shelf and at hand. */
export function leftOf(fork: Fork, question: Question, onShelf: number, sku: string): number {
  if (isBarred(fork, sku)) return 0;
  const atHand = question.have.filter((have) => have.sku === sku && !have.isAmount);
  return atHand.reduce((sum, have) => sum + have.held, onShelf);
}
