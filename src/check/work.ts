import type { Catalog, Family, Operation, Problem } from '../catalog/index.ts';
import { familyOperations } from '../work/index.ts';
import { problemAt } from './places.ts';

/** Can every slot that may change be reached, and do the operations of a family belong together? */
export function workProblems(catalog: Catalog): Problem[] {
  return [
    ...[...catalog.families.values()].flatMap((family) => familyProblems(catalog, family)),
    ...referenceProblems(catalog),
  ];
}

function familyProblems(catalog: Catalog, family: Family): Problem[] {
  const problems: Problem[] = [];
  const operations = familyOperations(catalog, family);
  const changed = new Set(
    operations.flatMap(({ changes, renews }) => [
      ...changes,
      ...renews.filter(({ when }) => when === 'always').map(({ slot }) => slot),
    ]),
  );
  const known = family.slots.map(({ name }) => name);
  const roles = family.slots.map(({ role }) => role);
  for (const role of family.complete) {
    if (!roles.includes(role))
      problems.push(
        problemAt(catalog, 'error', family.source, 'unknown-slot', { slot: role, family: family.id, known: roles }),
      );
  }
  const traits = new Set(
    [...catalog.parts.values()].filter(({ role }) => role === 'damper').flatMap((part) => [...part.traits.keys()]),
  );
  for (const trait of family.keeps) {
    if (!traits.has(trait))
      problems.push(problemAt(catalog, 'warning', family.source, 'unknown-trait', { trait, family: family.id }));
  }
  for (const slot of known) {
    const parts = [...catalog.parts.values()].filter(
      (part) => part.role === slot && part.fits.some((clause) => !clause.not && clause.family === family.id),
    );
    if (parts.length > 1 && !changed.has(slot))
      problems.push(problemAt(catalog, 'warning', family.source, 'slot-out-of-reach', { slot, family: family.id }));
  }
  for (const operation of operations) {
    for (const use of [...operation.uses, ...operation.drains]) {
      if (use.kind !== 'dose' || use.of === 'chassis') continue;
      if (!known.includes(use.of))
        problems.push(
          problemAt(catalog, 'error', operation.source, 'unknown-slot', { slot: use.of, family: family.id, known }),
        );
    }
  }
  problems.push(...unreachedClosers(catalog, operations));
  return problems;
}

/** An operation that nothing asks for: it changes and renews nothing, no other requires it or is closed by it, no service lists it. A `closed-by` was forgotten. */
function unreachedClosers(catalog: Catalog, operations: readonly Operation[]): Problem[] {
  const asked = new Set([
    ...operations.flatMap(({ requires, closedBy }) => [...requires, ...(closedBy === null ? [] : [closedBy])]),
    ...[...catalog.services.values()].flatMap((service) => service.operations),
  ]);
  return operations
    .filter(
      ({ id, changes, renews }) =>
        !asked.has(id) && changes.length === 0 && !renews.some(({ when }) => when === 'always'),
    )
    .map((operation) =>
      problemAt(catalog, 'warning', operation.source, 'opener-without-closer', {
        operation: operation.id,
        reached: 'nothing',
      }),
    );
}

/** What an operation requires, follows or is closed by must be there for each of its families; so must a service's operations. */
function referenceProblems(catalog: Catalog): Problem[] {
  const problems: Problem[] = [];
  for (const operation of catalog.operations.values()) {
    for (const id of [...operation.requires, ...(operation.closedBy === null ? [] : [operation.closedBy])]) {
      const other = catalog.operations.get(id);
      for (const family of operation.families) {
        if (other && !other.families.includes(family))
          problems.push(
            problemAt(catalog, 'error', operation.source, 'operation-of-other-family', { operation: id, family }),
          );
      }
    }
  }
  for (const service of catalog.services.values()) {
    for (const id of service.operations) {
      const other = catalog.operations.get(id);
      for (const family of service.families) {
        if (other && !other.families.includes(family)) {
          const source = { document: null, page: null, record: `services/${service.id}` };
          problems.push(problemAt(catalog, 'error', source, 'operation-of-other-family', { operation: id, family }));
        }
      }
    }
  }
  return problems;
}
