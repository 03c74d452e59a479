import { parse } from 'csv-parse/sync';
import { parse as parseYaml } from 'yaml';
import { type Book, openBook } from '../oracle/index.ts';
import type { StockRow } from '../oracle/records.ts';
import type { Loaded } from '../support/demo.ts';

/** A loaded catalogue folder as the oracle reads it: records as they stand in the files. */
export function bookOf(loaded: Loaded): Book {
  const rows: StockRow[] | null =
    loaded.stockText === null
      ? null
      : parse(loaded.stockText, { columns: true, comment: '#', skip_empty_lines: true, trim: true });
  return openBook(loaded.raw, rows, loaded.shopText === null ? null : parseYaml(loaded.shopText));
}
