import type { Catalog, Family, Problem } from '../catalog/index.ts';
import { familyOperations } from '../work/index.ts';
import { askedSpecifications, dosesIn } from './asked.ts';
import { doubt } from './places.ts';
import { allowingClauses, chassisOf, listedFor } from './verdicts.ts';

/** Can what the steps ask for be bought, is it asked for what is stated, and is it stated what is asked for? */
export function supplyDoubts(catalog: Catalog): Problem[] {
  const asked = askedSpecifications(catalog);
  const met = new Set([...catalog.supplies.values()].flatMap(({ meets }) => meets));
  return [
    ...[...catalog.specifications.values()]
      .filter(({ id }) => asked.has(id) && !met.has(id))
      .map(({ id, source }) => doubt(catalog, source, 'specification-without-supply', { specification: id })),
    ...unaskedSupplies(catalog, asked),
    ...doseDoubts(catalog),
  ];
}

/** A supply with a viscosity may be offered for one that it equals, whatever it meets itself. A catalogue without work asks for nothing. */
const unaskedSupplies = (catalog: Catalog, asked: ReadonlySet<string>): Problem[] =>
  catalog.operations.size === 0
    ? []
    : [...catalog.supplies.values()]
        .filter(({ meets, viscosity }) => viscosity.at40 === null && !meets.some((id) => asked.has(id)))
        .map(({ sku, meets, source }) => doubt(catalog, source, 'supply-serves-nothing', { sku, meets }));

/** Doses by name: a slip of the pen on either side means that nothing is poured, without a word. */
function doseDoubts(catalog: Catalog): Problem[] {
  const families = [...catalog.families.values()].filter((family) => familyOperations(catalog, family).length > 0);
  const unasked = families.flatMap((family) =>
    chassisOf(catalog, family.id).flatMap((chassis) =>
      [...chassis.doses.keys()]
        .filter((dose) => !asksFor(catalog, family, 'chassis', dose))
        .map((dose) => doubt(catalog, chassis.source, 'dose-not-asked', { dose, of: chassis.id })),
    ),
  );
  return [...unasked, ...unaskedOfParts(catalog, families), ...families.flatMap((family) => unstated(catalog, family))];
}

/** True where a step of a family asks for a dose of the chassis, or of the part in a slot. */
const asksFor = (catalog: Catalog, family: Family, of: string, dose: string): boolean =>
  familyOperations(catalog, family).some(({ uses, drains }) =>
    dosesIn([...uses, ...drains]).some((use) => use.of === of && use.dose === dose),
  );

/** A dose of a part that no family it is listed for asks for. */
const unaskedOfParts = (catalog: Catalog, families: readonly Family[]): Problem[] =>
  [...catalog.parts.values()].flatMap((part) => {
    const slots = families
      .filter((family) => allowingClauses(part, family).length > 0)
      .flatMap((family) => family.slots.map((slot) => ({ family, slot })))
      .filter(({ slot }) => slot.role === part.role);
    if (slots.length === 0) return [];
    return [...part.doses.keys()]
      .filter((dose) => !slots.some(({ family, slot }) => asksFor(catalog, family, slot.name, dose)))
      .map((dose) => doubt(catalog, part.source, 'dose-not-asked', { dose, of: part.sku }));
  });

/** A dose that a step pours and no part listed for the slot states. One part may be filled and another sealed: only where none states it is it forgotten. */
const unstated = (catalog: Catalog, family: Family): Problem[] =>
  familyOperations(catalog, family).flatMap((operation) =>
    dosesIn(operation.uses).flatMap(({ of, dose }) => {
      const slot = family.slots.find(({ name }) => name === of);
      const parts = slot ? listedFor(catalog, family, slot.role) : [];
      return parts.length === 0 || parts.some(({ doses }) => doses.has(dose))
        ? []
        : [
            doubt(catalog, operation.source, 'dose-not-stated', {
              dose,
              slot: of,
              operation: operation.id,
              family: family.id,
            }),
          ];
    }),
  );
