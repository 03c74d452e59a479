/**
 * Everything that can be wrong with files that people bring in: a closed list of codes, each with its parameters.
 * Words are put to them in report; here they are data with a place.
 */
export interface ProblemParams {
  // the file as text
  'not-readable': { readonly reason: string };
  'not-yaml': { readonly reason: string; readonly language: string };
  'not-a-catalog-file': { readonly found: string };
  'empty-catalog': { readonly folder: string };
  'file-too-large': { readonly bytes: number; readonly limit: number };
  // the schema
  'unknown-key': { readonly key: string; readonly record: string; readonly nearest: readonly string[] };
  'missing-key': { readonly key: string; readonly record: string };
  'missing-unit': { readonly found: string; readonly unit: string };
  /** `write`: the bare number, where that is all that is meant; else empty. */
  'wrong-type': { readonly expected: string; readonly found: string; readonly write: string };
  'not-one-of': { readonly found: string; readonly allowed: readonly string[] };
  'yes-or-no': { readonly found: string; readonly write: string };
  /** `write`: with a point; empty where the comma stands between braces and so began a key, which `found` is. */
  'decimal-comma': { readonly found: string; readonly write: string };
  'bad-value': { readonly rule: string; readonly found: string };
  // meaning
  'bad-quantity': {
    readonly found: string;
    readonly dimension: string;
    readonly fault: string;
    readonly units: string;
  };
  'bad-price': { readonly found: string; readonly currency: string };
  'price-zero': Record<never, never>;
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
  'dose-missing-side': {
    readonly dose: string;
    readonly chassis: string;
    readonly side: string;
    /** Whether the chassis states the dose at all. */
    readonly stated: boolean;
  };
  'not-without-reason': { readonly sku: string };
  'spacers-standard-above-greatest': { readonly standard: number; readonly greatest: number };
  'travel-range-empty': { readonly least: string; readonly greatest: string };
  // sense: what records claim together (src/check)
  'build-travel': { readonly claimed: string; readonly gives: string };
  'build-breaks-rule': { readonly build: string } & BrokenRule;
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
  'factory-part-without-clause': {
    readonly sku: string;
    readonly slot: string;
    readonly chassis: string;
    readonly build: string;
  };
  'bike-fork-without-build': { readonly bike: string; readonly fork: string; readonly fault: string };
  'bike-fork-breaks-rule': { readonly on: string; readonly fork: string } & BrokenRule;
  'drawing-contradicts': {
    readonly bike: string;
    readonly sizes: readonly string[];
    readonly measure: 'stack' | 'wheelbase';
    /** As drawn and as worked out, mm. */
    readonly drawn: number;
    readonly worked: number;
  };
  'travel-out-of-reach': {
    readonly sku: string;
    readonly chassis: string;
    readonly travel: string;
    /** Travel of the factory build that the search set out from, in mm. */
    readonly from: number;
    readonly rules: readonly string[];
  };
  'travel-outside-range': {
    readonly sku: string;
    readonly chassis: string;
    readonly travel: string;
    readonly limit: string;
    /** Whose limit it is. */
    readonly says: 'chassis' | 'clause';
  };
  'axle-to-crown-too-short': {
    readonly chassis: string;
    readonly compressed: string;
    readonly radius: string;
    readonly of: 'wheel' | 'tyre';
  };
  'shared-part-disagrees': {
    readonly sku: string;
    readonly fact: string;
    readonly chassis: string;
    readonly own: string;
    readonly other: string;
    readonly theirs: string;
  };
  'clause-matches-nothing': { readonly sku: string; readonly family: string };
  'clause-without-slot': { readonly sku: string; readonly role: string; readonly family: string };
  'spacers-above-slot': {
    readonly sku: string;
    readonly standard: number;
    readonly most: number;
    readonly family: string;
  };
  'need-cannot-be-met': {
    readonly sku: string;
    readonly slot: string;
    readonly anyOf: readonly string[];
    readonly chassis: string;
  };
  'part-fits-nothing': { readonly sku: string; readonly role: string };
  'kit-serves-nothing': { readonly sku: string };
  'replacement-does-not-fit': { readonly sku: string; readonly by: readonly string[]; readonly chassis: string };
  'slot-without-parts': { readonly slot: string; readonly family: string };
  'measure-not-stated': {
    readonly id: string;
    readonly measure: string;
    readonly role: string;
    readonly sku: string;
  };
  'trait-not-stated': { readonly sku: string; readonly trait: string; readonly family: string };
  'spacers-not-stated': { readonly sku: string; readonly travel: string };
  'specification-without-supply': { readonly specification: string };
  'supply-serves-nothing': { readonly sku: string; readonly meets: readonly string[] };
  'dose-not-asked': { readonly dose: string; readonly of: string };
  'dose-not-stated': {
    readonly dose: string;
    readonly slot: string;
    readonly operation: string;
    readonly family: string;
  };
  'spring-cannot-give-travel': {
    readonly sku: string;
    readonly chassis: string;
    readonly travel: string;
    readonly spacers: number;
    /** What is left of the positive chamber at full travel, mL; null where the spring is there and too strong. */
    readonly left: number | null;
    /** How far the clearance test presses it at the least pressure, mm; null where no chamber is left. */
    readonly reached: number | null;
  };
  'spacers-contradicted': {
    readonly sku: string;
    readonly chassis: string;
    readonly travel: string;
    readonly standard: number;
    readonly nearest: number;
    readonly other: string;
    readonly otherTravel: string;
    readonly otherStandard: number;
  };
  'oil-breaks-specification': {
    readonly sku: string;
    readonly specification: string;
    readonly found: number;
    readonly least: number;
    readonly greatest: number;
  };
  'torque-out-of-reach': {
    readonly operation: string;
    readonly fastener: string;
    readonly torque: string;
    readonly tools: readonly string[];
  };
  'tool-does-not-fit': {
    readonly operation: string;
    readonly piece: string;
    /** What the piece asks for, and what the tool states. */
    readonly asks: string;
    readonly tool: string;
    readonly has: string;
  };
  'oil-not-thinning': { readonly sku: string; readonly at40: number; readonly at100: number };
  'oils-differ': {
    readonly sku: string;
    readonly at40: number;
    readonly other: string;
    readonly otherAt40: number;
    readonly specification: string;
  };
  'closer-without-opener': { readonly operation: string; readonly job: string; readonly openers: readonly string[] };
  // stock and shop
  /** `fields`: a line of `found` fields under `expected` columns. `quote`: quotation marks that do not go together. */
  'stock-not-csv': { readonly fault: string; readonly expected: number; readonly found: number };
  'stock-column': { readonly columns: readonly string[]; readonly found: readonly string[] };
  'stock-value': { readonly column: string; readonly found: string; readonly expected: string };
  'stock-duplicate': { readonly sku: string; readonly other: number };
  'stock-unknown-sku': { readonly sku: string; readonly nearest: readonly string[] };
  'other-currency': { readonly found: string; readonly expected: string };
}
export type ProblemCode = keyof ProblemParams;

type ParamValue = string | number | boolean | null | readonly string[];
/** A rule of the engine that something breaks: `about` is its code, its own values stand beside it, and `values` are both sides where those do not give them. */
export type BrokenRule = { readonly about: string; readonly values: readonly string[] } & Readonly<
  Record<string, ParamValue>
>;

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
  readonly params: Readonly<Record<string, ParamValue>>;
  readonly place: Place | null;
}
/** The same problem twice, as of a record that several others pass on, is said once. */
export const eachOnce = (problems: readonly Problem[]): readonly Problem[] => [
  ...new Map(problems.map((problem) => [JSON.stringify(problem), problem])).values(),
];

/** What a stage returns: it goes on after a problem, and leaves out what it could not use. */
export interface Outcome<T> {
  readonly value: T;
  readonly problems: readonly Problem[];
}
