import type { Catalog, Replacement } from '../catalog/index.ts';

/** What stands for a number in the end, with how many of each for one of it. */
export interface Successor {
  readonly sku: string;
  readonly quantity: number;
}

/** The first statement that speaks of a fork of this family and these generations; null where the number is not replaced there. */
export function replacementOf(
  catalog: Catalog,
  sku: string,
  family: string,
  generations: readonly string[],
): Replacement | null {
  const replacements = catalog.parts.get(sku)?.replacedBy ?? catalog.kits.get(sku)?.replacedBy ?? [];
  return (
    replacements.find(
      (one) =>
        (one.families === null || one.families.includes(family)) &&
        (one.generations === null ||
          (generations.length > 0 && generations.every((id) => one.generations?.includes(id)))),
    ) ?? null
  );
}

/** The last replacements of a number, each followed to its end; the number itself where it is not replaced. A circle ends where it began. */
export function successorsOf(
  catalog: Catalog,
  sku: string,
  family: string,
  generations: readonly string[],
  seen: readonly string[] = [],
): readonly Successor[] {
  const replacement = seen.includes(sku) ? null : replacementOf(catalog, sku, family, generations);
  if (!replacement) return [{ sku, quantity: 1 }];
  return replacement.by.flatMap((one) =>
    successorsOf(catalog, one.sku, family, generations, [...seen, sku]).map((last) => ({
      sku: last.sku,
      quantity: last.quantity * one.quantity,
    })),
  );
}

/** True where a number is replaced anywhere: it is not ordered any more. */
export const isReplaced = (catalog: Catalog, sku: string): boolean =>
  (catalog.parts.get(sku)?.replacedBy ?? catalog.kits.get(sku)?.replacedBy ?? []).length > 0;

/** True where a number also does for one of these that replaces it: its maker says that it goes both ways. */
export function doesBothWays(
  catalog: Catalog,
  sku: string,
  named: readonly string[],
  family: string,
  generations: readonly string[],
): boolean {
  const replacement = replacementOf(catalog, sku, family, generations);
  return replacement?.bothWays === true && replacement.by.some((one) => named.includes(one.sku));
}
