import type { Micrometres, MillinewtonMetres, Minor, Minutes } from '../quantity/index.ts';
import type { SourceRef } from './linked-common.ts';
import type { Side } from './raw.ts';

/*
 * Work at the bench: operations, services, tools.
 */

export interface Tool {
  readonly id: string;
  readonly name: string;
  readonly size: string | null;
  /** Of a torque tool that is set: its lowest mark and its greatest torque. */
  readonly torque: { readonly least: MillinewtonMetres; readonly greatest: MillinewtonMetres } | null;
  /** Of inside pliers for retaining rings: the bores that they are for. */
  readonly bores: { readonly least: Micrometres; readonly greatest: Micrometres } | null;
  /** Of a hex key: its width across flats. */
  readonly acrossFlats: Micrometres | null;
  readonly price: Minor | null;
}
export type SupplyUse =
  | {
      readonly kind: 'amount';
      readonly specification: string;
      readonly amount: number;
      readonly side: Side | null;
      readonly note: string | null;
    }
  | {
      readonly kind: 'dose';
      readonly dose: string;
      readonly of: string;
      readonly side: Side | null;
      readonly note: string | null;
    };
export interface Fastener {
  readonly name: string;
  readonly side: Side | null;
  readonly thread: string | null;
  /** A cap screw to ISO 4762; null where nothing is said of its head. */
  readonly head: 'cap-screw' | null;
  readonly tool: string | null;
  readonly torque: MillinewtonMetres;
  readonly state: string | null;
  readonly position: string | null;
  readonly count: number;
}
/** An inside retaining ring: the bore that it sits in, and the pliers that the catalogue names for it. */
export interface BoreRing {
  readonly bore: Micrometres;
  readonly tool: string | null;
}
export interface Look {
  readonly look: string;
  readonly if: string;
  readonly then: string;
  readonly adds: readonly string[];
}
export interface Renewal {
  readonly slot: string;
  readonly when: 'always' | 'with-service';
  readonly every: Minutes | null;
}
export interface Operation {
  readonly id: string;
  readonly families: readonly string[];
  readonly order: number;
  readonly title: string;
  readonly text: string;
  readonly changes: readonly string[];
  readonly requires: readonly string[];
  readonly after: readonly string[];
  readonly closedBy: string | null;
  readonly renews: readonly Renewal[];
  readonly uses: readonly SupplyUse[];
  readonly drains: readonly SupplyUse[];
  readonly fasteners: readonly Fastener[];
  readonly retainingRings: readonly BoreRing[];
  readonly tools: readonly string[];
  readonly minutes: Minutes;
  readonly looks: readonly Look[];
  readonly cautions: readonly string[];
  readonly skill: string | null;
  readonly source: SourceRef;
}
export interface Service {
  readonly id: string;
  readonly families: readonly string[];
  readonly name: string;
  readonly operations: readonly string[];
  readonly every: Minutes | null;
  /** True where it puts the fork onto a bike. */
  readonly onto: boolean;
}
