import type {
  Microlitres,
  Micrometres,
  Milligrams,
  MilliSquareMillimetresPerSecond,
  Minor,
  NewtonsPerMetre,
  Pascals,
  SupplyUnit,
} from '../quantity/index.ts';
import type { Bike } from './linked-bikes.ts';
import type { Content, Dimensions, Months, Range, Replacement, Serials, SourceRef, Words } from './linked-common.ts';
import type { Kit, Pack, Supply } from './linked-goods.ts';
import type { Operation, Service, Tool } from './linked-work.ts';
import type { LegFunction, RawNumbers, TravelSetBy, Use } from './raw.ts';

export type * from './linked-bikes.ts';
export type * from './linked-common.ts';
export type * from './linked-goods.ts';
export type * from './linked-work.ts';

/**
 * The linked catalogue: plain data (maps, arrays, numbers, texts; no class instances), every reference checked, every
 * quantity a whole number of its held unit. Immutable; what a cache stores and a worker receives.
 */
export interface Catalog {
  readonly name: string;
  readonly currency: string;
  /** Digits behind the point of the currency. */
  readonly digits: number;
  /** Hash over canonical content: comments, order of records and file names do not count. */
  readonly hash: string;
  readonly makers: ReadonlyMap<string, Maker>;
  readonly documents: ReadonlyMap<string, Document>;
  readonly specifications: ReadonlyMap<string, Specification>;
  readonly families: ReadonlyMap<string, Family>;
  readonly chassis: ReadonlyMap<string, Chassis>;
  readonly parts: ReadonlyMap<string, Part>;
  readonly kits: ReadonlyMap<string, Kit>;
  readonly supplies: ReadonlyMap<string, Supply>;
  /** Packs of supplies by their own SKU. */
  readonly packs: ReadonlyMap<string, Pack>;
  readonly tools: ReadonlyMap<string, Tool>;
  readonly operations: ReadonlyMap<string, Operation>;
  readonly services: ReadonlyMap<string, Service>;
  readonly bikes: ReadonlyMap<string, Bike>;
  readonly notices: ReadonlyMap<string, Notice>;
  /** file:line by record path, for people; no answer depends on it. */
  readonly places: ReadonlyMap<string, string>;
}

