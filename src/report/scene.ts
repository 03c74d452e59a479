import type { Catalog } from '../catalog/index.ts';
import type { Answer, Plan, Source } from '../plan/index.ts';
import { placeOf } from './document.ts';
import type { Page } from './layout.ts';
import type { Language } from './words/language.ts';

/** Which catalogue, stock and shop an answer was worked out from, as people know them. */
export interface Basis {
  readonly catalog: { readonly folder: string; readonly by: 'option' | 'environment' | 'demo' };
  readonly stock: string | null;
  readonly shop: { readonly file: string; readonly name: string } | null;
}

/** All that a report is written from. */
export interface Scene {
  readonly page: Page;
  readonly language: Language;
  readonly catalog: Catalog;
  readonly answer: Answer;
  readonly basis: Basis;
  /** A question as a command line, for ways out. */
  readonly command: (question: Answer['question']) => string;
}

/** The name of a chassis as people know it. */
export const chassisName = ({ catalog }: Scene, id: string): string => catalog.chassis.get(id)?.name ?? id;

/** The name of whatever has an SKU. */
export function nameOf({ catalog }: Scene, sku: string): string {
  const supply = catalog.packs.get(sku)?.supply ?? sku;
  return catalog.parts.get(sku)?.name ?? catalog.kits.get(sku)?.name ?? catalog.supplies.get(supply)?.name ?? '';
}

/** A document with its issue: "Example service manual, issue 4, 2025-03". */
export function documentName({ catalog }: Scene, id: string): string {
  const document = catalog.documents.get(id);
  return document ? `${document.title}, issue ${document.issue}` : id;
}

/** Where a fact stands: document, issue and page where there is one, else the record with its place. */
export function sourceWords(scene: Scene, source: Source | null): string {
  if (source === null) return '';
  const place = placeOf(scene.catalog, source.record);
  const record = place === null ? source.record : `${source.record} in ${place}`;
  if (source.document === null) return record;
  const page = source.page === null ? '' : `, page ${source.page}`;
  return `${documentName(scene, source.document)}${page} (${record})`;
}

/** What holds each leg of the fork after a plan. */
export function legsOf(
  { catalog }: Scene,
  plan: Plan,
): { readonly left: string | null; readonly right: string | null } {
  const family = catalog.families.get(catalog.chassis.get(plan.chassis)?.family ?? '');
  return { left: family?.legs.left ?? null, right: family?.legs.right ?? null };
}
