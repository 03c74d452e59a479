import type { Book } from './book.ts';
import type { Now } from './now.ts';
import type { Part } from './records.ts';

type Replacement = Part['replaced-by'][number];

/** The first statement that speaks of the fork. */
export function replacementOf(book: Book, now: Now, sku: string): Replacement | null {
  const record = book.parts.get(sku) ?? book.kits.get(sku);
  const speaks = ({ families, generations }: Replacement): boolean =>
    (families === undefined || families.includes(now.family.id)) &&
    (generations === undefined || now.when.generations.some((id) => generations.includes(id)));
  return record?.['replaced-by'].find(speaks) ?? null;
}

/** What stands for an SKU in the end, with counts; the SKU itself where it is not replaced. */
export function lastReplacements(book: Book, now: Now, sku: string): readonly { sku: string; quantity: number }[] {
  const statement = replacementOf(book, now, sku);
  if (statement === null) return [{ sku, quantity: 1 }];
  return statement.by.flatMap((by) =>
    lastReplacements(book, now, by.sku).map((last) => ({ sku: last.sku, quantity: last.quantity * by.quantity })),
  );
}