export interface Maker {
  readonly id: string;
  readonly name: string;
}
export interface Document {
  readonly id: string;
  readonly title: string;
  readonly maker: string;
  readonly issue: string;
}
export interface Specification {
  readonly id: string;
  readonly name: string;
  readonly use: Use;
  readonly unit: SupplyUnit;
  /** Between which kinematic viscosities an oil of it lies at 40 °C; null where nobody says. */
  readonly viscosity: {
    readonly least: MilliSquareMillimetresPerSecond;
    readonly greatest: MilliSquareMillimetresPerSecond;
  } | null;
  readonly note: string | null;
  readonly source: SourceRef;
}
export interface Slot {
  readonly name: string;
  readonly role: string;
  /** Pieces when filled; for a spacer slot the greatest count. */
  readonly pieces: number;
  /** True where any count from none to `pieces` is allowed. */
  readonly counted: boolean;
  readonly mayBeEmpty: boolean;
  readonly singleUse: boolean;
  readonly wears: boolean;
}
export interface Generation {
  readonly id: string;
  readonly months: Months | null;
  readonly serials: Serials | null;
  /** What differs from the family. */
  readonly dimensions: Dimensions;
  readonly note: string | null;
  readonly source: SourceRef;
}
/** A bounded number that is set and not bought, with its marks. */
export interface Setting {
  readonly name: string;
  readonly least: Micrometres;
  readonly greatest: Micrometres;
  readonly step: Micrometres;
}
export interface Notice {
  readonly id: string;
  readonly title: string;
  readonly text: string;
  readonly families: readonly string[] | null;
  readonly chassis: readonly string[] | null;
  readonly parts: readonly string[] | null;
  readonly months: Months | null;
  readonly serials: Serials | null;
  readonly blocks: boolean;
  readonly source: SourceRef;
}
export interface Family {
  readonly id: string;
  readonly maker: string;
  readonly name: string;
  readonly legs: { readonly left: LegFunction; readonly right: LegFunction };
  readonly travelSetBy: TravelSetBy;
  readonly travelEnd: 'extended' | 'compressed';
  readonly dimensions: Dimensions;
  readonly interfaces: Words;
  readonly crown: 'single' | 'dual';
  readonly settings: readonly Setting[];
  readonly generations: readonly Generation[];
  readonly rated: { readonly motorAssisted: boolean | null; readonly category: number | null };
  readonly slots: readonly Slot[];
  readonly complete: readonly string[];
  readonly keeps: readonly string[];
  readonly source: SourceRef;
}
/** An amount in microlitres, milligrams or pieces, by the specification's unit. */
export interface Dose {
  readonly specification: string;
  readonly amount: number | null;
  readonly left: number | null;
  readonly right: number | null;
}
export interface FactoryBuild {
  readonly travel: Micrometres;
  readonly usual: boolean;
  readonly generations: readonly string[] | null;
  readonly settings: ReadonlyMap<string, Micrometres>;
  /** Every slot of the family, `fitted` contents inherited. */
  readonly slots: ReadonlyMap<string, Content>;
  readonly note: string | null;
  readonly source: SourceRef;
}
export interface Chassis {
  readonly id: string;
  readonly family: string;
  readonly name: string;
  readonly generations: readonly string[] | null;
  readonly tyreRoom: {
    readonly crown: Micrometres | null;
    readonly arch: Micrometres | null;
    readonly width: Micrometres | null;
  };
  readonly wheel: number;
  readonly takes: readonly number[];
  readonly axle: {
    readonly standard: string;
    readonly spacing: Micrometres | null;
    readonly rotorPlane: Micrometres | null;
  };
  readonly offset: Micrometres | null;
  readonly steerer: {
    readonly kind: 'straight' | 'tapered';
    readonly top: Micrometres | null;
    readonly crownRace: Micrometres | null;
    readonly length: Micrometres | null;
    readonly material: string | null;
  } | null;
  readonly brake: {
    readonly mount: string;
    readonly native: Micrometres | null;
    readonly greatest: Micrometres | null;
  } | null;
  readonly travel: { readonly least: Micrometres | null; readonly greatest: Micrometres | null };
  readonly axleToCrown: {
    readonly end: 'compressed' | 'extended';
    readonly length: Micrometres;
    readonly measured: 'along-steerer' | 'straight';
  } | null;
  readonly dimensions: Dimensions;
  readonly interfaces: Words;
  readonly doses: ReadonlyMap<string, Dose>;
  readonly upper: string;
  readonly lowers: string;
  readonly builds: readonly FactoryBuild[];
  readonly source: SourceRef;
}
export interface SpacerCount {
  readonly travel: Micrometres | null;
  readonly standard: number | null;
  readonly greatest: number | null;
}
export interface Clause {
  readonly family: string;
  readonly chassis: readonly string[] | null;
  readonly wheel: readonly number[] | null;
  readonly axle: readonly string[] | null;
  readonly generations: readonly string[] | null;
  readonly months: Months | null;
  readonly serials: Serials | null;
  /** Travel that the part's maker allows there. */
  readonly limits: Range | null;
  readonly not: boolean;
  readonly reason: string | null;
  /** Travels a spring gives there, greatest first. */
  readonly travels: readonly Micrometres[];
  readonly volumeSpacers: readonly SpacerCount[];
  /** Positive chamber at full extension there, where it differs from the part's. */
  readonly positiveVolume: Microlitres | null;
  readonly source: SourceRef;
}
export type Need =
  | { readonly kind: 'slot'; readonly slot: string; readonly anyOf: readonly string[]; readonly reason: string | null }
  | {
      readonly kind: 'part';
      readonly sku: string;
      readonly quantity: number;
      /** Needed also where the part is renewed by the same number. */
      readonly withRenewal: boolean;
      readonly reason: string | null;
    };
export type Exclude =
  | { readonly kind: 'sku'; readonly sku: string; readonly reason: string }
  | { readonly kind: 'slot'; readonly slot: string; readonly reason: string };
/** An air spring's chambers at full extension and what its maker names; null: not known. */
export interface Air {
  readonly positiveVolume: Microlitres | null;
  readonly negativeVolume: Microlitres | null;
  /** Travel at which a port joins the chambers. */
  readonly equalisesAt: Micrometres | null;
  /** Of a negative chamber with a valve of its own. */
  readonly negativePressure: Pascals | null;
  readonly least: Pascals | null;
  readonly greatest: Pascals | null;
  /** The maker's chart by the mass of the rider with kit, both ends of a row included; empty: none. */
  readonly chart: readonly {
    readonly from: Milligrams;
    readonly to: Milligrams;
    readonly least: Pascals;
    readonly greatest: Pascals;
  }[];
}
export interface Part {
  readonly sku: string;
  readonly maker: string;
  readonly name: string;
  readonly role: string;
  readonly numbers: RawNumbers;
  readonly dimensions: Dimensions;
  readonly interfaces: Words;
  readonly traits: Words;
  readonly fits: readonly Clause[];
  readonly needs: readonly Need[];
  readonly excludes: readonly Exclude[];
  readonly doses: ReadonlyMap<string, Dose>;
  readonly rate: NewtonsPerMetre | null;
  /** Of a volume spacer: what one takes away from the chamber. */
  readonly volume: Microlitres | null;
  readonly air: Air | null;
  readonly replacedBy: readonly Replacement[];
  readonly mass: Milligrams | null;
  readonly price: Minor | null;
  readonly pack: number;
  readonly source: SourceRef;
}
