/**
 * Codes whose values the stages hand over as plain data: flags and members of a conflict, by code.
 * A test reads the stages and fails where one raises a code that is not listed here.
 */
export interface FlagParams {
  readonly 'now-assumed': { readonly slot: string; readonly held: string; readonly others: readonly string[] };
  readonly 'now-derived': { readonly travel: number; readonly spring: string | null; readonly chassis: string };
  readonly 'now-breaks-rule': {
    readonly rule: string;
    readonly held: string | number;
    readonly limit: string | number;
  };
  readonly 'fit-not-known': {
    readonly slot: string;
    readonly sku: string;
    readonly name: string;
    readonly family: string;
    readonly chassis: string;
  };
  readonly 'travel-limit-not-known': {
    readonly chassis: string;
    readonly limit: string;
    readonly travel: number;
  };
  readonly 'frame-limit': { readonly from: number; readonly to: number };
  readonly 'damper-stroke-not-known': { readonly sku: string; readonly name: string; readonly travel: number };
  readonly 'damper-length-not-known': { readonly sku: string; readonly name: string; readonly chassis: string };
  readonly 'spacers-not-known': {
    readonly count: number;
    readonly greatest: number | null;
    readonly travel: number;
  };
  readonly 'spacers-off-standard': {
    readonly count: number;
    readonly standard: number;
    readonly greatest: number | null;
    readonly travel: number;
  };
  readonly 'no-price': { readonly sku: string };
  readonly 'date-not-known': { readonly sku: string };
  readonly waiting: {
    readonly sku: string;
    readonly days: number;
    readonly onShelf: number | null;
    readonly packs: number;
  };
  readonly 'no-labour-rate': Readonly<Record<never, never>>;
  readonly 'tool-not-at-hand': { readonly tool: string; readonly price: string | null };
  readonly 'used-part': { readonly sku: string };
  readonly hazard: { readonly name: string; readonly hazard: string };
}

/** Who has a say in a refusal: wishes, kept traits, rules, listings, stock. */
export interface MemberParams {
  readonly 'want-travel': { readonly travel: number };
  readonly 'toward-travel': { readonly travel: number };
  readonly 'want-wheel': { readonly wheel: number };
  readonly 'want-spacers': { readonly spacers: number };
  readonly 'want-use': { readonly sku: string; readonly name: string };
  readonly 'want-keep': { readonly slot: string };
  readonly 'want-renew': { readonly slot: string; readonly possible: boolean };
  readonly 'kept-trait': { readonly trait: string; readonly value: string };
  readonly 'part-fits': { readonly slot: string; readonly complete: boolean };
  readonly 'fit-not-known': { readonly slot: string };
  readonly dimension: {
    readonly agreement: string;
    readonly part: string;
    readonly neighbour: string;
    readonly measure: string;
  };
  readonly needs: SlotTie;
  readonly excludes: SlotTie;
  readonly 'travel-range': {
    readonly chassis: string;
    readonly least: number | null;
    readonly greatest: number | null;
  };
  readonly 'spring-travel': { readonly springs: number; readonly family: string };
  readonly 'damper-stroke': { readonly sku: string | null; readonly stroke: number | null };
  readonly 'volume-spacer-count': Readonly<Record<never, never>>;
  readonly 'no-operation': { readonly slot: string; readonly family: string };
  readonly 'not-obtainable': { readonly chassis: string; readonly skus: readonly string[] };
}
interface SlotTie {
  readonly sku: string;
  readonly name: string;
  readonly slot: string;
  readonly reason: string | null;
}

/** Why a line stands as it does. */
export type WhyParams = Readonly<Record<never, never>>;

/** How an answer can end. */
export interface StatusParams {
  readonly answered: { readonly plans: number };
  readonly 'nothing-to-do': Readonly<Record<never, never>>;
  readonly impossible: Readonly<Record<never, never>>;
  readonly 'not-known': Readonly<Record<never, never>>;
  readonly 'not-obtainable': Readonly<Record<never, never>>;
  readonly stopped: { readonly steps: number };
}

/** What can be wrong with a command line. */
export interface UsageParams {
  readonly 'unknown-command': { readonly found: string; readonly nearest: readonly string[] };
  readonly 'unknown-option': { readonly option: string; readonly nearest: readonly string[]; readonly command: string };
  readonly 'option-needs-value': { readonly option: string; readonly example: string };
  readonly 'option-takes-no-value': { readonly option: string; readonly found: string };
  readonly 'option-twice': { readonly option: string; readonly values: readonly string[] };
  readonly 'option-missing': { readonly option: string; readonly example: string; readonly command: string };
  readonly 'bad-option-value': { readonly option: string; readonly found: string; readonly expected: string };
  readonly 'surplus-argument': { readonly found: string; readonly command: string };
  readonly 'argument-missing': {
    readonly argument: string;
    readonly command: string;
    readonly known: readonly string[];
  };
  readonly 'unknown-kind': { readonly found: string; readonly nearest: readonly string[] };
  readonly 'unknown-code': { readonly found: string; readonly nearest: readonly string[] };
  readonly 'file-not-readable': { readonly file: string; readonly reason: string; readonly option: string };
}

/** What the check of an answer by the auditor says. */
export interface AuditParams {
  readonly 'audit-finding': { readonly code: string; readonly plan: number | null; readonly detail: string };
}
