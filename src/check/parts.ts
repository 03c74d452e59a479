import { BIKE_SLOTS, type Catalog, nearest, type Part, type Problem } from '../catalog/index.ts';
import { fitVerdict, UNKNOWN_IDENTITY } from '../fitment/index.ts';
import { problemAt, shown } from './places.ts';
import { chassisNamed } from './verdicts.ts';

/** Does each part's clause agree with the dimensions, and is what it names there? */
export function partProblems(catalog: Catalog): Problem[] {
  const slots = rolesBySlot(catalog);
  return [...catalog.parts.values()].flatMap((part) => [
    ...clauseContradictions(catalog, part),
    ...spacerLength(catalog, part),
    ...slotsNamed(catalog, part, slots),
    ...generationsNamed(catalog, part),
  ]);
}

/** Every slot that some family or a bike has, with the roles that families put into it. */
function rolesBySlot(catalog: Catalog): ReadonlyMap<string, ReadonlySet<string>> {
  const roles = new Map<string, Set<string>>();
  for (const family of catalog.families.values())
    for (const { name, role } of family.slots) roles.set(name, (roles.get(name) ?? new Set()).add(role));
  for (const name of BIKE_SLOTS) roles.set(name, roles.get(name) ?? new Set());
  return roles;
}

function clauseContradictions(catalog: Catalog, part: Part): Problem[] {
  const found = new Map<string, Problem>();
  for (const chassis of chassisNamed(catalog, part)) {
    const verdict = fitVerdict(catalog, part, chassis, UNKNOWN_IDENTITY);
    if (verdict.kind !== 'no' || verdict.reason.code !== 'dimension' || verdict.reason.clause === null) continue;
    const { disagreement, clause } = verdict.reason;
    // a limit that is not kept (a damper too long here) is a no for this chassis and not a contradiction
    if (disagreement.agreement.relation === 'at-most') continue;
    const { measure } = disagreement.agreement;
    const [own, other] = [shown(disagreement.part), shown(disagreement.neighbour)];
    const key = `${clause.source.record} ${measure} ${other}`;
    if (found.has(key)) continue;
    const params = { sku: part.sku, chassis: chassis.id, measure, own, other };
    found.set(key, problemAt(catalog, 'error', clause.source, 'clause-contradicts', params));
  }
  return [...found.values()];
}

const spacerLength = (catalog: Catalog, part: Part): Problem[] =>
  part.fits.length > 0 && part.role === 'travel-spacers' && !part.dimensions.has('length')
    ? [problemAt(catalog, 'error', part.source, 'travel-spacer-length', { sku: part.sku })]
    : [];

/** Slots that a part needs or excludes must be somewhere, and what it wants in them must go there. */
function slotsNamed(catalog: Catalog, part: Part, slots: ReturnType<typeof rolesBySlot>): Problem[] {
  const problems: Problem[] = [];
  const named = [...part.needs, ...part.excludes].flatMap((tie) => (tie.kind === 'slot' ? [tie.slot] : []));
  for (const slot of new Set(named)) {
    if (!slots.has(slot))
      problems.push(
        problemAt(catalog, 'error', part.source, 'unknown-slot', {
          slot,
          family: 'any family',
          known: [...slots.keys()],
        }),
      );
  }
  for (const need of part.needs) {
    const roles = need.kind === 'slot' ? slots.get(need.slot) : undefined;
    if (need.kind !== 'slot' || roles === undefined) continue;
    for (const sku of need.anyOf) {
      const role = catalog.parts.get(sku)?.role;
      if (role === undefined || role === need.slot || roles.has(role)) continue;
      problems.push(
        problemAt(catalog, 'warning', part.source, 'wrong-role', { sku, role, expected: [...roles][0] ?? need.slot }),
      );
    }
  }
  return problems;
}

/** A generation that a clause or a replacement names must be one of a family: a slip of the pen would make the statement silent. */
function generationsNamed(catalog: Catalog, part: Part): Problem[] {
  const named = [
    ...part.fits.map(({ generations, family, source }) => ({ generations, families: [family], source })),
    ...part.replacedBy.map(({ generations, families, source }) => ({
      generations,
      families: families ?? [...catalog.families.keys()],
      source,
    })),
  ];
  return named.flatMap(({ generations, families, source }) => {
    const known = families.flatMap((id) => catalog.families.get(id)?.generations.map((one) => one.id) ?? []);
    return (generations ?? [])
      .filter((id) => !known.includes(id))
      .map((id) =>
        problemAt(catalog, 'error', source, 'unknown-reference', {
          id,
          kind: families.length === 1 ? `generations of ${families[0]}` : 'generations',
          nearest: nearest(id, known),
        }),
      );
  });
}
