import type { RawBike } from './raw-bikes.ts';
import type { OneOrMany, RawAmount, RawMonths, RawRange, RawSerials, RawSlots, RawSource } from './raw-common.ts';

export type * from './raw-bikes.ts';
export type * from './raw-common.ts';

/*
 * Records as a catalogue file writes them, after they have passed catalog-schema/*.schema.json.
 * Quantities are still text with a unit; references are still names that may not exist.
 */

export interface RawMaker {
  readonly id: string;
  readonly name: string;
}
export interface RawDocument {
  readonly id: string;
  readonly title: string;
  readonly maker: string;
  readonly issue: string;
  readonly language?: string;
}
export type Use = 'bath' | 'damper' | 'grease' | 'threadlocker' | 'cleaner' | 'consumable';
export type Side = 'left' | 'right';
export interface RawSpecification {
  readonly id: string;
  readonly name: string;
  readonly use: Use;
  readonly unit: 'mL' | 'g' | 'piece';
  readonly viscosity?: { readonly least: string; readonly greatest: string };
  readonly note?: string;
  readonly source?: RawSource;
}
export interface RawGeneration {
  readonly id: string;
  readonly months?: RawMonths;
  readonly serials?: RawSerials;
  readonly dimensions?: RawDimensions;
  readonly note?: string;
  readonly source?: RawSource;
}
export interface RawSetting {
  readonly least: string;
  readonly greatest: string;
  readonly step: string;
}
export interface RawReplacement {
  readonly by: readonly { readonly sku: string; readonly quantity?: number }[];
  readonly families?: readonly string[];
  readonly generations?: readonly string[];
  readonly 'both-ways'?: boolean;
  readonly 'old-stock'?: 'usable' | 'not-usable';
  readonly note?: string;
  readonly source?: RawSource;
}
export interface RawNotice {
  readonly id: string;
  readonly title: string;
  readonly text: string;
  readonly families?: readonly string[];
  readonly chassis?: readonly string[];
  readonly parts?: readonly string[];
  readonly months?: RawMonths;
  readonly serials?: RawSerials;
  readonly effect: 'blocks' | 'flags';
  readonly source?: RawSource;
}
export interface RawPressureRange {
  readonly least?: string;
  readonly greatest?: string;
}
export interface RawSlot {
  readonly pieces?: number;
  readonly most?: number;
  readonly 'may-be-empty'?: boolean;
  readonly 'single-use'?: boolean;
  readonly wears?: boolean;
  readonly role?: string;
}
export type LegFunction = 'spring' | 'damper' | 'both' | 'none';
export type TravelSetBy = 'cartridge' | 'travel-spacers' | 'two-position' | 'fixed';
export type RawDimensions = Readonly<Record<string, string>>;
export type RawWords = Readonly<Record<string, string>>;
export interface RawFamily {
  readonly id: string;
  readonly maker: string;
  readonly name: string;
  readonly legs: { readonly left: LegFunction; readonly right: LegFunction };
  readonly 'travel-set-by': TravelSetBy;
  readonly 'travel-end': 'extended' | 'compressed';
  readonly dimensions?: RawDimensions;
  readonly interfaces?: RawWords;
  readonly crown?: 'single' | 'dual';
  readonly settings?: Readonly<Record<string, RawSetting>>;
  readonly generations?: readonly RawGeneration[];
  readonly rated?: { readonly 'motor-assisted'?: boolean; readonly category?: number };
  readonly slots: Readonly<Record<string, RawSlot>>;
  readonly complete?: readonly string[];
  readonly keeps?: readonly string[];
  readonly source?: RawSource;
}
export interface RawDose {
  readonly specification: string;
  readonly amount?: RawAmount;
  readonly left?: RawAmount;
  readonly right?: RawAmount;
}
export type RawDoses = Readonly<Record<string, RawDose>>;
export interface RawBuild {
  readonly travel: string;
  readonly usual?: boolean;
  readonly generations?: readonly string[];
  readonly settings?: Readonly<Record<string, string>>;
  readonly slots: RawSlots;
  readonly note?: string;
  readonly source?: RawSource;
}
export interface RawChassis {
  readonly id: string;
  readonly family: string;
  readonly name: string;
  readonly generations?: readonly string[];
  readonly 'tyre-room'?: { readonly crown?: string; readonly arch?: string; readonly width?: string };
  readonly wheel: number;
  readonly takes?: readonly number[];
  readonly axle: { readonly standard: string; readonly spacing?: string; readonly 'rotor-plane'?: string };
  readonly offset?: string;
  readonly steerer?: {
    readonly kind: 'straight' | 'tapered';
    readonly top?: string;
    readonly 'crown-race'?: string;
    readonly length?: string;
    readonly material?: string;
  };
  readonly brake?: { readonly mount: string; readonly native?: string; readonly greatest?: string };
  readonly travel: { readonly least?: string; readonly greatest?: string };
  readonly 'axle-to-crown'?: {
    readonly compressed?: string;
    readonly extended?: string;
    readonly measured: 'along-steerer' | 'straight';
  };
  readonly dimensions?: RawDimensions;
  readonly interfaces?: RawWords;
  readonly doses?: RawDoses;
  readonly upper: string;
  readonly lowers: string;
  readonly fitted?: RawSlots;
  readonly builds: readonly RawBuild[];
  readonly source?: RawSource;
}
export interface RawSpacerCount {
  readonly travel?: string;
  readonly standard?: number;
  readonly greatest?: number;
}
export interface RawClause {
  readonly family: string;
  readonly chassis?: OneOrMany<string>;
  readonly wheel?: OneOrMany<number>;
  readonly axle?: OneOrMany<string>;
  readonly generations?: OneOrMany<string>;
  readonly months?: RawMonths;
  readonly serials?: RawSerials;
  readonly limits?: RawRange;
  readonly not?: boolean;
  readonly reason?: string;
  readonly travel?: string;
  readonly travels?: readonly string[];
  readonly 'positive-volume'?: string;
  readonly 'volume-spacers'?: RawSpacerCount | readonly RawSpacerCount[];
  readonly source?: RawSource;
}
export interface RawNeed {
  readonly slot?: string;
  readonly 'any-of'?: readonly string[];
  readonly sku?: string;
  readonly quantity?: number;
  readonly 'with-renewal'?: boolean;
  readonly reason?: string;
}
export interface RawExclude {
  readonly sku?: string;
  readonly slot?: string;
  readonly reason: string;
}
export interface RawNumbers {
  readonly gtin?: string;
  readonly maker?: string;
  readonly marking?: string;
  readonly shop?: string;
}
export interface RawAir {
  readonly 'positive-volume'?: string;
  readonly 'negative-volume'?: string;
  readonly 'equalises-at'?: string;
  readonly 'negative-pressure'?: string;
  readonly pressure?: RawPressureRange;
  readonly chart?: readonly {
    readonly from: string;
    readonly to: string;
    readonly least: string;
    readonly greatest: string;
  }[];
}
export interface RawPart {
  readonly sku: string;
  readonly maker: string;
  readonly name: string;
  readonly role: string;
  readonly numbers?: RawNumbers;
  readonly dimensions?: RawDimensions;
  readonly interfaces?: RawWords;
  readonly traits?: RawWords;
  readonly fits?: readonly RawClause[];
  readonly needs?: readonly RawNeed[];
  readonly excludes?: readonly RawExclude[];
  readonly doses?: RawDoses;
  readonly rate?: string;
  readonly volume?: string;
  readonly air?: RawAir;
  readonly 'replaced-by'?: readonly RawReplacement[];
  readonly mass?: string;
  readonly price?: string | number;
  readonly pack?: number;
  readonly source?: RawSource;
}
export interface RawKit {
  readonly 'replaced-by'?: readonly RawReplacement[];
  readonly sku: string;
  readonly maker: string;
  readonly name: string;
  readonly numbers?: RawNumbers;
  readonly contents: readonly { readonly sku: string; readonly quantity?: number; readonly amount?: RawAmount }[];
  readonly price?: string | number;
  readonly source?: RawSource;
}
export interface RawSupply {
  readonly sku: string;
  readonly maker: string;
  readonly name: string;
  readonly use: Use;
  readonly unit: 'mL' | 'g' | 'piece';
  readonly meets?: readonly string[];
  readonly viscosity?: { readonly 'at-40'?: string; readonly 'at-100'?: string };
  readonly packs: readonly {
    readonly sku: string;
    readonly size: RawAmount;
    readonly price?: string | number;
    readonly numbers?: RawNumbers;
  }[];
  readonly hazard?: string;
  readonly source?: RawSource;
}
export interface RawTool {
  readonly id: string;
  readonly name: string;
  readonly size?: string;
  readonly torque?: { readonly least: string; readonly greatest: string };
  readonly bores?: { readonly least: string; readonly greatest: string };
  readonly 'across-flats'?: string;
  readonly maker?: string;
  readonly price?: string | number;
  readonly source?: RawSource;
}
export interface RawUse {
  readonly specification?: string;
  readonly amount?: RawAmount;
  readonly dose?: string;
  readonly of?: string;
  readonly side?: Side;
  readonly note?: string;
}
export interface RawFastener {
  readonly name: string;
  readonly side?: Side;
  readonly thread?: string;
  readonly head?: 'cap-screw';
  readonly tool?: string;
  readonly torque: string;
  readonly state?: string;
  readonly position?: string;
  readonly count?: number;
}
export interface RawLook {
  readonly look: string;
  readonly if: string;
  readonly then: string;
  readonly adds?: readonly string[];
}
export interface RawOperation {
  readonly id: string;
  readonly families: readonly string[];
  readonly order: number;
  readonly title: string;
  readonly text?: string;
  readonly changes?: readonly string[];
  readonly requires?: readonly string[];
  readonly after?: readonly string[];
  readonly 'closed-by'?: string;
  readonly renews?: readonly {
    readonly slot: string;
    readonly when: 'always' | 'with-service';
    readonly every?: string;
  }[];
  readonly uses?: readonly RawUse[];
  readonly drains?: readonly RawUse[];
  readonly fasteners?: readonly RawFastener[];
  readonly 'retaining-rings'?: readonly { readonly bore: string; readonly tool?: string }[];
  readonly tools?: readonly string[];
  readonly minutes: string;
  readonly looks?: readonly RawLook[];
  readonly cautions?: readonly string[];
  readonly skill?: string;
  readonly source?: RawSource;
}
export interface RawService {
  readonly id: string;
  readonly families: readonly string[];
  readonly name: string;
  readonly operations: readonly string[];
  readonly every?: string;
  readonly onto?: boolean;
  readonly source?: RawSource;
}
export interface RawShop {
  readonly name: string;
  readonly currency: string;
  readonly labour: { readonly rate: string | number; readonly flat?: Readonly<Record<string, string | number>> };
  readonly tax?: { readonly rate: number; readonly included: boolean };
  readonly tools?: readonly string[];
  readonly bulk?: readonly { readonly supply: string; readonly price?: string | number; readonly per: RawAmount }[];
}
export interface RawHead {
  readonly name: string;
  readonly currency: string;
  readonly note?: string;
}
/** The record kinds in the order in which they are linked, with the key that names a record of each. */
export const RECORD_KINDS = {
  makers: 'id',
  documents: 'id',
  specifications: 'id',
  families: 'id',
  chassis: 'id',
  parts: 'sku',
  kits: 'sku',
  supplies: 'sku',
  tools: 'id',
  operations: 'id',
  services: 'id',
  bikes: 'id',
  notices: 'id',
} as const;
export type RecordKind = keyof typeof RECORD_KINDS;
export interface RawRecords {
  readonly makers: RawMaker;
  readonly documents: RawDocument;
  readonly specifications: RawSpecification;
  readonly families: RawFamily;
  readonly chassis: RawChassis;
  readonly parts: RawPart;
  readonly kits: RawKit;
  readonly supplies: RawSupply;
  readonly tools: RawTool;
  readonly operations: RawOperation;
  readonly services: RawService;
  readonly bikes: RawBike;
  readonly notices: RawNotice;
}
/** One file's content by top-level key. */
export type RawFile = { readonly [Kind in RecordKind]?: readonly RawRecords[Kind][] } & { readonly catalog?: RawHead };
