import type { Catalog, SupplyUse } from '../catalog/index.ts';

/** The specifications that some step pours, greases or uses up: by an amount of its own, or by a dose that it asks for. */
export function askedSpecifications(catalog: Catalog): ReadonlySet<string> {
  const uses = [...catalog.operations.values()].flatMap((operation) => operation.uses);
  const doses = new Set(uses.flatMap((use) => (use.kind === 'dose' ? use.dose : [])));
  const stated = [...catalog.chassis.values(), ...catalog.parts.values()].flatMap((record) =>
    [...record.doses].flatMap(([name, dose]) => (doses.has(name) ? dose.specification : [])),
  );
  return new Set([...uses.flatMap((use) => (use.kind === 'amount' ? use.specification : [])), ...stated]);
}

/** A dose as a step asks for it: its name, and the slot or the chassis that states it. */
export const dosesIn = (uses: readonly SupplyUse[]): readonly Extract<SupplyUse, { kind: 'dose' }>[] =>
  uses.flatMap((use) => (use.kind === 'dose' ? use : []));
