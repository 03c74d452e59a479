import type { AnswerDocument } from '../../src/plan/index.ts';

export type PlanDocument = AnswerDocument['plans'][number];
type LineDocument = PlanDocument['lines'][number];

/** The plan at a place of an answer; fails where there is none. */
export function planAt(answer: AnswerDocument, at: number): PlanDocument {
  const plan = answer.plans[at];
  if (!plan) throw new Error(`no plan ${at}: ${answer.status}`);
  return plan;
}

/** The only plan of an answer; fails where there are none or several. */
export function onlyPlan(answer: AnswerDocument): PlanDocument {
  if (answer.plans.length !== 1) throw new Error(`${answer.plans.length} plans: ${answer.status}`);
  return planAt(answer, 0);
}

const linesOf = (plan: PlanDocument, action: LineDocument['action']): readonly LineDocument[] =>
  plan.lines.filter((line) => line.action === action);

/** `2 QN-VS x 3.60 = 7.20, 0 days, left 1 QN-VS`: packs, number, unit price, total, days, left-overs. */
export const bought = (plan: PlanDocument): readonly string[] =>
  linesOf(plan, 'buy').map(
    ({ packs, sku, unitPrice, total, days, leftOver }) =>
      `${packs} ${sku} x ${unitPrice ?? '?'} = ${total ?? '?'}, ${days ?? '?'} days${left(leftOver)}`,
  );

/** `1 QN-KIT-OPEN, left 5 mL OS-BATH`. */
export const taken = (plan: PlanDocument): readonly string[] =>
  linesOf(plan, 'take').map((line) => `${amount(line)}${left(line.leftOver)}`);

/** `25 mL OS-BATH from QN-KIT-OPEN`, with the price where it is dosed. */
export const lines = (plan: PlanDocument, action: LineDocument['action']): readonly string[] =>
  linesOf(plan, action).map(
    (line) =>
      `${amount(line)}${line.from === null ? '' : ` from ${line.from}`}${line.total === null ? '' : ` = ${line.total}`}`,
  );

const amount = ({ quantity, unit, sku, name }: Pick<LineDocument, 'quantity' | 'unit' | 'sku' | 'name'>): string =>
  `${quantity}${unit === 'piece' ? '' : ` ${unit}`} ${sku ?? name}`;

const left = (leftOver: LineDocument['leftOver']): string =>
  leftOver === null ? '' : `, left ${leftOver.map(amount).join(' and ')}`;

/** `spring: QN-AIR-212 -> QN-AIR-192`; counts above one as `*3`, nothing as `-`. */
export const changes = (plan: PlanDocument): readonly string[] =>
  plan.changes.map(({ slot, from, to }) => `${slot}: ${content(from)} -> ${content(to)}`);

const content = (held: PlanDocument['changes'][number]['from']): string =>
  held === null ? '-' : held.quantity === 1 ? held.sku : `${held.sku}*${held.quantity}`;

/** What each slot holds after the job, written like `changes`. */
export const builtIn = (plan: PlanDocument, slot: string): string => content(plan.build[slot] ?? null);

export const steps = (plan: PlanDocument): readonly string[] => plan.steps.map(({ id }) => id);

/** `quennet-lowers-on: foot bolt left (spring) 6.5 N·m dry`. */
export const torques = (plan: PlanDocument): readonly string[] =>
  plan.steps.flatMap(({ id, fasteners }) =>
    fasteners.map(({ name, side, function: leg, torque, state }) =>
      `${id}: ${name} ${side} (${leg}) ${torque} ${state ?? ''}`.trim(),
    ),
  );

/** `quennet-lowers-on: use 8 mL light-bath left`. */
export const amounts = (plan: PlanDocument, specification: string): readonly string[] =>
  plan.steps.flatMap(({ id, amounts: all }) =>
    all
      .filter((one) => one.specification === specification)
      .map(({ action, quantity, unit, side }) =>
        `${id}: ${action} ${quantity}${unit === 'piece' ? '' : ` ${unit}`} ${side ?? ''}`.trim(),
      ),
  );

/** Parts, supplies, labour, total. */
export const money = ({ money: { parts, supplies, labour, total } }: PlanDocument): readonly string[] => [
  parts,
  supplies,
  labour,
  total,
];

/** `verify now-assumed`, sorted: no order of flags is promised. */
export const flags = ({ flags: all }: { readonly flags: AnswerDocument['flags'] }): readonly string[] =>
  all.map(({ severity, code }) => `${severity} ${code}`).sort();

/** The parameters of the flags of one code. */
export const flagParams = (
  { flags: all }: { readonly flags: AnswerDocument['flags'] },
  code: string,
): readonly unknown[] => all.filter((flag) => flag.code === code).map(({ params }) => params);
