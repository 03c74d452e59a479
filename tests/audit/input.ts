import { type AuditInput, checkPlan } from '../../src/audit/index.ts';
import { type Row, row, rows } from '../../src/audit/read.ts';
import { change } from './change.ts';
import { serviceAnswer, shorterAnswer } from './tiny-answer.ts';
import { bikeAnswer } from './tiny-bike-answer.ts';
import { tinyCatalog, tinyShop, tinyStock } from './tiny-catalog.ts';

/** Inputs in which everything holds. */
export const right: AuditInput = { catalog: tinyCatalog, stock: tinyStock, shop: tinyShop, answer: shorterAnswer };
export const service: AuditInput = { ...right, answer: serviceAnswer };
export const onto: AuditInput = { ...right, answer: bikeAnswer };

export type Edit = readonly [path: string, to: unknown];

/** An input with edits made. */
export const edited = (input: AuditInput, edits: readonly Edit[]): AuditInput => {
  const json = edits.reduce<unknown>((before, [path, to]) => change(before, path.split('.'), to), input);
  const { catalog, stock, shop, answer } = row(json);
  return { catalog: row(catalog), stock: stock === null ? null : rows(stock).map(asText), shop, answer };
};
const asText = (columns: Row): Readonly<Record<string, string>> =>
  Object.fromEntries(Object.entries(columns).map(([column, value]) => [column, String(value)]));

export const codes = (input: AuditInput): readonly string[] => checkPlan(input).map((found) => found.code);

/** The first plan, and an edit to both. */
export const P = 'answer.plans.0';
export const both = (path: string, first: unknown, second: unknown = first): readonly Edit[] => [
  [`${P}.${path}`, first],
  [`answer.plans.1.${path}`, second],
];

/** A code, and the edits to a right answer that must bring it out. */
export const caught = (code: string, ...edits: readonly Edit[]) => [code, edits] as const;
