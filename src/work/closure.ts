import { type Catalog, type Family, listsOf, type Operation } from '../catalog/index.ts';
import { sortedBy } from '../quantity/index.ts';

/** What is to be done to the fork: slots whose content changes, slots renewed by a want, and services by id. */
export interface Job {
  readonly changed: readonly string[];
  readonly renewed: readonly string[];
  readonly services: readonly string[];
}

/** The operations a job needs, in no order yet: the same set is the same list, whatever asked for it. */
export type Operations = readonly Operation[];

/** Operations of a family, by id. */
export const familyOperations = (catalog: Catalog, family: Family): Operations =>
  listsOf(catalog).operationsOf(family.id);

/**
 * The least set of operations that does the job: model.md, section 5. Unique, since precedence is "and" only; and the set of several slots and services is that of each,
 * put together, so that each is followed once for a catalogue. An operation that a wanted service lists is in the set by that, whatever it renews.
 */
export function neededOperations(catalog: Catalog, family: Family, job: Job): Operations {
  const closures = closuresOf(catalog, family);
  let set = 0n;
  for (const slot of job.changed) set |= closures.slots.get(slot) ?? 0n;
  for (const slot of job.renewed) set |= closures.slots.get(slot) ?? 0n;
  for (const service of job.services) {
    for (const id of catalog.services.get(service)?.operations ?? []) set |= closures.operations.get(id) ?? 0n;
  }
  return closures.listed(set);
}

/** Every slot renewed by a job with these operations: by a want, by an opening that spoils it, or by a wanted service that lists the operation. In code-unit order. */
export function renewedSlots(catalog: Catalog, job: Job, operations: Operations): readonly string[] {
  const listed = new Set(job.services.flatMap((id) => catalog.services.get(id)?.operations ?? []));
  const renewed = new Set(job.renewed);
  for (const operation of operations) {
    for (const { slot, when } of operation.renews) if (when === 'always' || listed.has(operation.id)) renewed.add(slot);
  }
  return sortedBy(renewed, (slot) => slot);
}

/** What each slot and each operation of a family draws in, as bits by the place of the operation in the family's list. */
interface Closures {
  readonly slots: ReadonlyMap<string, bigint>;
  readonly operations: ReadonlyMap<string, bigint>;
  readonly listed: (set: bigint) => Operations;
}

const made = new WeakMap<Catalog, Map<string, Closures>>();

function closuresOf(catalog: Catalog, family: Family): Closures {
  const families = made.get(catalog) ?? new Map<string, Closures>();
  made.set(catalog, families);
  const closures = families.get(family.id) ?? closuresAmong(familyOperations(catalog, family));
  families.set(family.id, closures);
  return closures;
}

function closuresAmong(all: Operations): Closures {
  const place = new Map(all.map(({ id }, at) => [id, at]));
  const operations = new Map(all.map((operation) => [operation.id, drawnInBy(operation, all, place)]));
  const slots = new Map<string, bigint>();
  for (const { id, changes, renews } of all) {
    const opened = [...changes, ...renews.filter(({ when }) => when === 'always').map(({ slot }) => slot)];
    for (const slot of opened) slots.set(slot, (slots.get(slot) ?? 0n) | (operations.get(id) ?? 0n));
  }
  const lists = new Map<bigint, Operations>();
  const listed = (set: bigint): Operations => {
    const list = lists.get(set) ?? all.filter((_operation, at) => ((set >> BigInt(at)) & 1n) === 1n);
    lists.set(set, list);
    return list;
  };
  return { slots, operations, listed };
}

/** An operation with what it requires and what closes it, and so on. */
function drawnInBy(operation: Operation, all: Operations, place: ReadonlyMap<string, number>): bigint {
  let set = 0n;
  const open: (Operation | undefined)[] = [operation];
  for (let next = open.pop(); next; next = open.pop()) {
    const bit = 1n << BigInt(place.get(next.id) ?? 0);
    if ((set & bit) !== 0n) continue;
    set |= bit;
    for (const id of [...next.requires, ...(next.closedBy === null ? [] : [next.closedBy])]) {
      const at = place.get(id);
      if (at !== undefined) open.push(all[at]);
    }
  }
  return set;
}
