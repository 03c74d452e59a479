import { parse } from 'csv-parse/sync';
import { parseMoney } from '../quantity/index.ts';
import { canonicalHash } from './hash.ts';
import type { Catalog, Stock, StockRow } from './linked.ts';
import { nearest } from './nearest.ts';
import type { Outcome, Place, Problem, ProblemParams } from './problems.ts';

/** Columns of a stock file, in the order in which they are usually written. */
export const STOCK_COLUMNS = ['sku', 'on_hand', 'reserved', 'state', 'lead_days', 'price', 'currency', 'bin'] as const;
type Column = (typeof STOCK_COLUMNS)[number];
type Row = Readonly<Record<Column, string>>;
interface CsvRow {
  readonly record: Record<string, string>;
  readonly info: { readonly lines: number };
}

export const NO_STOCK: Stock = { hash: canonicalHash(null), rows: new Map() };

/** Reads a stock file (CSV with a header). Every fault is a problem at its line; a row with a fault is left out. */
export function readStock(name: string, text: string, catalog: Catalog): Outcome<Stock> {
  const problems: Problem[] = [];
  const lines = text.split(/\r?\n/);
  const place = (line: number): Place => ({ file: name, line, column: 1, excerpt: lines[line - 1] ?? '' });
  const rows = parseRows(text, lines, (params, line) =>
    problems.push({ severity: 'error', code: 'stock-not-csv', params, place: place(line) }),
  );
  const header = rows[0] ? Object.keys(rows[0].record) : headerOf(lines);
  if (problems.length === 0 && !(['sku', 'on_hand'] as const).every((column) => header.includes(column))) {
    problems.push({
      severity: 'error',
      code: 'stock-column',
      params: { columns: [...STOCK_COLUMNS], found: header },
      place: place(Math.max(1, lines.findIndex(isContent) + 1)),
    });
    return { value: NO_STOCK, problems };
  }
  const stock = new Map<string, StockRow>();
  const firstLine = new Map<string, number>();
  for (const { record, info } of rows) {
    const row = Object.fromEntries(STOCK_COLUMNS.map((column) => [column, (record[column] ?? '').trim()])) as Row;
    const at = place(info.lines);
    const other = firstLine.get(row.sku);
    if (other !== undefined)
      problems.push({ severity: 'error', code: 'stock-duplicate', params: { sku: row.sku, other }, place: at });
    else {
      firstLine.set(row.sku, info.lines);
      const read = readRow(row, catalog, (problem) => problems.push({ ...problem, place: at }));
      if (read) stock.set(row.sku, read);
    }
  }
  const hash = canonicalHash([...stock.values()].sort((a, b) => (a.sku < b.sku ? -1 : 1)));
  return { value: { hash, rows: stock }, problems };
}

const isContent = (line: string): boolean => line.trim() !== '' && !line.startsWith('#');

/** The header of a file that has no rows. */
function headerOf(lines: readonly string[]): string[] {
  const line = lines.find(isContent);
  return line === undefined
    ? []
    : line
        .replace('\uFEFF', '')
        .split(',')
        .map((cell) => cell.trim());
}

function parseRows(
  text: string,
  lines: readonly string[],
  fail: (params: ProblemParams['stock-not-csv'], line: number) => void,
): CsvRow[] {
  try {
    return parse(text, {
      columns: true,
      info: true,
      bom: true,
      skip_empty_lines: true,
      trim: true,
      comment: '#',
      comment_no_infix: true,
    }) as unknown as CsvRow[];
  } catch (error) {
    fail(...csvFault(error as object, lines));
    return [];
  }
}

/** What is wrong with a file that is no CSV, and in which line: a quote in the one that opens it, since the parser only notices at the end. */
function csvFault(
  { code, lines: line = 1, record }: { readonly code?: string; readonly lines?: number; readonly record?: unknown },
  lines: readonly string[],
): [ProblemParams['stock-not-csv'], number] {
  const fault = code === 'CSV_RECORD_INCONSISTENT_COLUMNS' ? 'fields' : 'quote';
  const open = lines.findIndex((one) => one.split('"').length % 2 === 0);
  return [
    { fault, expected: headerOf(lines).length, found: Array.isArray(record) ? record.length : 0 },
    fault === 'fields' || open < 0 ? line : open + 1,
  ];
}

type Report = (problem: Omit<Problem, 'place'>) => void;

function readRow(row: Row, catalog: Catalog, report: Report): StockRow | null {
  let sound = true;
  const wrong = (column: Column, expected: string): null => {
    sound = false;
    report({ severity: 'error', code: 'stock-value', params: { column, found: row[column], expected } });
    return null;
  };
  const count = (column: Column): number =>
    row[column] === ''
      ? 0
      : /^[0-9]{1,9}$/.test(row[column])
        ? Number(row[column])
        : (wrong(column, 'a whole number, 0 or more') ?? 0);
  const price =
    row.price === ''
      ? null
      : (parseMoney(row.price, catalog.digits) ??
        wrong('price', `a price in ${catalog.currency} with a point, like 12.50`));
  if (price === 0) report({ severity: 'warning', code: 'price-zero', params: {} });
  const lead =
    row.lead_days === ''
      ? null
      : row.lead_days === 'unknown'
        ? 'unknown'
        : /^[0-9]{1,4}$/.test(row.lead_days)
          ? Number(row.lead_days)
          : wrong('lead_days', 'a whole number of days, "unknown", or nothing');
  if (row.state !== '' && row.state !== 'active' && row.state !== 'discontinued')
    wrong('state', 'active or discontinued');
  if (row.currency !== '' && row.currency !== catalog.currency) wrong('currency', catalog.currency);
  if (!known(row.sku, catalog)) {
    report({
      severity: 'warning',
      code: 'stock-unknown-sku',
      params: { sku: row.sku, nearest: nearest(row.sku, skus(catalog)) },
    });
    sound = false;
  }
  const read: StockRow = {
    sku: row.sku,
    onHand: count('on_hand'),
    reserved: count('reserved'),
    discontinued: row.state === 'discontinued',
    lead,
    price,
    bin: row.bin === '' ? null : row.bin,
  };
  return sound ? read : null;
}

const known = (sku: string, catalog: Catalog): boolean =>
  catalog.parts.has(sku) || catalog.kits.has(sku) || catalog.packs.has(sku);
const skus = (catalog: Catalog): string[] => [...catalog.parts.keys(), ...catalog.kits.keys(), ...catalog.packs.keys()];
