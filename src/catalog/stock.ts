import { parse } from 'csv-parse/sync';
import { parseMoney } from '../quantity/index.ts';
import { canonicalHash } from './hash.ts';
import type { Catalog, Stock, StockRow } from './linked.ts';
import { nearest } from './nearest.ts';
import type { Outcome, Place, Problem } from './problems.ts';

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
  const rows = parseRows(text, (reason, line) =>
    problems.push({ severity: 'error', code: 'not-readable', params: { reason }, place: place(line) }),
  );
  const header = rows[0] ? Object.keys(rows[0].record) : headerOf(text);
  if (
    header.length > 0 &&
    problems.length === 0 &&
    !(['sku', 'on_hand'] as const).every((column) => header.includes(column))
  ) {
    problems.push({
      severity: 'error',
      code: 'stock-column',
      params: { columns: [...STOCK_COLUMNS], found: header },
      place: place(1),
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

/** The header of a file that has no rows. */
function headerOf(text: string): string[] {
  const line = text.split(/\r?\n/).find((one) => one.trim() !== '' && !one.startsWith('#'));
  return line === undefined
    ? []
    : line
        .replace('\uFEFF', '')
        .split(',')
        .map((cell) => cell.trim());
}

function parseRows(text: string, fail: (reason: string, line: number) => void): CsvRow[] {
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
    const line = (error as { lines?: number }).lines ?? 1;
    fail(error instanceof Error ? error.message : 'not CSV', line);
    return [];
  }
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
        : (wrong(column, 'a whole number') ?? 0);
  const price =
    row.price === ''
      ? null
      : (parseMoney(row.price, catalog.digits) ?? wrong('price', `a price in ${catalog.currency}`));
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
