import type { RawMonths, RawRange, RawSlots, RawSource } from './raw-common.ts';

/*
 * Bikes as a catalogue file writes them.
 */

export interface RawGeometry {
  readonly sizes?: readonly string[];
  readonly 'head-angle': string;
  readonly 'seat-angle'?: string;
  readonly wheelbase: string;
  readonly chainstay?: string;
  readonly 'bottom-bracket-drop'?: string;
  readonly reach?: string;
  readonly stack?: string;
  readonly 'axle-to-crown'?: { readonly length: string; readonly measured: 'along-steerer' | 'straight' };
  readonly offset?: string;
  readonly source?: RawSource;
}
export interface RawBikeLimit {
  readonly wheel?: number;
  readonly sizes?: readonly string[];
  readonly crown?: 'single' | 'dual';
  readonly travel?: RawRange;
  readonly 'axle-to-crown'?: RawRange & { readonly measured: 'along-steerer' | 'straight' };
  readonly source?: RawSource;
}
export interface RawBikeFork {
  readonly sizes?: readonly string[];
  readonly months?: RawMonths;
  readonly chassis: string;
  readonly travel: string;
  readonly with?: RawSlots;
  readonly 'steerer-length'?: string;
  readonly source?: RawSource;
}
export interface RawBike {
  readonly id: string;
  readonly maker: string;
  readonly name: string;
  readonly sizes?: readonly string[];
  readonly forks?: readonly RawBikeFork[];
  readonly wheel: number;
  readonly tyre?: string;
  readonly 'rear-tyre'?: string;
  readonly geometry?: readonly RawGeometry[];
  readonly 'motor-assisted'?: boolean;
  readonly category?: number;
  readonly 'dual-crown'?: boolean;
  readonly 'head-tube'?: {
    readonly upper?: string;
    readonly lower?: string;
    readonly length?: string | Readonly<Record<string, string>>;
    readonly 'upper-stack'?: string;
    readonly 'stem-clamp'?: string;
  };
  readonly slots?: RawSlots;
  readonly limits?: readonly RawBikeLimit[];
  readonly source?: RawSource;
}
