/*
 * What records of every kind are written with.
 */

export type OneOrMany<T> = T | readonly T[];
export type RawAmount = string | number;
export type RawContent = string | null | { readonly sku: string; readonly quantity?: number };
export type RawSlots = Readonly<Record<string, RawContent>>;
export interface RawSource {
  readonly document: string;
  readonly page?: string | number;
}
export interface RawMonths {
  readonly from?: string;
  readonly to?: string;
}
export interface RawSerials {
  readonly from: string;
  readonly to: string;
}
export interface RawRange {
  readonly least?: string;
  readonly greatest?: string;
}
