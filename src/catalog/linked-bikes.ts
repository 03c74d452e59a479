import type { Micrometres, Millidegrees } from '../quantity/index.ts';
import type { Content, Months, Range, SourceRef } from './linked-common.ts';

/*
 * Bikes: the fork a bike left the works with, its frame, its limits.
 */

/** A frame as its maker draws it, with the fork it left the works with unless it says otherwise. */
export interface Geometry {
  readonly sizes: readonly string[] | null;
  readonly headAngle: Millidegrees;
  readonly seatAngle: Millidegrees | null;
  readonly wheelbase: Micrometres;
  /** Distance from the rear axle to the bottom bracket, and how far that is below. */
  readonly bottomBracket: { readonly chainstay: Micrometres; readonly drop: Micrometres } | null;
  readonly reachAndStack: { readonly reach: Micrometres; readonly stack: Micrometres } | null;
  readonly axleToCrown: { readonly length: Micrometres; readonly measured: 'along-steerer' | 'straight' } | null;
  readonly offset: Micrometres | null;
  readonly source: SourceRef;
}
export interface BikeLimit {
  readonly wheel: number | null;
  readonly sizes: readonly string[] | null;
  readonly crown: 'single' | 'dual' | null;
  readonly travel: Range | null;
  readonly axleToCrown: (Range & { readonly measured: 'along-steerer' | 'straight' }) | null;
  readonly source: SourceRef;
}
export interface BikeFork {
  readonly sizes: readonly string[] | null;
  readonly months: Months | null;
  readonly chassis: string;
  readonly travel: Micrometres;
  readonly with: ReadonlyMap<string, Content>;
  readonly steererLength: Micrometres | null;
  readonly source: SourceRef;
}
/** A tyre by its ISO 5775 designation: width and bead-seat diameter in mm. */
export interface Tyre {
  readonly designation: string;
  readonly width: number;
  readonly bead: number;
}
export interface Bike {
  readonly id: string;
  readonly maker: string;
  readonly name: string;
  readonly sizes: readonly string[];
  readonly forks: readonly BikeFork[];
  readonly wheel: number;
  readonly tyre: Tyre | null;
  /** The tyre at the back; that in front where the record does not tell them apart. */
  readonly rearTyre: Tyre | null;
  readonly geometry: readonly Geometry[];
  readonly motorAssisted: boolean | null;
  readonly category: number | null;
  readonly dualCrown: boolean | null;
  readonly headTube: {
    readonly upper: string | null;
    readonly lower: string | null;
    /** By size; the key '' holds for every size. */
    readonly length: ReadonlyMap<string, Micrometres>;
    readonly upperStack: Micrometres | null;
    readonly stemClamp: Micrometres | null;
  };
  readonly slots: ReadonlyMap<string, Content>;
  readonly limits: readonly BikeLimit[];
  readonly source: SourceRef;
}
