import { type Catalog, type Family, listsOf, type Operation, type Problem, type Slot } from '../catalog/index.ts';
import { familyOperations, neededOperations } from '../work/index.ts';
import { doubt, problemAt } from './places.ts';
import { toolDoubts } from './tools.ts';
import { listedFor } from './verdicts.ts';

/** Do the operations of a family belong together, and do families and steps name slots that there are? */
export const workProblems = (catalog: Catalog): Problem[] => [
  ...[...catalog.families.values()].flatMap((family) => [
    ...completeRoles(catalog, family),
    ...dosedSlots(catalog, family),
  ]),
  ...otherFamilies(catalog),
];

/** Can every slot that may change be reached, is what a job closes open, and does anything ask for each step? */
export const workDoubts = (catalog: Catalog): Problem[] =>
  [...catalog.families.values()].flatMap((family) => {
    const operations = familyOperations(catalog, family);
    return [
      ...keptTraits(catalog, family),
      ...outOfReach(catalog, family, operations),
      ...unaskedSteps(catalog, operations),
      ...closedUnopened(catalog, family, operations),
      ...toolDoubts(catalog, operations),
    ];
  });

function completeRoles(catalog: Catalog, family: Family): Problem[] {
  const known = family.slots.map(({ role }) => role);
  return family.complete
    .filter((role) => !known.includes(role))
    .map((slot) => problemAt(catalog, 'error', family.source, 'unknown-slot', { slot, family: family.id, known }));
}

function dosedSlots(catalog: Catalog, family: Family): Problem[] {
  const known = family.slots.map(({ name }) => name);
  return familyOperations(catalog, family).flatMap((operation) =>
    [...operation.uses, ...operation.drains].flatMap((use) =>
      use.kind !== 'dose' || use.of === 'chassis' || known.includes(use.of)
        ? []
        : [problemAt(catalog, 'error', operation.source, 'unknown-slot', { slot: use.of, family: family.id, known })],
    ),
  );
}

function keptTraits(catalog: Catalog, family: Family): Problem[] {
  const stated = new Set(
    [...catalog.parts.values()].filter(({ role }) => role === 'damper').flatMap((part) => [...part.traits.keys()]),
  );
  return family.keeps
    .filter((trait) => !stated.has(trait))
    .map((trait) => doubt(catalog, family.source, 'unknown-trait', { trait, family: family.id }));
}

/**
 * A slot that a wish can ask to change, and that no operation reaches: several parts are listed for it, or its count may be another, or its pieces are
 * such as a service renews.
 */
function outOfReach(catalog: Catalog, family: Family, operations: readonly Operation[]): Problem[] {
  const serviced = new Set(
    listsOf(catalog)
      .servicesOf(family.id)
      .flatMap((service) => service.operations),
  );
  const reached = new Set(
    operations.flatMap(({ id, changes, renews }) => [
      ...changes,
      ...renews.filter(({ when }) => when === 'always' || serviced.has(id)).map(({ slot }) => slot),
    ]),
  );
  return family.slots
    .filter((slot) => !reached.has(slot.name) && mayChange(slot, listedFor(catalog, family, slot.role).length))
    .map(({ name }) => doubt(catalog, family.source, 'slot-out-of-reach', { slot: name, family: family.id }));
}

const mayChange = ({ counted, singleUse, wears }: Slot, listed: number): boolean =>
  listed > (counted || singleUse || wears ? 0 : 1);

/** An operation that nothing asks for: it changes and renews nothing, no other requires it or is closed by it, no service lists it. A `closed-by` was forgotten. */
function unaskedSteps(catalog: Catalog, operations: readonly Operation[]): Problem[] {
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
      doubt(catalog, operation.source, 'opener-without-closer', { operation: operation.id, reached: 'nothing' }),
    );
}

/**
 * A job that closes what it never opens: a slot that is renewed on the way back and changed by no step on the way in, or a service that lists only the
 * closing step. A step that requires something opens its own way and may stand alone.
 */
function closedUnopened(catalog: Catalog, family: Family, operations: readonly Operation[]): Problem[] {
  const slots = new Set(operations.flatMap(({ changes, renews }) => [...changes, ...renews.map(({ slot }) => slot)]));
  const services = [...catalog.services.values()].filter(({ families }) => families.includes(family.id));
  const jobs = [
    ...[...slots].map((slot) => ({ job: slot, changed: [slot], services: [] })),
    ...services.map(({ id }) => ({ job: id, changed: [], services: [id] })),
  ];
  const said = new Set<string>();
  return jobs.flatMap(({ job, changed, services: wanted }) => {
    const needed = new Set(
      neededOperations(catalog, family, { changed, renewed: [], services: wanted }).map(({ id }) => id),
    );
    return operations.flatMap((closer) => {
      const openers = operations.filter(({ closedBy }) => closedBy === closer.id).map(({ id }) => id);
      const alone =
        needed.has(closer.id) &&
        closer.requires.length === 0 &&
        openers.length > 0 &&
        !openers.some((id) => needed.has(id));
      if (!alone || said.has(closer.id)) return [];
      said.add(closer.id);
      return [doubt(catalog, closer.source, 'closer-without-opener', { operation: closer.id, job, openers })];
    });
  });
}

/** What an operation requires or is closed by must be there for each of its families; so must a service's operations. */
function otherFamilies(catalog: Catalog): Problem[] {
  const asking = [
    ...[...catalog.operations.values()].map(({ families, requires, closedBy, source }) => ({
      families,
      named: [...requires, ...(closedBy === null ? [] : [closedBy])],
      source,
    })),
    ...[...catalog.services.values()].map(({ id, families, operations }) => ({
      families,
      named: operations,
      source: { record: `services/${id}` },
    })),
  ];
  return asking.flatMap(({ families, named, source }) =>
    named.flatMap((id) => {
      const other = catalog.operations.get(id);
      return families
        .filter((family) => other && !other.families.includes(family))
        .map((family) => problemAt(catalog, 'error', source, 'operation-of-other-family', { operation: id, family }));
    }),
  );
}
