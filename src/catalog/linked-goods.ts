import type { MilliSquareMillimetresPerSecond, Minor, SupplyUnit } from '../quantity/index.ts';
import type { Replacement, SourceRef } from './linked-common.ts';
import type { RawNumbers, Use } from './raw.ts';

/*
 * What is sold beside single parts, and what the shop has of it.
 */

export interface Kit {
  readonly replacedBy: readonly Replacement[];
  readonly sku: string;
  readonly maker: string;
  readonly name: string;
  readonly numbers: RawNumbers;
  readonly parts: readonly { readonly sku: string; readonly quantity: number }[];
  readonly supplies: readonly { readonly sku: string; readonly amount: number }[];
  readonly price: Minor | null;
  readonly source: SourceRef;
}
export interface Pack {
  readonly sku: string;
  readonly supply: string;
  readonly numbers: RawNumbers;
  readonly size: number;
  readonly price: Minor | null;
}
export interface Supply {
  readonly sku: string;
  readonly maker: string;
  readonly name: string;
  readonly use: Use;
  readonly unit: SupplyUnit;
  readonly meets: readonly string[];
  readonly viscosity: {
    readonly at40: MilliSquareMillimetresPerSecond | null;
    readonly at100: MilliSquareMillimetresPerSecond | null;
  };
  readonly packs: readonly string[];
  readonly hazard: string | null;
  readonly source: SourceRef;
}
/** A row of the stock file. `lead` null: no more than is there; 'unknown': any number, no known date. */
export interface StockRow {
  readonly sku: string;
  readonly onHand: number;
  readonly reserved: number;
  readonly discontinued: boolean;
  readonly lead: number | 'unknown' | null;
  readonly price: Minor | null;
  readonly bin: string | null;
}
export interface Stock {
  readonly hash: string;
  readonly rows: ReadonlyMap<string, StockRow>;
}
export interface Shop {
  readonly hash: string;
  readonly name: string;
  /** Price of one hour. */
  readonly rate: Minor;
  readonly flat: ReadonlyMap<string, Minor>;
  readonly tax: { readonly rate: number; readonly included: boolean } | null;
  /** Tools at hand; null where the shop file does not say. */
  readonly tools: ReadonlySet<string> | null;
  readonly bulk: ReadonlyMap<string, { readonly price: Minor | null; readonly per: number }>;
}
