import { type Catalog, nearest } from '../catalog/index.ts';
import { type Fault, fault } from './fault.ts';

/** Why a number is no part: it is a kit, a pack or a supply, or nobody knows it. */
export function noPart(catalog: Catalog, sku: string): Fault {
  const kit = catalog.kits.get(sku);
  if (kit) return fault('not-a-part', { sku, kind: 'kit', parts: kit.parts.map((part) => part.sku) });
  if (catalog.packs.has(sku)) return fault('not-a-part', { sku, kind: 'pack', parts: [] });
  if (catalog.supplies.has(sku)) return fault('not-a-part', { sku, kind: 'supply', parts: [] });
  return fault('unknown-sku', { sku, nearest: nearest(sku, catalog.parts.keys()) });
}
