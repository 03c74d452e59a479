import { minorDigits } from '../../src/quantity/money.ts';
import {
  type Catalog,
  type Chassis,
  catalogSchema,
  type Family,
  type Kit,
  type Operation,
  type Part,
  type Service,
  type Shop,
  type StockRow,
  type Supply,
  shopSchema,
} from './records.ts';

/** What a slot holds. */
export type Content = { readonly sku: string; readonly quantity: number } | null;

/** A whole catalogue with its stock and shop files, by name. */
export interface Book {
  readonly catalog: Catalog;
  readonly parts: ReadonlyMap<string, Part>;
  readonly partsByRole: ReadonlyMap<string, readonly Part[]>;
  readonly kits: ReadonlyMap<string, Kit>;
  readonly supplies: ReadonlyMap<string, Supply>;
  readonly stock: ReadonlyMap<string, StockRow>;
  readonly shop: Shop | null;
  /** Digits of the currency behind the point. */
  readonly digits: number;
}

export function openBook(raw: unknown, stockRows: readonly StockRow[] | null, shop: unknown): Book {
  const catalog = catalogSchema.parse(raw);
  return {
    catalog,
    parts: new Map(catalog.parts.map((part) => [part.sku, part])),
    partsByRole: byRole(catalog.parts),
    kits: new Map(catalog.kits.map((kit) => [kit.sku, kit])),
    supplies: new Map(catalog.supplies.map((supply) => [supply.sku, supply])),
    stock: new Map((stockRows ?? []).map((row) => [row.sku ?? '', row])),
    digits: known(minorDigits(catalog.catalog.currency), catalog.catalog.currency),
    shop: shop === null || shop === undefined ? null : shopSchema.parse(shop),
  };
}

function byRole(parts: readonly Part[]): ReadonlyMap<string, readonly Part[]> {
  const groups = new Map<string, Part[]>();
  for (const part of parts) groups.set(part.role, [...(groups.get(part.role) ?? []), part]);
  return groups;
}

/** The value, or a failure that says what was looked for. */
export function known<T>(value: T | null | undefined, what: string): T {
  if (value === undefined || value === null) throw new Error(`not in the catalogue: ${what}`);
  return value;
}

export const familyOf = (book: Book, chassis: Chassis): Family =>
  known(
    book.catalog.families.find(({ id }) => id === chassis.family),
    chassis.family,
  );

export const chassisById = (book: Book, id: string): Chassis =>
  known(
    book.catalog.chassis.find((one) => one.id === id),
    id,
  );

export const chassisOfFamily = (book: Book, family: Family): readonly Chassis[] =>
  book.catalog.chassis.filter((one) => one.family === family.id);

export const operationsOf = (book: Book, family: Family): readonly Operation[] =>
  book.catalog.operations.filter(({ families }) => families.includes(family.id));

export const servicesOf = (book: Book, family: Family): readonly Service[] =>
  book.catalog.services.filter(({ families }) => families.includes(family.id));

export const roleOf = (family: Family, slot: string): string => family.slots[slot]?.role ?? slot;

/** All parts of the catalogue that are made for a slot, of whatever family. */
export const partsFor = (book: Book, family: Family, slot: string): readonly Part[] =>
  book.partsByRole.get(roleOf(family, slot)) ?? [];

/** Opening spoils the pieces, or a service renews them. */
export const isRenewable = (family: Family, slot: string): boolean =>
  family.slots[slot]?.['single-use'] === true || family.slots[slot]?.wears === true;

export const sameContent = (a: Content, b: Content): boolean =>
  a === null || b === null ? a === b : a.sku === b.sku && a.quantity === b.quantity;
