import type { Catalog, Chassis, Clause, Part, Problem } from '../catalog/index.ts';
import { clauseStands, fitVerdict, successorsOf, UNKNOWN_IDENTITY } from '../fitment/index.ts';
import { familyOf } from '../fork/index.ts';
import { doubt } from './places.ts';
import { chassisNamed, chassisOf, generationsOf, mayFit, ofGeneration } from './verdicts.ts';

/** Does each clause speak of something, and can what the part asks for be had where it fits? */
export const clauseDoubts = (catalog: Catalog): Problem[] =>
  [...catalog.parts.values()].flatMap((part) => [
    ...part.fits.flatMap((clause) => oneClause(catalog, part, clause)),
    ...needsUnmet(catalog, part),
  ]);

function oneClause(catalog: Catalog, part: Part, clause: Clause): Problem[] {
  const { sku, role } = part;
  const family = catalog.families.get(clause.family);
  const bodies = chassisOf(catalog, clause.family);
  // a family of which no chassis is written yet
  if (!family || bodies.length === 0) return [];
  const slot = family.slots.find((one) => one.role === role);
  if (!slot) return [doubt(catalog, clause.source, 'clause-without-slot', { sku, role, family: family.id })];
  if (bodies.every((body) => clauseStands(catalog, clause, body, UNKNOWN_IDENTITY) === 'no'))
    return [doubt(catalog, clause.source, 'clause-matches-nothing', { sku, family: family.id })];
  const most = family.slots.find(({ name }) => name === 'volume-spacers')?.pieces;
  const standard = Math.max(0, ...clause.volumeSpacers.map((count) => count.standard ?? 0));
  return most === undefined || standard <= most
    ? []
    : [doubt(catalog, clause.source, 'spacers-above-slot', { sku, standard, most, family: family.id })];
}

/** A part that goes into a chassis and needs another there, of which none does: no plan can put it in. */
function needsUnmet(catalog: Catalog, part: Part): Problem[] {
  const { sku, source } = part;
  return part.needs.flatMap((need) => {
    if (need.kind !== 'slot') return [];
    const unmet = chassisNamed(catalog, part).find((chassis) => {
      const slot = familyOf(catalog, chassis).slots.find(({ name }) => name === need.slot);
      return slot !== undefined && neverMet(catalog, part, chassis, need.anyOf);
    });
    return unmet
      ? [doubt(catalog, source, 'need-cannot-be-met', { sku, slot: need.slot, anyOf: need.anyOf, chassis: unmet.id })]
      : [];
  });
}

/** True where the part goes in for some generation, and in none of those does any of what it needs. */
function neverMet(catalog: Catalog, part: Part, chassis: Chassis, anyOf: readonly string[]): boolean {
  const goes = (sku: string, body: Chassis): boolean => {
    const found = catalog.parts.get(sku);
    return found !== undefined && mayFit(fitVerdict(catalog, found, body, UNKNOWN_IDENTITY));
  };
  const where = generationsOf(familyOf(catalog, chassis), chassis)
    .map((generation) => ofGeneration(chassis, generation))
    .filter((body) => goes(part.sku, body));
  return (
    where.length > 0 &&
    !where.some((body) =>
      [
        ...anyOf,
        ...anyOf.flatMap((sku) =>
          successorsOf(catalog, sku, body.family, body.generations ?? []).map((last) => last.sku),
        ),
      ].some((sku) => goes(sku, body)),
    )
  );
}
