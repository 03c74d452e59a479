/** Codes of the answer to "does this part fit that fork": what decided, and what it hangs on. */
export interface FitParams {
  readonly clause: { readonly part: string; readonly chassis: string };
  readonly silent: { readonly part: string; readonly role: string; readonly family: string };
  readonly denied: { readonly part: string; readonly chassis: string; readonly reason: string };
  readonly 'dimension-contradicts': {
    readonly part: string;
    readonly measure: string;
    readonly own: string;
    readonly neighbour: string;
    readonly other: string;
    readonly relation: string;
  };
  readonly 'other-generation': { readonly part: string; readonly generations: readonly string[] };
  readonly 'not-listed': { readonly part: string; readonly role: string; readonly family: string };
  readonly 'no-such-slot': { readonly role: string; readonly family: string };
  readonly 'body-listed': { readonly part: string; readonly role: string; readonly chassis: string };
  readonly 'body-not-listed': { readonly part: string; readonly role: string; readonly chassis: string };
  readonly 'condition-generation': { readonly generations: readonly string[]; readonly not: boolean };
  readonly 'condition-months': { readonly from: string | null; readonly to: string | null; readonly not: boolean };
  readonly 'condition-serials': { readonly from: string; readonly to: string; readonly not: boolean };
  readonly 'condition-dimension': { readonly measure: string; readonly own: string; readonly other: string };
  readonly 'condition-needs-slot': {
    readonly slot: string;
    readonly anyOf: readonly string[];
    readonly reason: string | null;
  };
  readonly 'condition-needs-part': { readonly sku: string; readonly quantity: number; readonly reason: string | null };
  readonly 'condition-excludes': { readonly other: string; readonly reason: string };
  readonly 'condition-neighbour': {
    readonly agreement: string;
    readonly neighbour: string;
    readonly measure: string;
    readonly value: string;
    /** Parts that have it and may be in this fork. */
    readonly fitting: readonly string[];
  };
  readonly 'condition-replaced': { readonly by: readonly string[]; readonly usable: boolean };
}
