import type { Catalog, Chassis, Content, Dose, Operation, Side, SupplyUse } from '../catalog/index.ts';

/** The fork on one side of the job: its chassis and what its slots hold. */
export interface ForkState {
  readonly chassis: Chassis;
  readonly slots: ReadonlyMap<string, Content>;
}

/** A supply poured, greased or drained in an operation; the amount in microlitres, milligrams or pieces. */
export interface Amount {
  readonly operation: string;
  readonly action: 'use' | 'drain';
  readonly specification: string;
  readonly amount: number;
  readonly side: Side | null;
  readonly note: string | null;
}

/** What the operations use (by the build after) and drain (by the build before). A dose that nobody states is none. */
export function amountsOf(
  catalog: Catalog,
  operations: readonly Operation[],
  before: ForkState,
  after: ForkState,
): Amount[] {
  return operations.flatMap((operation) => [
    ...operation.drains.flatMap((use) => resolve(catalog, operation, 'drain', use, before)),
    ...operation.uses.flatMap((use) => resolve(catalog, operation, 'use', use, after)),
  ]);
}

function resolve(
  catalog: Catalog,
  operation: Operation,
  action: 'use' | 'drain',
  use: SupplyUse,
  fork: ForkState,
): Amount[] {
  const { side, note } = use;
  if (use.kind === 'amount') {
    return [{ operation: operation.id, action, specification: use.specification, amount: use.amount, side, note }];
  }
  const dose = doseOf(catalog, fork, use.of, use.dose);
  const amount = dose === null ? 0 : doseAmount(dose, side);
  if (!dose || amount === 0) return [];
  return [{ operation: operation.id, action, specification: dose.specification, amount, side, note }];
}

/** What a dose comes to on a side, held units; without a side, for the whole fork. 0 where it is not stated. */
export const doseAmount = (dose: Dose, side: Side | null): number =>
  (side === null ? (dose.amount ?? bothLegs(dose)) : (dose[side] ?? dose.amount)) ?? 0;

/** A dose that is stated by leg only, poured without naming a side: both legs together, 0 where neither is stated. */
const bothLegs = ({ left, right }: Dose): number => (left ?? 0) + (right ?? 0);

function doseOf(catalog: Catalog, fork: ForkState, of: string, name: string): Dose | null {
  if (of === 'chassis') return fork.chassis.doses.get(name) ?? null;
  const content = fork.slots.get(of);
  return content ? (catalog.parts.get(content.sku)?.doses.get(name) ?? null) : null;
}
