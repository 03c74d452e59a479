import type { Catalog, Chassis, Clause, FactoryBuild, Part, Problem } from '../catalog/index.ts';
import { AGREEMENTS, fitVerdict, type Identity, UNKNOWN_IDENTITY } from '../fitment/index.ts';
import { type ForkProblem, familyOf, forkProblem, NOTHING_WANTED, type Now } from '../fork/index.ts';
import type { Micrometres } from '../quantity/index.ts';
import { Search, StepBudget, smallestConflict, tableOf } from '../solve/index.ts';
import { doubt, mm } from './places.ts';
import { generationsOf, mayFit, ofGeneration, travelsGiven, within } from './verdicts.ts';

/** Steps for one question of this check; where they run out nothing is said. */
const MOST_STEPS = 50_000;
/** Travels for which the reason is looked up: in a catalogue with more of them the first few lead to the rest. */
const MOST_REASONS = 20;

/** A travel that a spring's clause claims in a chassis. */
interface Claim {
  readonly part: Part;
  readonly clause: Clause;
  readonly travel: Micrometres;
}

/**
 * Is each travel that a spring claims in a chassis one that a plan reaches there, from some factory build, without resting on anything unknown? Asked of
 * the engine with kept traits and shelf left aside: a wish may name them. A travel of a factory build is reached, since the fork came so. And a maker's limit
 * that alone stands against it (a damper that is too long closed, the travel that the maker of a part allows) is a statement and no slip.
 */
export function reachDoubts(catalog: Catalog): Problem[] {
  let reasons = MOST_REASONS;
  const said = new Set<string>();
  return [...catalog.chassis.values()].flatMap((chassis) => {
    const starts = new Starts(catalog, chassis);
    return claimsIn(catalog, chassis).flatMap(({ claims, never, part, clause }): Problem[] => {
      const { sku } = part;
      if (never && !said.has(`${clause.source.record} ${never.limit}`)) {
        said.add(`${clause.source.record} ${never.limit}`);
        const params = { sku, chassis: chassis.id, travel: mm(never.travel), limit: never.limit, says: never.says };
        return [doubt(catalog, clause.source, 'travel-outside-range', params)];
      }
      return claims.flatMap((claim) => {
        const key = `${clause.source.record} ${claim.travel}`;
        const failed = said.has(key) ? null : starts.whyNot(claim);
        if (!failed) return [];
        said.add(key);
        const rules = reasons-- > 0 ? failed.rules() : [];
        const from = failed.from / 1000;
        const params = { sku, chassis: chassis.id, travel: mm(claim.travel), from, rules };
        return [doubt(catalog, clause.source, 'travel-out-of-reach', params)];
      });
    });
  });
}

interface Claimed {
  readonly part: Part;
  readonly clause: Clause;
  readonly claims: readonly Claim[];
  /** A travel that some limit never allows, and that limit. */
  readonly never: { readonly travel: Micrometres; readonly limit: string; readonly says: 'chassis' | 'clause' } | null;
}

/**
 * What each spring claims whose clause speaks of the chassis: the travel that it gives, or the greatest that travel spacers bring down within the limits;
 * and those for which it gives a count of volume spacers.
 */
function claimsIn(catalog: Catalog, chassis: Chassis): Claimed[] {
  const family = familyOf(catalog, chassis);
  const role = family.slots.find(({ name }) => name === 'spring')?.role;
  return [...catalog.parts.values()]
    .filter((part) => part.role === role)
    .flatMap((part) =>
      part.fits.flatMap((clause): Claimed[] => {
        if (!speaksOf(catalog, part, clause, chassis)) return [];
        const isAllowed = (travel: number): boolean =>
          within(chassis.travel, travel) && (clause.limits === null || within(clause.limits, travel));
        const given = travelsGiven(catalog, family, clause);
        const [greatest] = given;
        const first = given.find(isAllowed);
        if (first === undefined)
          return greatest === undefined ? [] : [{ part, clause, claims: [], never: beyond(chassis, clause, greatest) }];
        const counted = clause.volumeSpacers.flatMap(({ travel }) => travel ?? []).filter(isAllowed);
        const claims = [...new Set([first, ...counted])].map((travel) => ({ part, clause, travel }));
        return [{ part, clause, claims, never: null }];
      }),
    );
}

/** True where the clause is the one by which a part goes into the chassis, for some generation, month and serial number. */
function speaksOf(catalog: Catalog, part: Part, clause: Clause, chassis: Chassis): boolean {
  if (clause.not || clause.family !== chassis.family) return false;
  return generationsOf(familyOf(catalog, chassis), chassis).some((one) =>
    decides(catalog, part, clause, ofGeneration(chassis, one)),
  );
}

function decides(catalog: Catalog, part: Part, clause: Clause, body: Chassis): boolean {
  const verdict = fitVerdict(catalog, part, body, identityFor(clause));
  return mayFit(verdict) && 'clause' in verdict && verdict.clause?.source.record === clause.source.record;
}

/** The limit that a travel does not keep: the chassis' or the clause's own. */
function beyond(chassis: Chassis, clause: Clause, travel: Micrometres): NonNullable<Claimed['never']> {
  const byChassis = clause.limits === null || !within(chassis.travel, travel);
  const range = byChassis ? chassis.travel : clause.limits;
  const isShort = range.least !== null && travel < range.least;
  const limit = isShort ? `at least ${mm(range.least)}` : `at most ${mm(range.greatest)}`;
  return { travel, limit, says: byChassis ? 'chassis' : 'clause' };
}

