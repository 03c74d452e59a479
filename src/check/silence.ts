import {
  type Catalog,
  type Chassis,
  type Clause,
  clauseMatches,
  type Family,
  type Part,
  type Problem,
} from '../catalog/index.ts';
import { AGREEMENTS, type Agreement } from '../fitment/index.ts';
import { doubt, mm } from './places.ts';
import { allowingClauses, chassisOf, goesInto, listedFor, travelsGiven, within } from './verdicts.ts';

/** Is a family silent where it claims to say everything? Only roles that it lists as complete are looked at, and slots that nothing can ever fill. */
export const silenceDoubts = (catalog: Catalog): Problem[] =>
  [...catalog.families.values()].flatMap((family) => [
    ...emptySlots(catalog, family),
    ...measures(catalog, family),
    ...traits(catalog, family),
    ...spacerCounts(catalog, family),
  ]);

/** A slot that no factory build fills and that nothing is listed for: not even a renewal finds a part. */
function emptySlots(catalog: Catalog, family: Family): Problem[] {
  const bodies = chassisOf(catalog, family.id);
  if (bodies.length === 0) return [];
  return family.slots
    .filter(
      ({ name, role }) =>
        !bodies.some(({ builds }) => builds.some(({ slots }) => (slots.get(name) ?? null) !== null)) &&
        listedFor(catalog, family, role).length === 0,
    )
    .map(({ name }) => doubt(catalog, family.source, 'slot-without-parts', { slot: name, family: family.id }));
}

/**
 * A chassis, upper or lowers that leaves out a measure which every other of the family states, and which listed parts are compared with: there the
 * comparison says nothing. A part that leaves out a measure is let be: a ring that sets itself in any groove has none.
 */
function measures(catalog: Catalog, family: Family): Problem[] {
  const bodies = chassisOf(catalog, family.id);
  return AGREEMENTS.filter(({ role }) => family.complete.includes(role)).flatMap((agreement) => {
    const neighbours = new Map(bodies.flatMap((body) => neighbourOf(catalog, body, agreement)));
    const silent = [...neighbours.values()].filter((one) => !states(one, agreement, agreement.other));
    if (silent.length === 0 || silent.length === neighbours.size) return [];
    return silent.flatMap((one) => {
      const compared = listedFor(catalog, family, agreement.role).filter(
        (part) =>
          states(part, agreement, agreement.measure) &&
          bodies.some((body) => usesBody(body, one.id) && goesInto(catalog, part, body)),
      );
      return compared.length === 0
        ? []
        : [
            doubt(catalog, one.source, 'measure-not-stated', {
              id: one.id,
              measure: agreement.other,
              role: agreement.role,
              sku: compared[0]?.sku ?? '',
            }),
          ];
    });
  });
}

interface Neighbour extends Pick<Part, 'dimensions' | 'interfaces' | 'source'> {
  readonly id: string;
}

function neighbourOf(catalog: Catalog, body: Chassis, agreement: Agreement): (readonly [string, Neighbour])[] {
  if (agreement.with === 'chassis') return [[body.id, { ...body, id: body.id }]];
  if (agreement.with !== 'upper' && agreement.with !== 'lowers') return [];
  const part = catalog.parts.get(body[agreement.with]);
  return part ? [[part.sku, { ...part, id: part.sku }]] : [];
}

const usesBody = (body: Chassis, id: string): boolean => [body.id, body.upper, body.lowers].includes(id);

const states = (from: Pick<Part, 'dimensions' | 'interfaces'>, { kind }: Agreement, name: string): boolean =>
  kind === 'interface' ? from.interfaces.has(name) : from.dimensions.has(name);

/** A damper without a trait that the family keeps, or a spring without a kind, where others of a complete list state it: a plan that keeps it passes that part over. */
function traits(catalog: Catalog, family: Family): Problem[] {
  const kept = [...family.keeps.map((trait) => ({ role: 'damper', trait })), { role: 'spring', trait: 'kind' }].filter(
    ({ role }) => family.complete.includes(role),
  );
  return kept.flatMap(({ role, trait }) => {
    const listed = listedFor(catalog, family, role);
    if (!listed.some((part) => part.traits.has(trait))) return [];
    return listed
      .filter((part) => !part.traits.has(trait))
      .map(({ sku, source }) => doubt(catalog, source, 'trait-not-stated', { sku, trait, family: family.id }));
  });
}

/** A spring with a seat for volume spacers, in a complete list, that does not say how many belong to it at a travel that it gives. */
function spacerCounts(catalog: Catalog, family: Family): Problem[] {
  if (!family.complete.includes('spring') || !family.slots.some(({ name }) => name === 'volume-spacers')) return [];
  const bodies = chassisOf(catalog, family.id);
  return listedFor(catalog, family, 'spring')
    .filter((part) => part.interfaces.has('spacer-seat'))
    .flatMap((part) =>
      allowingClauses(part, family).flatMap((clause) => {
        const travel = uncounted(catalog, family, part, clause, bodies);
        return travel === null
          ? []
          : [doubt(catalog, clause.source, 'spacers-not-stated', { sku: part.sku, travel: mm(travel) })];
      }),
    );
}

/** The first travel that a clause gives within the range of a chassis, and for which it states no standard count; null where it states all. */
function uncounted(
  catalog: Catalog,
  family: Family,
  part: Part,
  clause: Clause,
  bodies: readonly Chassis[],
): number | null {
  const where = bodies.filter((body) => clauseMatches(clause, body) && goesInto(catalog, part, body));
  const isCounted = (travel: number): boolean =>
    clause.volumeSpacers.some((count) => count.standard !== null && (count.travel === null || count.travel === travel));
  return (
    travelsGiven(catalog, family, clause).find(
      (travel) => where.some((body) => within(body.travel, travel)) && !isCounted(travel),
    ) ?? null
  );
}
