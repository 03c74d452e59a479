/**
 * Everything that can be wrong with files that people bring in: a closed list of codes, each with its parameters.
 * Words are put to them in report; here they are data with a place.
 */
export interface ProblemParams {
  // the file as text
  'not-readable': { readonly reason: string };
  'not-yaml': { readonly reason: string };
  'not-a-catalog-file': { readonly found: string };
  'empty-catalog': { readonly folder: string };
  'file-too-large': { readonly bytes: number; readonly limit: number };
  // the schema
  'unknown-key': { readonly key: string; readonly record: string; readonly nearest: readonly string[] };
  'missing-key': { readonly key: string; readonly record: string };
  'wrong-type': { readonly expected: string; readonly found: string };
  'not-one-of': { readonly found: string; readonly allowed: readonly string[] };
  'bad-value': { readonly rule: string; readonly found: string };
  // meaning
  'bad-quantity': {
    readonly found: string;
    readonly dimension: string;
    readonly fault: string;
    readonly units: string;
  };
  'bad-price': { readonly found: string; readonly currency: string };
  'bad-currency': { readonly found: string };
  'bad-gtin': { readonly found: string; readonly expected: string };
  'duplicate-id': { readonly id: string; readonly other: string };
  'unknown-reference': { readonly id: string; readonly kind: string; readonly nearest: readonly string[] };
  'head-missing': Record<never, never>;
  'head-twice': { readonly other: string };
  'unknown-slot': { readonly slot: string; readonly family: string; readonly known: readonly string[] };
  'wrong-role': { readonly sku: string; readonly role: string; readonly expected: string };
  'wrong-count': { readonly slot: string; readonly found: number; readonly expected: number };
  'slot-left-empty': { readonly slot: string; readonly build: string };
  'two-chassis': { readonly upper: string; readonly lowers: string; readonly other: string };
  'two-usual-builds': { readonly travel: string; readonly count: number };
  'two-clauses': { readonly sku: string; readonly chassis: string; readonly other: string };
  'axle-to-crown-end': { readonly end: string; readonly given: string };
  'spring-without-travel': { readonly sku: string };
  'operation-cycle': { readonly cycle: string };
  'need-cycle': { readonly cycle: string };
  'wrong-unit': { readonly specification: string; readonly unit: string; readonly found: string };
  'dose-missing-side': { readonly dose: string; readonly side: string };
  'not-without-reason': { readonly sku: string };
  'spacers-standard-above-greatest': { readonly standard: number; readonly greatest: number };
  'travel-range-empty': { readonly least: string; readonly greatest: string };
  // sense: what records claim together (src/check)
  'build-travel': { readonly claimed: string; readonly gives: string };
  'build-breaks-rule': { readonly build: string; readonly rule: string; readonly held: string; readonly limit: string };
  'clause-contradicts': {
    readonly sku: string;
    readonly chassis: string;
    readonly measure: string;
    readonly own: string;
    readonly other: string;
  };
  'travel-spacer-length': { readonly sku: string };
  'straight-without-offset': { readonly chassis: string };
  'opener-without-closer': { readonly operation: string; readonly reached: string };
  'unknown-trait': { readonly trait: string; readonly family: string };
  'slot-out-of-reach': { readonly slot: string; readonly family: string };
  'operation-of-other-family': { readonly operation: string; readonly family: string };
  // stock and shop
  'stock-column': { readonly columns: readonly string[]; readonly found: readonly string[] };
  'stock-value': { readonly column: string; readonly found: string; readonly expected: string };
  'stock-duplicate': { readonly sku: string; readonly other: number };
  'stock-unknown-sku': { readonly sku: string; readonly nearest: readonly string[] };
  'other-currency': { readonly found: string; readonly expected: string };
}
export type ProblemCode = keyof ProblemParams;

/** A place in a file: 1-based line and column, with the line's text to show. */
export interface Place {
  readonly file: string;
  readonly line: number;
  readonly column: number;
  readonly excerpt: string;
}
export interface Problem {
  readonly severity: 'error' | 'warning';
  readonly code: ProblemCode;
  readonly params: Readonly<Record<string, string | number | readonly string[]>>;
  readonly place: Place | null;
}
/** What a stage returns: it goes on after a problem, and leaves out what it could not use. */
export interface Outcome<T> {
  readonly value: T;
  readonly problems: readonly Problem[];
}
