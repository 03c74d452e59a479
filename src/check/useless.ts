import { BIKE_SLOTS, type Catalog, type Kit, type Part, type Problem } from '../catalog/index.ts';
import { clauseStands, fitVerdict, UNKNOWN_IDENTITY } from '../fitment/index.ts';
import { askedSpecifications } from './asked.ts';
import { doubt } from './places.ts';
import { chassisOf, goesInto } from './verdicts.ts';

/**
 * Parts and kits that no question can ever lead to. A part that is named only to be refused is there for its reason; one without a clause in a role
 * that claims no complete list is not known to fit, which is no fault; and what lies only in a kit may be there for completeness.
 */
export function uselessDoubts(catalog: Catalog): Problem[] {
  const named = namedParts(catalog);
  const useful = new Map(
    [...catalog.parts.values()].map((part) => [part.sku, named.has(part.sku) || isOfUse(catalog, part)]),
  );
  const inKits = new Set([...catalog.kits.values()].flatMap((kit) => kit.parts.map(({ sku }) => sku)));
  const asked = askedSpecifications(catalog);
  return [
    ...[...catalog.parts.values()]
      .filter((part) => !useful.get(part.sku) && !inKits.has(part.sku) && !saidElsewhere(catalog, part))
      .map(({ sku, role, source }) => doubt(catalog, source, 'part-fits-nothing', { sku, role })),
    ...[...catalog.kits.values()]
      .filter((kit) => !servesAnything(catalog, kit, useful, asked))
      .map(({ sku, source }) => doubt(catalog, source, 'kit-serves-nothing', { sku })),
  ];
}

/** Parts that another record names: in a build, on a bike, as a need, or as what stands for an old number. */
const namedParts = (catalog: Catalog): ReadonlySet<string> =>
  new Set([
    ...[...catalog.chassis.values()].flatMap(({ upper, lowers, builds }) => [
      upper,
      lowers,
      ...builds.flatMap(({ slots }) => [...slots.values()].flatMap((content) => content?.sku ?? [])),
    ]),
    ...[...catalog.bikes.values()].flatMap((bike) =>
      [bike.slots, ...bike.forks.map((fork) => fork.with)].flatMap((contents) =>
        [...contents.values()].flatMap((content) => content?.sku ?? []),
      ),
    ),
    ...[...catalog.parts.values()].flatMap(({ needs, replacedBy }) => [
      ...needs.flatMap((need) => (need.kind === 'part' ? need.sku : need.anyOf)),
      ...replacedBy.flatMap(({ by }) => by.map(({ sku }) => sku)),
    ]),
    ...[...catalog.kits.values()].flatMap(({ replacedBy }) => replacedBy.flatMap(({ by }) => by.map(({ sku }) => sku))),
  ]);

/** True where a part may go in somewhere, or nobody knows that it does not. */
function isOfUse(catalog: Catalog, part: Part): boolean {
  if ((BIKE_SLOTS as readonly string[]).includes(part.role)) return true;
  if (part.fits.length > 0 && part.fits.every((clause) => clause.not)) return true;
  return [...catalog.chassis.values()].some((chassis) => {
    const family = catalog.families.get(chassis.family);
    if (!family?.slots.some(({ role }) => role === part.role)) return false;
    if (goesInto(catalog, part, chassis)) return true;
    return (
      part.role !== 'upper' &&
      part.role !== 'lowers' &&
      fitVerdict(catalog, part, chassis, UNKNOWN_IDENTITY).kind === 'unknown'
    );
  });
}

/** Each of its clauses is at fault by itself, and said to be: a family without such a slot, or no chassis that it speaks of. */
function saidElsewhere(catalog: Catalog, part: Part): boolean {
  return (
    part.fits.length > 0 &&
    part.fits.every(
      (clause) =>
        !catalog.families.get(clause.family)?.slots.some(({ role }) => role === part.role) ||
        chassisOf(catalog, clause.family).every(
          (body) => clauseStands(catalog, clause, body, UNKNOWN_IDENTITY) === 'no',
        ),
    )
  );
}

function servesAnything(
  catalog: Catalog,
  kit: Kit,
  useful: ReadonlyMap<string, boolean>,
  asked: ReadonlySet<string>,
): boolean {
  return (
    kit.parts.some(({ sku }) => useful.get(sku) === true) ||
    kit.supplies.some(({ sku }) => catalog.supplies.get(sku)?.meets.some((specification) => asked.has(specification)))
  );
}
