import type { RawChassis, RawClause, RawFamily, RawOperation, RawPart } from '../../src/catalog/raw.ts';
import { type Question, type QuestionInput, questionSchema } from '../../src/plan/question.ts';
import type { Generated } from '../generator/catalogue.ts';
import { given, held, listOf } from './written.ts';

/** What a slot holds; null for nothing. */
export type Content = { readonly sku: string; readonly quantity: number } | null;

/** The records that a question is about, read from what is written, with the fork in front of you. docs/model.md, sections 1 and 2. */
export interface Desk {
  readonly generated: Generated;
  readonly question: Question;
  readonly family: RawFamily;
  readonly bodies: readonly RawChassis[];
  readonly operations: readonly RawOperation[];
  readonly parts: ReadonlyMap<string, RawPart>;
  readonly slots: readonly string[];
  readonly body: RawChassis;
  readonly travel: number;
  readonly now: ReadonlyMap<string, Content>;
}

export function deskOf(generated: Generated, input: QuestionInput): Desk {
  const question = questionSchema.parse(input);
  const { families = [], chassis = [], parts = [], operations = [] } = generated.records;
  const body = found(chassis.find(({ id }) => id === question.chassis));
  const family = found(families.find(({ id }) => id === body.family));
  const travel = Math.round((question.travelNow ?? 0) * 1000);
  const build = found(body.builds.find((one) => given(one.travel) === travel));
  const slots = Object.keys(family.slots);
  const written: Readonly<Record<string, unknown>> = {
    ...body.fitted,
    ...build.slots,
    upper: body.upper,
    lowers: body.lowers,
    ...question.with,
  };
  return {
    generated,
    question,
    family,
    bodies: chassis.filter((one) => one.family === family.id),
    operations: operations.filter((one) => one.families.includes(family.id)),
    parts: new Map(parts.map((part) => [part.sku, part])),
    slots,
    body,
    travel,
    now: new Map(slots.map((slot) => [slot, contentOf(family, slot, written[slot])])),
  };
}

export function found<T>(value: T | undefined): T {
  if (value === undefined) throw new Error('a record is missing');
  return value;
}

/** A SKU alone means the slot's pieces, or one where the slot has a greatest count. */
function contentOf(family: RawFamily, slot: string, written: unknown): Content {
  const { pieces = 1, most } = family.slots[slot] ?? {};
  const usual = most === undefined ? pieces : 1;
  if (typeof written === 'string') return { sku: written, quantity: usual };
  if (typeof written !== 'object' || written === null || !('sku' in written)) return null;
  const quantity = 'quantity' in written && typeof written.quantity === 'number' ? written.quantity : usual;
  return { sku: String(written.sku), quantity };
}

export const roleOf = ({ family }: Desk, slot: string): string => family.slots[slot]?.role ?? slot;

export const partsOfRole = ({ parts }: Desk, role: string): readonly RawPart[] =>
  [...parts.values()].filter((part) => part.role === role);

/** The clauses of a part that speak of a body. */
const speaking = ({ fits = [] }: RawPart, { id, family, wheel, axle }: RawChassis): readonly RawClause[] =>
  fits.filter(
    (clause) =>
      clause.family === family &&
      (listOf(clause.chassis)?.includes(id) ?? true) &&
      (listOf(clause.wheel)?.includes(wheel) ?? true) &&
      (listOf(clause.axle)?.includes(axle.standard) ?? true),
  );

/** The clause by which a part fits a body; null where none does or its maker says no. */
export function fittingClause(part: RawPart, body: RawChassis): RawClause | null {
  const clauses = speaking(part, body);
  return clauses.some(({ not }) => not) ? null : (clauses[0] ?? null);
}

/** Section 4, the table of verdicts, dimensions left aside: silence is a no where the role's list is complete. */
export function verdict(desk: Desk, part: RawPart, body: RawChassis): 'fits' | 'no' | 'unknown' {
  const clauses = speaking(part, body);
  if (clauses.some(({ not }) => not)) return 'no';
  if (clauses.length > 0) return 'fits';
  return desk.family.complete?.includes(part.role) ? 'no' : 'unknown';
}

/** Section 1, "Travel": what a spring gives in a body without travel spacers. */
export const travelGiven = (spring: RawPart, body: RawChassis): number | undefined => {
  const clause = speaking(spring, body)[0];
  return held(clause?.travel);
};
