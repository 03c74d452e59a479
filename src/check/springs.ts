import { type Catalog, type Chassis, type Clause, clauseMatches, type Part, type Problem } from '../catalog/index.ts';
import { familyOf } from '../fork/index.ts';
import { axialLoad, clearanceTestTravel, countsDisagree, spacersKeepingEnd } from '../physics/index.ts';
import { AROUND, airOf, HIT_EXPONENT, type LoadedSpring, riderOf, spacerFor } from '../plan/index.ts';
import { held, type Micrometres } from '../quantity/index.ts';
import { doubt, mm } from './places.ts';
import { within } from './verdicts.ts';

/** An air spring as a clause claims it in a chassis at a travel, with the maker's counts of volume spacers. */
interface Claim {
  readonly part: Part;
  readonly clause: Clause;
  readonly travel: Micrometres;
  readonly standard: number;
  readonly greatest: number;
  readonly fitted: (count: number) => LoadedSpring;
}

/** Can each air spring give the travel that it claims, and do the counts of volume spacers keep the end of the stroke, give or take one? */
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
        // A count that no slot holds, and a travel that the chassis does not take, are mistakes of their own.
        if (standard === null || standard > most || !within(chassis.travel, travel)) return [];
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

/** What the gas law makes of a count, seen from a longer spring. */
interface Judged {
  readonly longer: Claim;
  readonly nearest: number;
}

/**
 * Each count against that of every longer spring of the same maker in the chassis: a plan may lead from any of them to it. More than one apart
 * is a doubt, also where the count moves the right way; of several, the one that lies furthest off is said. A count that is in doubt itself
 * speaks against no other.
 */
function countDoubts(catalog: Catalog, chassis: Chassis, claims: readonly Claim[]): Problem[] {
  const contradicted = new Set<Claim>();
  return claims.flatMap((claim, at): Problem[] => {
    const apart = ({ nearest }: Judged): number => Math.abs(claim.standard - nearest);
    const [worst] = claims
      .slice(0, at)
      .filter((one) => one.travel > claim.travel && one.part.maker === claim.part.maker && !contradicted.has(one))
      .flatMap((longer): Judged[] => {
        const nearest = keeping(longer, claim);
        return nearest !== null && countsDisagree(claim.standard, nearest) ? [{ longer, nearest }] : [];
      })
      .sort((a, b) => apart(b) - apart(a));
    if (!worst) return [];
    contradicted.add(claim);
    const { part, clause, travel, standard } = claim;
    const { longer, nearest } = worst;
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

/** Counts that are tried, beyond what the slot holds too: where the chamber has no room for one more, it ends sooner. */
const TRIED = 30;

/** The whole count that keeps the end of the longer spring's stroke in the shorter one; null where none is worked out. */
function keeping(longer: Claim, { part, standard, fitted }: Claim): number | null {
  const [before, after] = [longer.fitted(longer.standard), fitted(standard)];
  if (before.kind !== 'air' || after.kind !== 'air' || after.spring.spacerVolume === 0) return null;
  const rider = riderOf(undefined, null, part);
  const load = axialLoad(rider.load);
  if (!load.ok) return null;
  const answer = spacersKeepingEnd({
    before: before.spring,
    after: after.spring,
    load: load.value,
    sag: rider.sag,
    ambient: AROUND,
    exponent: HIT_EXPONENT,
    greatest: TRIED,
  });
  return answer.ok ? answer.value.nearest : null;
}
