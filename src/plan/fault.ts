import type { Wrong } from './asked.ts';

/** What is wrong with a question, before any search: wrong for every answer, so that nothing is computed. */
export interface FaultParams {
  readonly 'bad-question': { readonly path: string; readonly reason: string };
  readonly 'unknown-chassis': { readonly id: string; readonly nearest: readonly string[] };
  readonly 'unknown-bike': { readonly id: string; readonly nearest: readonly string[] };
  readonly 'unknown-size': { readonly bike: string; readonly size: string; readonly known: readonly string[] };
  readonly 'chassis-or-bike': { readonly example: string };
  readonly 'travel-now-missing': { readonly chassis: string; readonly travels: readonly string[] };
  readonly 'bike-without-fork': { readonly bike: string };
  /** `sizes`, `built`: the values that tell the forks apart; empty where these do not. */
  readonly 'several-forks-of-bike': {
    readonly bike: string;
    readonly sizes: readonly string[];
    readonly built: readonly string[];
    readonly choices: readonly string[];
  };
  readonly 'unknown-setting': { readonly setting: string; readonly family: string; readonly known: readonly string[] };
  readonly 'unknown-sku': { readonly sku: string; readonly nearest: readonly string[] };
  /** `digit`: the check digit that the others ask for. */
  readonly 'gtin-mistyped': { readonly number: string; readonly digit: string };
  readonly 'not-a-part': {
    readonly sku: string;
    readonly kind: 'kit' | 'pack' | 'supply';
    readonly parts: readonly string[];
  };
  readonly 'unknown-service': { readonly id: string; readonly family: string; readonly known: readonly string[] };
  readonly 'unknown-slot': { readonly slot: string; readonly family: string; readonly known: readonly string[] };
  readonly 'wrong-slot': { readonly sku: string; readonly role: string; readonly slot: string };
  readonly 'wrong-count': { readonly slot: string; readonly found: number; readonly most: number };
  readonly 'slot-not-empty': { readonly slot: string };
  readonly 'no-build-now': { readonly chassis: string; readonly travel: string; readonly travels: readonly string[] };
  readonly 'several-builds-now': {
    readonly chassis: string;
    readonly travel: string;
    readonly choices: readonly string[];
  };
  readonly 'other-travel-now': { readonly travel: string; readonly gives: string };
  readonly 'too-many-cases': { readonly cases: number; readonly most: number };
  readonly 'have-unit': { readonly sku: string; readonly expected: string; readonly number: number };
  readonly 'use-without-slot': { readonly sku: string; readonly role: string };
}
export type FaultCode = keyof FaultParams;
export interface Fault {
  readonly code: FaultCode;
  readonly params: Readonly<Record<string, string | number | readonly string[]>>;
}

export const fault = <Code extends FaultCode>(code: Code, params: FaultParams[Code]): Fault => ({
  code,
  params: params as Fault['params'],
});

/** What a schema found wrong with a question. */
export const badQuestion = (wrong: readonly Wrong[]): Fault[] =>
  wrong.map(({ path, reason }) => fault('bad-question', { path: path.join('.'), reason }));
