import type { Chassis, Operation } from '../catalog/index.ts';
import type { ForkProblem } from '../fork/index.ts';
import type { Domains } from '../solve/index.ts';
import { floorFor, productsFor, type Within } from '../supply/index.ts';
import { doseAmount } from '../work/index.ts';
import type { Prepared } from './prepare.ts';
import type { Tied } from './tied.ts';
import type { World } from './world.ts';

/** Amounts by specification, held units. */
export type Amounts = ReadonlyMap<string, number>;

/** A dose that an operation pours for what a slot holds afterwards, by the value of the slot; null where none is stated. */
interface SlotDose {
  readonly variable: number;
  readonly doses: readonly ({ readonly specification: string; readonly amount: number } | null)[];
}

/** What every plan below a node pours and greases at least. Nothing is certain where it may come from bulk. The same amounts are the same map. */
export function leastUsed(
  world: World,
  prepared: Prepared,
  fork: ForkProblem,
  operations: readonly Operation[],
  body: Chassis | null,
): (domains: Domains) => Amounts {
  const stated: Amounts = prepared.buying.bulk ? new Map() : leastAmounts(operations, body);
  const slotDoses = prepared.buying.bulk ? [] : slotDosesOf(world, fork, operations);
  if (slotDoses.length === 0) return () => stated;
  const known = new Map<string, Amounts>();
  return (domains) => {
    let key = '';
    const doses = slotDoses.map((one) => leastDose(one, domains));
    for (const dose of doses) key += dose === null ? '-|' : `${dose.specification} ${dose.amount}|`;
    const before = known.get(key);
    if (before) return before;
    const amounts = new Map(stated);
    for (const dose of doses)
      if (dose) amounts.set(dose.specification, (amounts.get(dose.specification) ?? 0) + dose.amount);
    known.set(key, amounts);
    return amounts;
  };
}

/** The least of the doses that a slot may still ask for; null where one of them is none, or of another specification. */
function leastDose({ variable, doses }: SlotDose, domains: Domains): SlotDose['doses'][number] {
  let least: SlotDose['doses'][number] = null;
  for (let value = 0; value < doses.length; value++) {
    if (!domains.has(variable, value)) continue;
    const dose = doses[value];
    if (!dose || (least && least.specification !== dose.specification)) return null;
    if (!least || dose.amount < least.amount) least = dose;
  }
  return least;
}

function slotDosesOf({ catalog }: World, fork: ForkProblem, operations: readonly Operation[]): SlotDose[] {
  return operations.flatMap(({ uses }) =>
    uses.flatMap((use): SlotDose[] => {
      const at = use.kind === 'dose' ? fork.domains.findIndex(({ slot }) => slot.name === use.of) : -1;
      const contents = fork.domains[at]?.contents;
      if (use.kind !== 'dose' || !contents) return [];
      const doses = contents.map((content) => {
        const dose = catalog.parts.get(content?.sku ?? '')?.doses.get(use.dose);
        const amount = dose ? doseAmount(dose, use.side) : 0;
        return dose && amount > 0 ? { specification: dose.specification, amount } : null;
      });
      return [{ variable: at + 1, doses }];
    }),
  );
}

/** What amounts cost at least: of specifications that no group ties to anything, and of each group's, each by itself. */
export interface SuppliesFloor {
  readonly alone: number;
  readonly tied: readonly number[];
}

export function suppliesFloor(
  world: World,
  prepared: Prepared,
  amounts: Amounts,
  groups: readonly Tied[],
  free: ReadonlySet<string>,
  within: Within,
): SuppliesFloor {
  const floors = floorsOf(world, prepared, amounts, free, within);
  const sum = (ids: Iterable<string>): number => [...ids].reduce((all, id) => all + (floors.get(id) ?? 0), 0);
  const inGroups = new Set(groups.flatMap(({ specifications }) => specifications));
  return {
    alone: sum([...amounts.keys()].filter((id) => !inGroups.has(id))),
    tied: groups.map(({ specifications }) => sum(specifications)),
  };
}

/** What amounts cost at least, by specification; what is at hand counts as nothing. */
function floorsOf(
  world: World,
  prepared: Prepared,
  amounts: Amounts,
  free: ReadonlySet<string>,
  within: Within,
): ReadonlyMap<string, number> {
  // a product that serves two specifications shares its packs between them: their floors must not be added up
  const products = [...amounts.keys()].map((specification) =>
    productsFor(world.market, prepared.buying, specification),
  );
  return new Map(
    [...amounts].map(([specification, amount], at) => {
      const own = products[at] ?? [];
      const shared = own.some((sku) => products.some((other, to) => to !== at && other.includes(sku)));
      if (amount <= 0 || shared || own.some((sku) => free.has(sku))) return [specification, 0];
      return [specification, Math.min(...own.map((sku) => floorFor(world.market, sku, amount, within).money))];
    }),
  );
}

/** What operations use at least, by specification, held units: the amounts that they state, and doses of the chassis where it is settled. */
export function leastAmounts(operations: readonly Operation[], body: Chassis | null): Amounts {
  const amounts = new Map<string, number>();
  const add = (specification: string, amount: number): void =>
    void amounts.set(specification, (amounts.get(specification) ?? 0) + amount);
  for (const { uses } of operations) {
    for (const use of uses) {
      if (use.kind === 'amount') add(use.specification, use.amount);
      const dose = use.kind === 'dose' && use.of === 'chassis' ? body?.doses.get(use.dose) : undefined;
      if (dose) add(dose.specification, doseAmount(dose, use.side));
    }
  }
  return amounts;
}