/** A fork of which a clause certainly speaks, as far as month and serial number go. */
const identityFor = ({ months, serials }: Clause): Identity => ({
  ...UNKNOWN_IDENTITY,
  month: months?.from ?? months?.to ?? null,
  serial: serials ? `${serials.letters}${serials.from}` : null,
});

interface Failed {
  readonly from: Micrometres;
  readonly rules: () => readonly string[];
}

/** The factory builds of a chassis as questions: what can become of each while the chassis stays. */
class Starts {
  private readonly catalog: Catalog;
  private readonly chassis: Chassis;
  private readonly made = new Map<string, ForkProblem>();

  constructor(catalog: Catalog, chassis: Chassis) {
    this.catalog = catalog;
    this.chassis = chassis;
  }

  /** Null where some build reaches the claim, a stated limit alone keeps it from that, or the steps ran out. */
  whyNot(claim: Claim): Failed | null {
    const failed = this.tried(claim);
    if (!failed) return null;
    const lifted = new Starts(withoutLimits(this.catalog), bodyWithoutLimits(this.chassis));
    return lifted.tried(claim) ? failed : null;
  }

  private tried(claim: Claim): Failed | null {
    let first: Failed | null = null;
    for (const generation of generationsOf(familyOf(this.catalog, this.chassis), this.chassis)) {
      if (!decides(this.catalog, claim.part, claim.clause, ofGeneration(this.chassis, generation))) continue;
      for (const [at, factory] of this.chassis.builds.entries()) {
        const { generations, travel } = factory;
        if (generations !== null && generation !== null && !generations.includes(generation)) continue;
        const fork = this.forkFrom(factory, `${at}`, generation, identityFor(claim.clause));
        const asked = pinned(fork, claim);
        const holds = (member: number): boolean => fork.members[member]?.kind !== 'kept';
        if (canStand(asked, holds) !== false) return null;
        first ??= { from: travel, rules: () => conflictOf(asked) };
      }
    }
    return first;
  }

  private forkFrom(factory: FactoryBuild, at: string, generation: string | null, identity: Identity): ForkProblem {
    const key = [at, generation, identity.month, identity.serial].join(' ');
    const known = this.made.get(key);
    if (known) return known;
    const body = ofGeneration(this.chassis, generation);
    const family = familyOf(this.catalog, body);
    const now: Now = {
      slots: family.slots,
      identity,
      bike: null,
      build: { chassis: body, slots: factory.slots, settings: factory.settings },
      travel: factory.travel,
      factory,
      derived: false,
      assumed: [],
    };
    const here: Catalog = { ...this.catalog, chassis: new Map([[body.id, body]]) };
    const fork = forkProblem(here, now, NOTHING_WANTED, { allowUnknown: false });
    this.made.set(key, fork);
    return fork;
  }
}

/** What makers state as a limit is left out: how much room there is, and which travel a part is allowed. */
const bodyWithoutLimits = (chassis: Chassis): Chassis => {
  const rooms = AGREEMENTS.filter((one) => one.relation === 'at-most' && one.with === 'chassis').map(
    ({ other }) => other,
  );
  return { ...chassis, dimensions: new Map([...chassis.dimensions].filter(([name]) => !rooms.includes(name))) };
};
const withoutLimits = (catalog: Catalog): Catalog => ({
  ...catalog,
  parts: new Map(
    [...catalog.parts].map(([sku, part]) => [
      sku,
      { ...part, fits: part.fits.map((clause) => ({ ...clause, limits: null })) },
    ]),
  ),
});

/** The question with spring and travel settled as the claim has them. */
function pinned(fork: ForkProblem, { part, travel }: Claim): ForkProblem {
  const spring = fork.domains.findIndex(({ slot }) => slot.name === 'spring');
  const { sizes, tables } = fork.problem;
  const holdsSpring = ([value = 0]: readonly number[]): boolean =>
    fork.domains[spring]?.contents[value]?.sku === part.sku;
  const holdsTravel = ([value = 0]: readonly number[]): boolean => fork.travels[value] === travel;
  const pins = [
    tableOf(sizes, [spring + 1], null, holdsSpring),
    tableOf(sizes, [fork.domains.length + fork.settings.length + 1], null, holdsTravel),
  ];
  return { ...fork, problem: { ...fork.problem, tables: [...pins, ...tables] } };
}

function canStand(fork: ForkProblem, holds: (member: number) => boolean): boolean | null {
  const end = new Search(fork.problem, holds, fork.order).run(new StepBudget(MOST_STEPS), { leaf: () => false });
  return end === 'stopped' ? null : end === 'enough';
}

/** The codes of the rules that stand in the way: a smallest set of them. */
function conflictOf(fork: ForkProblem): readonly string[] {
  const members = fork.members.flatMap(({ kind }, at) => (kind === 'kept' ? [] : [at]));
  const conflict = smallestConflict(members, (held) => canStand(fork, (member) => held.has(member)));
  return [...new Set((conflict?.members ?? []).flatMap((member) => fork.members[member]?.code ?? []))];
}
