import { type Catalog, gtinCheckDigit, isGtinLike, listsOf, nearest, type Part } from '../catalog/index.ts';
import { beadSeatOf, byCodeUnit } from '../quantity/index.ts';
import { type Fault, fault } from './fault.ts';

/** Why a word names no chassis: with every chassis of the family that it names, else with those whose ids or names come near. */
export function noChassis(catalog: Catalog, id: string): Fault {
  const asId = idLike(id);
  const family = [...catalog.families.values()].find((one) => one.id === asId || idLike(one.name) === asId);
  const own = [...catalog.chassis.values()].filter((one) => one.family === family?.id).map((one) => one.id);
  if (own.length > 0) return fault('unknown-chassis', { id, nearest: own.sort(byCodeUnit) });
  const near = nearestRecords(id, catalog.chassis.values());
  return fault('unknown-chassis', { id, nearest: near.length > 0 ? near : [...catalog.chassis.keys()].slice(0, 3) });
}

/** Why a word names no bike, with those whose ids or names come near. */
export const noBike = (catalog: Catalog, id: string): Fault =>
  fault('unknown-bike', { id, nearest: nearestRecords(id, catalog.bikes.values()) });

/** The part with an SKU or a GTIN, or why there is none. */
export function partOf(catalog: Catalog, number: string): Part | Fault {
  const sku = catalog.parts.has(number) ? number : (listsOf(catalog).skuOfGtin(number) ?? number);
  return catalog.parts.get(sku) ?? noPart(catalog, sku);
}

/** Why a number is no part: it is a kit, a pack or a supply, a mistyped GTIN, or nobody knows it. */
function noPart(catalog: Catalog, sku: string): Fault {
  const kit = catalog.kits.get(sku);
  if (kit) return fault('not-a-part', { sku, kind: 'kit', parts: kit.parts.map((part) => part.sku) });
  if (catalog.packs.has(sku)) return fault('not-a-part', { sku, kind: 'pack', parts: [] });
  if (catalog.supplies.has(sku)) return fault('not-a-part', { sku, kind: 'supply', parts: [] });
  return mistypedGtin(sku) ?? fault('unknown-sku', { sku, nearest: nearest(sku, catalog.parts.keys()) });
}

/** True of what can lie on a shelf: a part, a kit, a pack of a supply. */
export const isSold = (catalog: Catalog, sku: string): boolean =>
  catalog.parts.has(sku) || catalog.kits.has(sku) || catalog.packs.has(sku);

/** Why a number names nothing that is sold or used: a mistyped GTIN, or nobody knows it. */
export const noGoods = (catalog: Catalog, sku: string): Fault =>
  mistypedGtin(sku) ??
  fault('unknown-sku', {
    sku,
    nearest: nearest(
      sku,
      [catalog.parts, catalog.kits, catalog.packs, catalog.supplies].flatMap((records) => [...records.keys()]),
    ),
  });

function mistypedGtin(number: string): Fault | null {
  const digit = String(gtinCheckDigit(number.slice(0, -1)));
  return isGtinLike(number) && !number.endsWith(digit) ? fault('gtin-mistyped', { number, digit }) : null;
}

/** Ids of the records whose id or name comes nearest to a word, however that is written; one alone where it is the same word. */
function nearestRecords(word: string, records: Iterable<{ readonly id: string; readonly name: string }>): string[] {
  const ids = new Map([...records].flatMap(({ id, name }) => [[idLike(name), id] as const, [id, id] as const]));
  const same = ids.get(idLike(word));
  if (same !== undefined) return [same];
  return [...new Set(nearest(idLike(word), ids.keys()).flatMap((near) => ids.get(near) ?? []))];
}

/** A name as an id writes it: small letters and digits, joined by single hyphens, a wheel in inches at its end as a bead-seat diameter. */
const idLike = (text: string): string =>
  text
    .toLowerCase()
    .replaceAll(/[^\p{L}\p{N}.]+/gu, '-')
    .replaceAll(/^-|-$/g, '')
    .replace(/(?<=-)[0-9.]+$/, (end) => String(beadSeatOf(end) ?? end));
