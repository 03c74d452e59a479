import { type Catalog, type Chassis, type Clause, clauseMatches, type Part, type Problem } from '../catalog/index.ts';
import { familyOf } from '../fork/index.ts';
import { type AirSpring, axialLoad, clearanceTestTravel, spacersKeepingEnd } from '../physics/index.ts';
import { AROUND, airOf, HIT_EXPONENT, type LoadedSpring, riderOf, spacerFor } from '../plan/index.ts';
import { held, type Micrometres } from '../quantity/index.ts';
import { doubt, mm } from './places.ts';

/** An air spring as a clause claims it in a chassis at a travel, with the maker's counts of volume spacers. */
interface Claim {
  readonly part: Part;
  readonly clause: Clause;
  readonly travel: Micrometres;
  readonly standard: number;
  readonly greatest: number;
  readonly fitted: (count: number) => LoadedSpring;
}

/** Can each air spring give the travel that it claims, and do the counts of volume spacers follow the travel as the gas law has it? */
export const springDoubts = (catalog: Catalog): Problem[] => {
  const said = new Set<string>();
  return [...catalog.chassis.values()].flatMap((chassis) => {
    const claims = claimsIn(catalog, chassis);
    const travels = claims.map((claim) => ({ claim, problems: travelDoubts(catalog, chassis, claim) }));
    const able = travels.flatMap(({ claim, problems }) => (problems.length === 0 ? [claim] : []));
    const problems = [...travels.flatMap((one) => one.problems), ...countDoubts(catalog, chassis, able)];
    // What is wrong with a clause is wrong in every chassis that it speaks of: said once.
    return problems.filter(({ code, params: { sku, travel } }) => {
      const key = `${code} ${String(sku)} ${String(travel)}`;
      return !said.has(key) && said.add(key);
    });
  });
};

/** The longest first; what a catalogue does not state of a spring is no claim. */
function claimsIn(catalog: Catalog, chassis: Chassis): Claim[] {
  const family = familyOf(catalog, chassis);
  const most = family.slots.find(({ name }) => name === 'volume-spacers')?.pieces ?? 0;
  const role = family.slots.find(({ name }) => name === 'spring')?.role;
  return [...catalog.parts.values()]
    .filter((part) => part.role === role && part.air !== null)
    .flatMap((part) => {
      const clause = part.fits.find((one) => !one.not && clauseMatches(one, chassis));
      const top = clause?.travels[0];
      if (!clause || top === undefined) return [];
      const spacer = spacerFor(catalog, part, chassis.family);
      const counts =
        clause.volumeSpacers.length === 0 ? [{ travel: null, standard: 0, greatest: 0 }] : clause.volumeSpacers;
      return counts.flatMap(({ travel: at, standard, greatest }): Claim[] => {
        const travel = at ?? held('length', top);
        // A count that no slot holds is a mistake of its own.
        if (standard === null || standard > most) return [];
        const fitted = (count: number) => airOf(part, clause, { travel, spacer, count });
        return [{ part, clause, travel, standard, greatest: Math.min(greatest ?? standard, most), fitted }];
      });
    })
    .sort((a, b) => b.travel - a.travel);
}

/**
 * At the greatest count there must be a chamber left at full travel, and the clearance test of ISO 4210-6 (2800 N, the maker's
 * least pressure) must press the fork to the end: a spring that holds that much back does not give its last millimetres to anybody.
 */
function travelDoubts(catalog: Catalog, chassis: Chassis, claim: Claim): Problem[] {
  const { part, clause, travel, greatest } = claim;
  const loaded = claim.fitted(greatest);
  if (loaded.kind !== 'air') return [];
  const { spring, limits } = loaded;
  const pump = limits.least;
  if (pump === null) return [];
  const tested = clearanceTestTravel(spring, { pump, ambient: AROUND, exponent: 1 });
  const about = { sku: part.sku, chassis: chassis.id, travel: mm(travel), spacers: greatest };
  if (!tested.ok) {
    if (tested.code !== 'chamber-too-small') return [];
    const left = Math.round(tested.params.left * 1e7) / 10;
    return [doubt(catalog, clause.source, 'spring-cannot-give-travel', { ...about, left, reached: null })];
  }
  if (tested.value.toTheEnd) return [];
  const reached = Math.round(tested.value.travel * 1e4) / 10;
  return [doubt(catalog, clause.source, 'spring-cannot-give-travel', { ...about, left: null, reached })];
}

/** How far a count may lie from the one that keeps the end of the stroke. */
const COUNTS_APART = 1;

/**
 * Each count against that of the same maker's next longer spring in the chassis. Makers practise fewer than keep the end of the
 * stroke whole (common practice, no source), so a count that goes the same way and not as far is left alone.
 */
function countDoubts(catalog: Catalog, chassis: Chassis, claims: readonly Claim[]): Problem[] {
  const contradicted = new Set<Claim>();
  return claims.flatMap((claim, at): Problem[] => {
    const longer = claims
      .slice(0, at)
      .findLast((one) => one.travel > claim.travel && one.part.maker === claim.part.maker && !contradicted.has(one));
    if (!longer) return [];
    const [before, after] = [longer.fitted(longer.standard), claim.fitted(claim.standard)];
    if (before.kind !== 'air' || after.kind !== 'air') return [];
    const nearest = keeping(before.spring, after.spring, claim);
    if (nearest === null || Math.abs(claim.standard - nearest) <= COUNTS_APART) return [];
    if (isOnTheWay(longer.standard, claim.standard, nearest)) return [];
    contradicted.add(claim);
    const { part, clause, travel, standard } = claim;
    return [
      doubt(catalog, clause.source, 'spacers-contradicted', {
        sku: part.sku,
        chassis: chassis.id,
        travel: mm(travel),
        standard,
        nearest,
        other: longer.part.sku,
        otherTravel: mm(longer.travel),
        otherStandard: longer.standard,
      }),
    ];
  });
}

/** True where a count moves from the old one towards the keeping one, without passing it. */
const isOnTheWay = (old: number, count: number, keeping: number): boolean =>
  keeping > old ? count > old && count <= keeping : count < old && count >= keeping;

function keeping(before: AirSpring, after: AirSpring, { part, greatest }: Claim): number | null {
  if (after.spacerVolume === 0) return null;
  const rider = riderOf(undefined, null, part);
  const load = axialLoad(rider.load);
  if (!load.ok) return null;
  const answer = spacersKeepingEnd({
    before,
    after,
    load: load.value,
    sag: rider.sag,
    ambient: AROUND,
    exponent: HIT_EXPONENT,
    greatest,
  });
  return answer.ok ? answer.value.nearest : null;
}
