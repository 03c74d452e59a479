import { type Catalog, type Family, listsOf, type Operation } from '../catalog/index.ts';
import { sortedBy } from '../quantity/index.ts';

/** What is to be done to the fork: slots whose content changes, slots renewed by a want, and services by id. */
export interface Job {
  readonly changed: readonly string[];
  readonly renewed: readonly string[];
  readonly services: readonly string[];
}

/** The operations a job needs, in no order yet, with the slots they renew and why each is needed. */
export interface Needed {
  readonly operations: readonly Operation[];
  /** Slots of the job that no operation of the family changes. */
  readonly closed: readonly string[];
  /** Every slot renewed: by a want, by an opening that spoils it, or by a wanted service. */
  readonly renewed: readonly string[];
  /** For each operation the slots, services or operations that asked for it. */
  readonly because: ReadonlyMap<string, readonly string[]>;
}

/** Operations of a family, by id. */
export const familyOperations = (catalog: Catalog, family: Family): readonly Operation[] =>
  listsOf(catalog).operationsOf(family.id);

/** The least set of operations that does the job: model.md, section 5. Unique, since precedence is "and" only. */
export function neededOperations(catalog: Catalog, family: Family, job: Job): Needed {
  const all = familyOperations(catalog, family);
  const byId = new Map(all.map((operation) => [operation.id, operation]));
  const listed = new Set(job.services.flatMap((id) => catalog.services.get(id)?.operations ?? []));
  const because = new Map<string, string[]>();
  const queue: Operation[] = [];
  const ask = (id: string, reason: string): void => {
    const operation = byId.get(id);
    if (!operation) return;
    const reasons = because.get(id);
    if (!reasons) {
      because.set(id, [reason]);
      queue.push(operation);
    } else if (!reasons.includes(reason)) reasons.push(reason);
  };
  const closed: string[] = [];
  for (const slot of new Set([...job.changed, ...job.renewed])) {
    const opening = all.filter((operation) => changesSlot(operation, slot, listed));
    if (opening.length === 0) closed.push(slot);
    for (const operation of opening) ask(operation.id, slot);
  }
  for (const service of job.services)
    for (const id of catalog.services.get(service)?.operations ?? []) ask(id, service);
  for (let operation = queue.shift(); operation; operation = queue.shift()) {
    for (const id of operation.requires) ask(id, operation.id);
    if (operation.closedBy !== null) ask(operation.closedBy, operation.id);
  }
  const operations = all.filter((operation) => because.has(operation.id));
  const renewed = new Set(job.renewed);
  for (const operation of operations) {
    for (const { slot, when } of operation.renews) if (when === 'always' || listed.has(operation.id)) renewed.add(slot);
  }
  return { operations, closed, renewed: sortedBy(renewed, (slot) => slot), because };
}

/** An operation changes a slot where it lists it, or renews it: always, or with a service that was asked for and lists the operation. */
const changesSlot = (operation: Operation, slot: string, listed: ReadonlySet<string>): boolean =>
  operation.changes.includes(slot) ||
  operation.renews.some((renewal) => renewal.slot === slot && (renewal.when === 'always' || listed.has(operation.id)));
