import MiniSearch from 'minisearch';
import * as z from 'zod';
import { KINDS } from '../cli/kinds.ts';
import type { World } from '../plan/index.ts';
import { asJson } from '../report/json.ts';
import { type CatalogRecord, RECORDS } from '../report/records.ts';
import { type Kind, kindSchema, numberParameter } from './questions.ts';

/** A question to the search: words as typed, mistakes forgiven. */
export const searchQuestionSchema = z.strictObject({
  q: z.string().min(1).max(200),
  kind: kindSchema.optional(),
  limit: numberParameter(z.int().min(1).max(100)).default(20),
});
export type SearchQuestion = z.infer<typeof searchQuestionSchema>;

export const searchSchema = z.strictObject({
  format: z.literal(1),
  catalog: z.string(),
  /** The best first. */
  hits: z.array(z.strictObject({ kind: kindSchema, id: z.string(), name: z.string(), score: z.number() })),
});

/** Records of a catalogue as the command line lists them, made when first asked for, and a search over them. */
export interface Shelves {
  readonly count: (kind: Kind) => number;
  readonly list: (kind: Kind) => string;
  readonly record: (kind: Kind, id: string) => CatalogRecord | null;
  readonly find: (question: SearchQuestion) => z.infer<typeof searchSchema>;
}

interface Entry {
  readonly key: string;
  readonly kind: Kind;
  readonly id: string;
  readonly name: string;
  /** What a record is also known by: maker, role, family, wheel, other numbers. */
  readonly about: string;
}

/** Sets up the shelves of a catalogue. The index is made piece by piece, so that requests are answered meanwhile. */
export async function makeShelves({ catalog }: World): Promise<Shelves> {
  const index = new MiniSearch<Entry>({
    idField: 'key',
    fields: ['id', 'name', 'about'],
    storeFields: ['kind', 'id', 'name'],
    searchOptions: { boost: { id: 3, name: 2 }, prefix: true, fuzzy: (term) => (term.length > 3 ? 0.25 : false) },
  });
  const records = new Map<Kind, readonly CatalogRecord[]>();
  const texts = new Map<Kind, string>();
  const byId = new Map<Kind, ReadonlyMap<string, CatalogRecord>>();
  const recordsOf = (kind: Kind): readonly CatalogRecord[] => {
    const known = records.get(kind) ?? RECORDS[kind]?.(catalog) ?? [];
    records.set(kind, known);
    return known;
  };
  for (const kind of KINDS) await index.addAllAsync(recordsOf(kind).map((record) => entryOf(kind, record)));
  return {
    count: (kind) => recordsOf(kind).length,
    list: (kind) => {
      const known = texts.get(kind) ?? asJson({ kind, records: recordsOf(kind) });
      texts.set(kind, known);
      return known;
    },
    record: (kind, id) => {
      const known = byId.get(kind) ?? new Map(recordsOf(kind).map((record) => [idOf(record), record]));
      byId.set(kind, known);
      return known.get(id) ?? null;
    },
    find: ({ q, kind, limit }) => ({
      format: 1,
      catalog: catalog.hash,
      hits: index
        .search(q, kind === undefined ? {} : { filter: (hit) => hit.kind === kind })
        .map((hit) => ({
          kind: kindSchema.parse(hit.kind),
          id: String(hit.id.slice(hit.id.indexOf('/') + 1)),
          name: String(hit.name),
          score: Math.round(hit.score * 1000) / 1000,
        }))
        .sort((a, b) => b.score - a.score || (a.id < b.id ? -1 : a.id > b.id ? 1 : 0))
        .slice(0, limit),
    }),
  };
}

const idOf = (record: CatalogRecord): string => String(record.id ?? record.sku);

function entryOf(kind: Kind, record: CatalogRecord): Entry {
  const { id: _id, sku: _sku, name, title, ...rest } = record;
  const id = idOf(record);
  return {
    key: `${kind}/${id}`,
    kind,
    id,
    name: String(name ?? title ?? ''),
    about: [...wordsIn(rest), ...numbersOf(rest)].join(' '),
  };
}

/** What else a record goes by: its GTIN, its maker's and its shop's number, what is printed on it; of a supply also those of its packs. */
const numbersOf = ({ numbers, packs }: CatalogRecord): readonly string[] => [
  ...(typeof numbers === 'object' && numbers !== null ? Object.values(numbers).map(String) : []),
  ...(Array.isArray(packs) ? packs.flatMap((pack: CatalogRecord) => numbersOf(pack)) : []),
];

/** The texts at the top of a record and in lists there; what lies deeper is about other records. */
const wordsIn = (fields: CatalogRecord): readonly string[] =>
  Object.values(fields).flatMap((value) => {
    if (typeof value === 'string' || typeof value === 'number') return [String(value)];
    return Array.isArray(value) ? value.filter((one) => typeof one === 'string') : [];
  });
