import type { RawDose, RawOperation, RawUse } from '../../src/catalog/raw.ts';
import type { BuildModel } from './build.ts';
import type { Expression, Terms, Var } from './programme.ts';
import { given, held } from './written.ts';

/** Section 5: which operations are done, and what they renew and use, as variables. */
export interface WorkModel {
  /** One where an operation is done. */
  readonly done: ReadonlyMap<string, Var>;
  readonly minutes: Expression;
  /** Minor units: flat prices, and the other minutes by the hour. */
  readonly labour: Expression;
  /** For each slot that something may renew, one where it is renewed. */
  readonly renewed: ReadonlyMap<string, Var>;
  /** Held units of each specification, exactly as the operations and doses say, not rounded. */
  readonly used: ReadonlyMap<string, Terms>;
}

export function workModel(build: BuildModel): WorkModel {
  const done = operationsDone(build);
  return {
    done,
    minutes: {
      terms: build.desk.operations.map(({ id, minutes }) => [given(minutes), varOf(done, id)]),
      plus: 0,
    },
    labour: labourOf(build, done),
    renewed: renewedSlots(build, done),
    used: suppliesUsed(build, done),
  };
}

const varOf = (done: ReadonlyMap<string, Var>, id: string): Var => {
  const variable = done.get(id);
  if (variable === undefined) throw new Error(`no operation ${id}`);
  return variable;
};

/** An operation is done exactly where something asks for it: a slot that changes or is to be renewed, or a wanted service, with all that these require and what closes it. */
function operationsDone({ desk, programme, changed }: BuildModel): ReadonlyMap<string, Var> {
  const { renew } = desk.question.wants;
  const services = servicesWanted(desk.generated.records.services, desk.question.wants.service);
  const always = closure(desk.operations, [
    ...services.flatMap(({ operations }) => operations),
    ...renew.flatMap((slot) => changing(desk.operations, slot)),
  ]);
  const bySlot = [...changed].map(([slot, variable]) => ({
    variable,
    asked: closure(desk.operations, changing(desk.operations, slot)),
  }));
  return new Map(
    desk.operations.map(({ id }) => {
      const variable = programme.yesOrNo();
      const askers = bySlot.filter(({ asked }) => asked.has(id)).map((one) => one.variable);
      if (always.has(id)) programme.add([[1, variable]], '=', 1);
      else programme.imply([variable], askers);
      for (const asker of askers) programme.imply([asker], [variable]);
      return [id, variable];
    }),
  );
}

const changing = (operations: readonly RawOperation[], slot: string): readonly string[] =>
  operations.filter((operation) => reaches(operation, slot)).map(({ id }) => id);

/** True where an operation changes a slot, or renews it whenever it is done. */
export const reaches = ({ changes = [], renews = [] }: RawOperation, slot: string): boolean =>
  changes.includes(slot) || renews.some((one) => one.slot === slot && one.when === 'always');

function closure(operations: readonly RawOperation[], asked: readonly string[]): ReadonlySet<string> {
  const all = new Set<string>();
  const open = [...asked];
  for (let id = open.pop(); id !== undefined; id = open.pop()) {
    if (all.has(id)) continue;
    all.add(id);
    const operation = operations.find((one) => one.id === id);
    open.push(
      ...(operation?.requires ?? []),
      ...(operation?.['closed-by'] === undefined ? [] : [operation['closed-by']]),
    );
  }
  return all;
}

type Services = BuildModel['desk']['generated']['records']['services'];
const servicesWanted = (services: Services, wanted: readonly string[]): NonNullable<Services> =>
  (services ?? []).filter(({ id }) => wanted.includes(id));

/** Flat prices of wanted services; the rest by the hour, rounded half up once: 120 L is at least 2 r m - 59 where r is the rate in minor units and m the minutes. */
function labourOf({ desk, programme }: BuildModel, done: ReadonlyMap<string, Var>): Expression {
  const { labour } = desk.generated.shop;
  const services = servicesWanted(desk.generated.records.services, desk.question.wants.service);
  const flat = services.filter(({ id }) => labour.flat?.[id] !== undefined);
  const covered = new Set(flat.flatMap(({ operations }) => operations));
  const rate = Math.round(Number(labour.rate) * 100);
  const hourly = programme.whole(50_000);
  programme.add(
    [
      [120, hourly],
      ...desk.operations.flatMap(({ id, minutes }): [number, Var][] =>
        covered.has(id) ? [] : [[-2 * rate * given(minutes), varOf(done, id)]],
      ),
    ],
    '>=',
    -59,
  );
  const flatly = flat.reduce((sum, { id }) => sum + Math.round(Number(labour.flat?.[id]) * 100), 0);
  return { terms: [[1, hourly]], plus: flatly };
}

/** A slot is renewed where an operation that is done renews it always, or with a service that is wanted, or where that is wanted. */
function renewedSlots({ desk, programme }: BuildModel, done: ReadonlyMap<string, Var>): ReadonlyMap<string, Var> {
  const { renew, service } = desk.question.wants;
  const listed = new Set(
    servicesWanted(desk.generated.records.services, service).flatMap(({ operations }) => operations),
  );
  return new Map(
    desk.slots.map((slot) => {
      const renewed = programme.yesOrNo();
      if (renew.includes(slot)) programme.add([[1, renewed]], '=', 1);
      for (const { id, renews = [] } of desk.operations)
        if (renews.some((one) => one.slot === slot && (one.when === 'always' || listed.has(id))))
          programme.imply([varOf(done, id)], [renewed]);
      return [slot, renewed];
    }),
  );
}

function suppliesUsed(build: BuildModel, done: ReadonlyMap<string, Var>): ReadonlyMap<string, Terms> {
  const used = new Map<string, (readonly [number, Var])[]>();
  const add = (specification: string, amount: number, variable: Var): void => {
    if (amount > 0) used.set(specification, [...(used.get(specification) ?? []), [amount, variable]]);
  };
  for (const { id, uses = [] } of build.desk.operations)
    for (const use of uses)
      if (use.dose === undefined) add(use.specification ?? '', given(use.amount), varOf(done, id));
      else
        for (const { chosen, dose } of doses(build, use)) {
          const both = bothOf(build, chosen, varOf(done, id));
          add(dose.specification, doseAmount(dose, use.side), both);
        }
  return used;
}

/** What states the dose: a body, or a part that a slot may hold. */
function doses({ bodies, slots }: BuildModel, { dose = '', of = 'chassis' }: RawUse): { chosen: Var; dose: RawDose }[] {
  const stating =
    of === 'chassis'
      ? bodies.map(({ chosen, value }) => ({ chosen, doses: value.doses }))
      : (slots.get(of) ?? []).map(({ chosen, part }) => ({ chosen, doses: part?.doses }));
  return stating.flatMap(({ chosen, doses }) => {
    const stated = doses?.[dose];
    return stated === undefined ? [] : [{ chosen, dose: stated }];
  });
}

/** A side's own amount, else the amount; without a side the amount, else both legs. */
function doseAmount(dose: RawDose, side: RawUse['side']): number {
  const amount = held(dose.amount);
  if (side !== undefined) return held(dose[side]) ?? amount ?? 0;
  return amount ?? (held(dose.left) ?? 0) + (held(dose.right) ?? 0);
}

/** One exactly where both are. */
export function bothOf({ programme }: Pick<BuildModel, 'programme'>, one: Var, other: Var): Var {
  const both = programme.yesOrNo();
  programme.imply([both], [one]);
  programme.imply([both], [other]);
  programme.imply([one, other], [both]);
  return both;
}
