import type { Book } from './catalog.ts';
import { givingClause } from './clauses.ts';
import type { Made } from './made.ts';
import { length } from './measure.ts';
import { number, type Row, row, text, texts, whole } from './read.ts';

/** So many of one SKU in a slot. */
export interface Content {
  readonly sku: string;
  readonly quantity: number;
}
/** Slot by slot what a fork holds; null is nothing. */
export type Build = ReadonlyMap<string, Content | null>;

/** A content as the catalogue writes it: a SKU (as many as the slot takes), a SKU with a count, or nothing. */
export function readContent(value: unknown, slot: Row = {}): Content | null {
  if (typeof value === 'string') return { sku: value, quantity: number(slot.pieces) ?? 1 };
  const sku = text(row(value).sku);
  return sku === null ? null : { sku, quantity: whole(row(value).quantity) ?? 1 };
}

export const readBuild = (value: unknown): Build =>
  new Map(Object.entries(row(value)).map(([slot, content]) => [slot, readContent(content)]));

export const sameContent = (a: Content | null | undefined, b: Content | null | undefined): boolean =>
  (a?.sku ?? null) === (b?.sku ?? null) && (a?.quantity ?? 0) === (b?.quantity ?? 0);

export const sameBuild = (a: Build, b: Build): boolean =>
  [...new Set([...a.keys(), ...b.keys()])].every((slot) => sameContent(a.get(slot), b.get(slot)));

/** Slots whose content is another SKU or another count (section 2). */
export const changedSlots = (now: Build, after: Build): ReadonlySet<string> =>
  new Set([...new Set([...now.keys(), ...after.keys()])].filter((s) => !sameContent(now.get(s), after.get(s))));

export const show = (content: Content | null | undefined): string =>
  content ? `${content.sku} x ${content.quantity}` : 'nothing';

/** The family's slots by name, in its order. */
export const slotsOf = (family: Row): ReadonlyMap<string, Row> =>
  new Map(Object.entries(row(family.slots)).map(([slot, facts]) => [slot, row(facts)]));

/** The role of the parts that go into a slot. */
export const roleOf = (family: Row, slot: string): string => text(slotsOf(family).get(slot)?.role) ?? slot;

/** Every chassis that lists the build's upper and lowers together; a right build has one (section 1). */
export const chassisOf = (book: Book, build: Build): readonly Row[] =>
  [...book.chassis.values()].filter(
    (chassis) => chassis.upper === build.get('upper')?.sku && chassis.lowers === build.get('lowers')?.sku,
  );

/** Greatest travel that a clause gives, without travel spacers. */
export function clauseTravel(clause: Row): number | null {
  const travels = [...texts(clause.travel), ...texts(clause.travels)].map(length);
  const known = travels.filter((travel) => travel !== null);
  return known.length === 0 || known.length < travels.length ? null : Math.max(...known);
}

/** Travel of a build in a chassis: T - n*l, the greatest where there are two positions (section 1). */
export function travelOf(book: Book, build: Build, chassis: Row, made: Made): number | null {
  const spring = book.parts.get(build.get('spring')?.sku ?? '');
  const clause = spring && givingClause(spring, chassis, made);
  const most = clause ? clauseTravel(clause) : null;
  const taken = travelTaken(book, build, chassis);
  return most === null || taken === null ? null : most - taken;
}

function travelTaken(book: Book, build: Build, chassis: Row): number | null {
  const family = book.families.get(text(chassis.family) ?? '');
  const spacers = build.get('travel-spacers');
  if (family?.['travel-set-by'] !== 'travel-spacers' || !spacers) return 0;
  const each = length(row(book.parts.get(spacers.sku)?.dimensions).length);
  return each === null ? null : each * spacers.quantity;
}
