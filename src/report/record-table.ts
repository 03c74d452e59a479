import { type Column, type Page, table, wrapped } from './layout.ts';
import type { CatalogRecord } from './records.ts';

/** Which fields a table of each kind shows; the last one gives way where the page is narrow. */
const FIELDS: Readonly<Record<string, readonly string[]>> = {
  makers: ['id', 'name'],
  documents: ['id', 'issue', 'title'],
  specifications: ['id', 'use', 'unit', 'name'],
  families: ['id', 'travelSetBy', 'name'],
  chassis: ['id', 'wheel', 'axle.standard', 'travel', 'name'],
  parts: ['sku', 'role', 'price', 'name'],
  kits: ['sku', 'price', 'name'],
  supplies: ['sku', 'use', 'name'],
  tools: ['id', 'size', 'price', 'name'],
  operations: ['id', 'minutes', 'title'],
  services: ['id', 'every', 'name'],
  bikes: ['id', 'wheel', 'tyre', 'name'],
  notices: ['id', 'blocks', 'title'],
};

/** Records as a compact table, and how many there are. */
export function recordTable(page: Page, kind: string, records: readonly CatalogRecord[]): string[] {
  const fields = FIELDS[kind] ?? [];
  const rows = records.map((record) => fields.map((field) => cell(record, field)));
  const columns = fields.map(
    (_, at): Column => ({ align: 'left', ...(at === fields.length - 1 ? { gives: true } : {}) }),
  );
  return [
    ...table(page, columns, rows, ''),
    ...wrapped(page, page.paint('faint', `${records.length} ${kind}; every field with --format json`)),
  ];
}

function cell(record: CatalogRecord, field: string): string {
  let here: unknown = record;
  for (const key of field.split('.')) here = (here as CatalogRecord | null)?.[key];
  if (here === null || here === undefined) return '-';
  if (typeof here === 'object') {
    const { min, max } = here as { readonly min?: string | null; readonly max?: string | null };
    return `${min ?? '?'} to ${max ?? '?'}`;
  }
  return String(here);
}
