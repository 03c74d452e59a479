import { minorDigits } from '../quantity/index.ts';
import { amount, isUnit, type Unit } from './measure.ts';
import { number, type Row, row, rows, text, whole } from './read.ts';

/** The raw catalogue, looked up by id or SKU. */
export interface Book {
  readonly currency: string;
  /** Digits behind the point of a price. */
  readonly digits: number;
  readonly families: ReadonlyMap<string, Row>;
  readonly chassis: ReadonlyMap<string, Row>;
  readonly parts: ReadonlyMap<string, Row>;
  readonly kits: ReadonlyMap<string, Row>;
  readonly supplies: ReadonlyMap<string, Row>;
  readonly packs: ReadonlyMap<string, { readonly supply: Row; readonly pack: Row }>;
  readonly specifications: ReadonlyMap<string, Row>;
  readonly tools: ReadonlyMap<string, Row>;
  readonly services: ReadonlyMap<string, Row>;
  readonly operations: ReadonlyMap<string, Row>;
  readonly bikes: ReadonlyMap<string, Row>;
  readonly notices: readonly Row[];
}

export function openBook(catalog: Row): Book {
  const currency = text(row(catalog.catalog).currency) ?? '';
  const supplies = rows(catalog.supplies);
  return {
    currency,
    digits: minorDigits(currency) ?? 2,
    families: by('id', catalog.families),
    chassis: by('id', catalog.chassis),
    parts: by('sku', catalog.parts),
    kits: by('sku', catalog.kits),
    supplies: by('sku', catalog.supplies),
    packs: new Map(
      supplies.flatMap((supply) => rows(supply.packs).map((pack) => [text(pack.sku) ?? '', { supply, pack }] as const)),
    ),
    specifications: by('id', catalog.specifications),
    tools: by('id', catalog.tools),
    services: by('id', catalog.services),
    operations: by('id', catalog.operations),
    bikes: by('id', catalog.bikes),
    notices: rows(catalog.notices),
  };
}

const by = (key: 'id' | 'sku', records: unknown): ReadonlyMap<string, Row> =>
  new Map(rows(records).map((record) => [text(record[key]) ?? '', record]));

/** The unit a supply is counted in. */
export const supplyUnit = (supply: Row): Unit => (isUnit(supply.unit) ? supply.unit : 'piece');

/** The supply that a number means: its own number, or that of one of its packs. */
export const supplyOf = (book: Book, sku: string): Row | null =>
  book.supplies.get(sku) ?? book.packs.get(sku)?.supply ?? null;

/** The number under which a thing is counted: a pack of a supply counts as the supply, all else as itself. */
export const itemOf = (book: Book, sku: string): string => text(book.packs.get(sku)?.supply.sku) ?? sku;

/** The unit in which an item is counted. */
export const itemUnit = (book: Book, item: string): Unit => {
  const supply = supplyOf(book, item);
  return supply ? supplyUnit(supply) : 'piece';
};

/** What one pack, as sold under this number, holds: items with pieces, microlitres or milligrams. Null: not sold. */
export function inOnePack(book: Book, sku: string): ReadonlyMap<string, number> | null {
  const part = book.parts.get(sku);
  if (part) return new Map([[sku, number(part.pack) ?? 1]]);
  const sold = book.packs.get(sku);
  if (sold) return new Map([[itemOf(book, sku), amount(sold.pack.size, supplyUnit(sold.supply)) ?? 0]]);
  const kit = book.kits.get(sku);
  return kit ? inKit(book, kit) : null;
}

/** What is in one kit. */
export function inKit(book: Book, kit: Row): ReadonlyMap<string, number> {
  const contents = new Map<string, number>();
  for (const content of rows(kit.contents)) {
    const item = itemOf(book, text(content.sku) ?? '');
    const held = 'amount' in content ? amount(content.amount, itemUnit(book, item)) : (whole(content.quantity) ?? 1);
    contents.set(item, (contents.get(item) ?? 0) + (held ?? 0));
  }
  return contents;
}
