import type { SourceRef } from '../catalog/index.ts';

export type ParamValue = string | number | boolean | null | readonly string[];
export type Params = Readonly<Record<string, ParamValue>>;

/** What a wish is about, so that a way out can give it up: a want by its name, or a kept trait. */
export type Wish =
  | { readonly kind: 'travel' | 'wheel' | 'spacers' | 'coil-rate' | 'axle-to-crown' | 'offset' | 'onto' }
  | { readonly kind: 'use' | 'keep' | 'renew' | 'service' | 'trait'; readonly name: string }
  | { readonly kind: 'kept'; readonly trait: string };

/** Someone who has a say: a want, a kept trait, a fact, a rule, a complete listing, the stock. Codes are worded in report. */
export interface Member {
  readonly kind: 'want' | 'kept' | 'now' | 'rule' | 'listing' | 'stock' | 'notice';
  readonly code: string;
  readonly params: Params;
  readonly source: SourceRef | null;
  /** What to give up to be rid of it; null for what nobody can give up. */
  readonly wish: Wish | null;
}
