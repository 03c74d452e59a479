import type { Micrometres } from '../quantity/index.ts';

/*
 * What records of every kind are made of.
 */

/** Where a fact stands. `record` is its path in the catalogue: kind/id, then the part within the record. */
export interface SourceRef {
  readonly document: string | null;
  readonly page: string | null;
  readonly record: string;
}
export type Dimensions = ReadonlyMap<string, Micrometres>;
export type Words = ReadonlyMap<string, string>;
/** What a slot holds: so many of one SKU, or nothing. */
export type Content = { readonly sku: string; readonly quantity: number } | null;
/** Months of production as YYYY-MM, both included; null: open. */
export interface Months {
  readonly from: string | null;
  readonly to: string | null;
}
/** A range of serial numbers: the same letters, numbers compared as numbers. */
export interface Serials {
  readonly letters: string;
  readonly from: number;
  readonly to: number;
}
export interface Replacement {
  readonly by: readonly { readonly sku: string; readonly quantity: number }[];
  readonly families: readonly string[] | null;
  readonly generations: readonly string[] | null;
  readonly bothWays: boolean;
  readonly oldStockUsable: boolean;
  readonly note: string | null;
  readonly source: SourceRef;
}
export interface Range {
  readonly least: Micrometres | null;
  readonly greatest: Micrometres | null;
}
