import { type Catalog, gtinCheckDigit, isGtinLike, listsOf } from '../catalog/index.ts';
import { nearest } from '../catalog/nearest.ts';
import type { ListedFault } from '../report/faults.ts';
import { asJson } from '../report/json.ts';
import { RECORDS } from '../report/records.ts';
import { EXIT, type ExitCode, type Io } from './io.ts';
import { KINDS } from './kinds.ts';
import { loadWorld } from './load-world.ts';
import type { Given } from './read-options.ts';
import { readChoice } from './read-values.ts';
import { sayFaults } from './say-faults.ts';
import { sayProblems } from './say-problems.ts';

/** `legwork catalog list KIND`. */
export async function runCatalogList(given: Given, io: Io): Promise<ExitCode> {
  const formatText = given.values.get('format')?.[0] ?? (io.outIsTerminal ? 'text' : 'json');
  const format = readChoice(formatText, ['text', 'json']);
  const kind = given.argument ?? '';
  const known = (KINDS as readonly string[]).includes(kind);
  if (!known || !format.ok)
    return sayFaults(io, [
      ...(known
        ? []
        : [{ list: 'usage', code: 'unknown-kind', params: { found: kind, nearest: nearest(kind, KINDS) } } as const]),
      ...(format.ok
        ? []
        : [
            {
              list: 'usage',
              code: 'bad-option-value',
              params: { option: '--format', found: formatText, expected: format.expected },
            } as const,
          ]),
    ]);
  const { catalog, problems, sources, notes } = await loadWorld(given, io);
  for (const note of notes) io.err(`legwork: ${note}\n`);
  const errors = problems.filter(({ severity, place }) => severity === 'error' && !besideCatalog(place?.file));
  if (!catalog || errors.length > 0) {
    sayProblems(io.err, io, errors, sources.folder.path);
    return EXIT.fault;
  }
  const gtin = given.values.get('gtin')?.[0];
  const mistyped = gtin === undefined ? null : notGtin(gtin);
  if (mistyped) return sayFaults(io, [mistyped]);
  const all = RECORDS[kind]?.(catalog) ?? [];
  const records =
    gtin === undefined ? all : all.filter(({ sku }) => sku !== undefined && sku === skuBehind(catalog, kind, gtin));
  if (format.value === 'json') io.out(asJson({ kind, records }));
  else {
    const [{ recordTable }, { asText, pageWidth }] = await Promise.all([
      import('../report/record-table.ts'),
      import('../report/layout.ts'),
    ]);
    io.out(asText(recordTable({ width: pageWidth(io.columns), paint: io.paintOut }, kind, records)));
  }
  return EXIT.yes;
}

/** Stock and shop have no say in what the catalogue holds. */
const besideCatalog = (file: string | undefined): boolean => file === 'stock.csv' || file === 'shop.yaml';

/** Why a text is no GTIN; null where it is one. */
const notGtin = (text: string): ListedFault | null =>
  !isGtinLike(text)
    ? {
        list: 'usage',
        code: 'bad-option-value',
        params: { option: '--gtin', found: text, expected: 'a GTIN: 8, 12, 13 or 14 digits, such as 2100001001926' },
      }
    : gtinCheckDigit(text.slice(0, -1)) === Number(text.at(-1))
      ? null
      : {
          list: 'faults',
          code: 'gtin-mistyped',
          params: { number: text, digit: String(gtinCheckDigit(text.slice(0, -1))) },
        };

/** The SKU of the record that goes by a GTIN: a supply goes by those of its packs. */
function skuBehind(catalog: Catalog, kind: string, gtin: string): string | null {
  const sku = listsOf(catalog).skuOfGtin(gtin);
  return kind === 'supplies' && sku !== null ? (catalog.packs.get(sku)?.supply ?? null) : sku;
}
