import type { Months, Range, Replacement, Serials } from '../linked.ts';
import type { RawMonths, RawRange, RawReplacement, RawSerials } from '../raw.ts';
import type { Path } from '../source-file.ts';
import type { RecordReader } from './context.ts';

export const linkMonths = (raw: RawMonths | undefined): Months | null =>
  raw ? { from: raw.from ?? null, to: raw.to ?? null } : null;

/** A serial number as letters and a number; null where it is not of that form. */
export function readSerial(text: string): { readonly letters: string; readonly number: number } | null {
  const match = /^([A-Za-z-]*)([0-9]{1,15})$/.exec(text.trim());
  return match ? { letters: (match[1] ?? '').toUpperCase(), number: Number(match[2]) } : null;
}

export function linkSerials<T>(reader: RecordReader<T>, raw: RawSerials | undefined, path: Path): Serials | null {
  if (!raw) return null;
  const [from, to] = [readSerial(raw.from), readSerial(raw.to)];
  if (!from || !to || from.letters !== to.letters || from.number > to.number) {
    reader.problem(path, 'bad-value', {
      rule: 'from and to with the same letters, from not above to',
      found: `${raw.from} to ${raw.to}`,
    });
    return null;
  }
  return { letters: from.letters, from: from.number, to: to.number };
}

export function linkRange<T>(reader: RecordReader<T>, raw: RawRange | undefined, path: Path): Range | null {
  if (!raw) return null;
  return {
    least: reader.optional('length', raw.least, [...path, 'least']),
    greatest: reader.optional('length', raw.greatest, [...path, 'greatest']),
  };
}

/** What stands for a replaced number; each must exist and not be the number itself. */
export function linkReplacements<T>(
  reader: RecordReader<T>,
  raw: readonly RawReplacement[] | undefined,
  kind: 'parts' | 'kits',
  inherited: Replacement['source'],
): readonly Replacement[] {
  return (raw ?? []).map((one, index): Replacement => {
    const path: Path = ['replaced-by', index];
    for (const [at, { sku }] of one.by.entries()) {
      if (!reader.context.records.parts.has(sku)) reader.refer(kind, sku, [...path, 'by', at, 'sku']);
    }
    for (const id of one.families ?? []) reader.refer('families', id, [...path, 'families']);
    return {
      by: one.by.map(({ sku, quantity }) => ({ sku, quantity: quantity ?? 1 })),
      families: one.families ?? null,
      generations: one.generations ?? null,
      bothWays: one['both-ways'] ?? false,
      oldStockUsable: one['old-stock'] !== 'not-usable',
      note: one.note ?? null,
      source: reader.source(one.source, `replaced-by[${index}]`, [...path, 'source'], inherited),
    };
  });
}
