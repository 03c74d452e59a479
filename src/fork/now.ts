import {
  type Catalog,
  type Chassis,
  type Content,
  type FactoryBuild,
  listsOf,
  type Part,
  type Slot,
} from '../catalog/index.ts';
import { type Identity, possibleGenerations } from '../fitment/index.ts';
import { type Micrometres, sortedBy } from '../quantity/index.ts';
import type { BikeContext } from './bike.ts';
import { type Build, contentKey, familyOf, sameContent, spacerCounts, travelOf, travelsOf } from './build.ts';
import { keepLast } from './keep-last.ts';

/** The build in front of you, and on what it rests. */
export interface Now {
  /** Every slot of the fork in the family's order, then those of the bike. */
  readonly slots: readonly Slot[];
  readonly identity: Identity;
  /** The bike that the fork must suit; null where none is named. */
  readonly bike: BikeContext | null;
  readonly build: Build;
  readonly travel: Micrometres;
  /** The factory build it was taken from. */
  readonly factory: FactoryBuild;
  /** True where no factory build has that travel and the spring or travel spacers were put in by rule. */
  readonly derived: boolean;
  /** Slots in which other factory builds of that travel differ, with what they hold. */
  readonly assumed: readonly { readonly slot: string; readonly held: Content; readonly others: readonly Content[] }[];
}

/** Why there is no one build in front of you. */
export type NowFault =
  | { readonly kind: 'no-build'; readonly travels: readonly Micrometres[] }
  | {
      readonly kind: 'several-builds';
      readonly choices: readonly { readonly slot: string; readonly content: Content }[][];
    }
  | { readonly kind: 'other-travel'; readonly gives: Micrometres | null };

/** What the question says of the fork in front of you. */
export interface Given {
  readonly contents: ReadonlyMap<string, Content>;
  readonly settings: ReadonlyMap<string, Micrometres>;
  readonly identity: Identity;
  readonly bike: BikeContext | null;
}

/** The build in front of you: model.md, section 2. */
export function buildNow(catalog: Catalog, chassis: Chassis, travel: Micrometres, said: Given): Now | NowFault {
  const generations = possibleGenerations(familyOf(catalog, chassis), chassis, said.identity);
  const given: Given = { ...said, identity: { ...said.identity, generations } };
  const atTravel = buildsOf(catalog, chassis, given.identity).filter((build) => build.travel === travel);
  const usual = usualOf(atTravel);
  if (usual) return settle(catalog, chassis, travel, given, usual, usual.slots, false, atTravel);
  return derive(catalog, chassis, travel, given);
}

const before = new WeakMap<Catalog, Map<string, Now | NowFault>>();
/** Forks that a catalogue remembers, the last ones asked about: a counter, a reach map and the plan after it ask about one fork again and again. */
const MOST_FORKS = 64;

/** As `buildNow`; of the forks asked about last it is the very same one, so that what was worked out of it stands. */
export function sameNow(catalog: Catalog, chassis: Chassis, travel: Micrometres, said: Given): Now | NowFault {
  const forks = before.get(catalog) ?? new Map<string, Now | NowFault>();
  before.set(catalog, forks);
  const { contents, settings, identity, bike } = said;
  const onto = bike && [bike.bike.id, bike.size, bike.own, bike.tyre, bike.steererLength];
  const key = JSON.stringify([chassis.id, travel, [...contents], [...settings], identity, onto]);
  const now = forks.get(key) ?? buildNow(catalog, chassis, travel, said);
  keepLast(forks, key, now, MOST_FORKS);
  return now;
}

/** The factory builds of a chassis that the fork can be, as far as serial number and month tell. */
function buildsOf(catalog: Catalog, chassis: Chassis, identity: Identity): readonly FactoryBuild[] {
  const possible = possibleGenerations(familyOf(catalog, chassis), chassis, identity);
  return chassis.builds.filter(
    ({ generations }) => generations === null || generations.some((id) => possible.includes(id)),
  );
}

const usualOf = (builds: readonly FactoryBuild[]): FactoryBuild | null =>
  builds.find((build) => build.usual) ?? (builds.length === 1 ? (builds[0] ?? null) : null);

function settle(
  catalog: Catalog,
  chassis: Chassis,
  travel: Micrometres,
  given: Given,
  factory: FactoryBuild,
  slots: ReadonlyMap<string, Content>,
  derived: boolean,
  alternatives: readonly FactoryBuild[],
): Now | NowFault {
  const { contents, identity, bike } = given;
  const onFork = [...slots].map(([slot, content]): [string, Content] => [
    slot,
    contents.has(slot) ? (contents.get(slot) ?? null) : content,
  ]);
  const onBike = (bike?.slots ?? []).map(({ name }): [string, Content] => [
    name,
    contents.get(name) ?? bike?.bike.slots.get(name) ?? null,
  ]);
  const build: Build = {
    chassis,
    slots: new Map([...onFork, ...onBike]),
    settings: new Map([...factory.settings].map(([name, value]) => [name, given.settings.get(name) ?? value])),
  };
  const gives = slots.has('spring') ? travelOf(catalog, build, identity) : travel;
  if (gives !== travel) return { kind: 'other-travel', gives };
  const assumed = [...slots].flatMap(([slot, held]) => {
    if (contents.has(slot)) return [];
    const others = new Map(
      alternatives.map((other) => other.slots.get(slot) ?? null).map((content) => [contentKey(content), content]),
    );
    others.delete(contentKey(held));
    return others.size === 0 ? [] : [{ slot, held, others: [...others.values()] }];
  });
  return {
    slots: [...familyOf(catalog, chassis).slots, ...(bike?.slots ?? [])],
    identity,
    bike,
    build,
    travel,
    factory,
    derived,
    assumed,
  };
}

/** No factory build at that travel: the usual builds with the one spring, or count of travel spacers, that gives it. */
function derive(catalog: Catalog, chassis: Chassis, travel: Micrometres, given: Given): Now | NowFault {
  const found = new Map<string, { readonly factory: FactoryBuild; readonly slots: ReadonlyMap<string, Content> }>();
  for (const factory of usualBuilds(buildsOf(catalog, chassis, given.identity))) {
    for (const choice of travelChoices(catalog, chassis, factory, travel, given)) {
      const slots = new Map(factory.slots);
      for (const { slot, content } of choice) slots.set(slot, content);
      for (const [slot, content] of given.contents) slots.set(slot, content);
      found.set(
        sortedBy(slots, ([slot]) => slot)
          .map(([slot, content]) => `${slot}=${contentKey(content)}`)
          .join(' '),
        { factory, slots },
      );
    }
  }
  const builds = [...found.values()];
  const [only] = builds;
  if (!only) return { kind: 'no-build', travels: [...new Set(chassis.builds.map((build) => build.travel))] };
  if (builds.length > 1)
    return {
      kind: 'several-builds',
      choices: builds.map(({ slots }) =>
        differing(
          builds.map((build) => build.slots),
          slots,
        ),
      ),
    };
  return settle(catalog, chassis, travel, given, only.factory, only.slots, true, []);
}

const usualBuilds = (builds: readonly FactoryBuild[]): FactoryBuild[] =>
  [...new Set(builds.map((build) => build.travel))].flatMap(
    (travel) => usualOf(builds.filter((build) => build.travel === travel)) ?? [],
  );

/** Contents that settle which of several builds it is. */
function differing(
  all: readonly ReadonlyMap<string, Content>[],
  slots: ReadonlyMap<string, Content>,
): { slot: string; content: Content }[] {
  return [...slots]
    .filter(([slot, content]) => all.some((other) => !sameContent(other.get(slot) ?? null, content)))
    .map(([slot, content]) => ({ slot, content }));
}

/** Each way to give a factory build another travel by its spring or its travel spacers, with the standard volume spacers for it. */
function travelChoices(
  catalog: Catalog,
  chassis: Chassis,
  factory: FactoryBuild,
  travel: Micrometres,
  given: Given,
): { slot: string; content: Content }[][] {
  const family = familyOf(catalog, chassis);
  const choices: { slot: string; content: Content }[][] = [];
  const springs = given.contents.has('spring')
    ? [given.contents.get('spring') ?? null]
    : listsOf(catalog)
        .partsAbout('spring', chassis.family)
        .map((part): Content => ({ sku: part.sku, quantity: 1 }));
  const held = factory.slots.get('travel-spacers') ?? null;
  const spacerSlot = family.slots.find((slot) => slot.name === 'travel-spacers');
  const bySpacers =
    family.travelSetBy === 'travel-spacers' && spacerSlot !== undefined && !given.contents.has('travel-spacers');
  for (const spring of bySpacers ? [factory.slots.get('spring') ?? null] : springs) {
    for (const spacers of bySpacers
      ? spacerContents(catalog, spacerSlot.pieces, held, chassis)
      : [given.contents.get('travel-spacers') ?? held]) {
      if (travelsOf(catalog, chassis, spring, spacers, given.identity)[0] !== travel) continue;
      const choice: { slot: string; content: Content }[] = [{ slot: 'spring', content: spring }];
      if (spacerSlot) choice.push({ slot: 'travel-spacers', content: spacers });
      const { standard } = spacerCounts(catalog, chassis, spring, travel, given.identity);
      const volume = volumeSpacers(catalog, chassis, factory, standard);
      if (volume !== undefined && family.slots.some((slot) => slot.name === 'volume-spacers'))
        choice.push({ slot: 'volume-spacers', content: volume });
      choices.push(choice);
    }
  }
  return choices;
}

function spacerContents(catalog: Catalog, most: number, held: Content, chassis: Chassis): Content[] {
  const skus = held ? [held.sku] : allowedIn(catalog, 'travel-spacers', chassis).map((part) => part.sku);
  return [
    null,
    ...skus.flatMap((sku) => Array.from({ length: most }, (_, index): Content => ({ sku, quantity: index + 1 }))),
  ];
}

/** Parts of a role that some statement allows in the family. */
const allowedIn = (catalog: Catalog, role: string, { family }: Chassis): readonly Part[] =>
  listsOf(catalog)
    .partsAbout(role, family)
    .filter(({ fits }) => fits.some((clause) => !clause.not && clause.family === family));

/** The volume spacers of a derived build: the standard count of the kind that is in the factory build or the only kind listed. */
function volumeSpacers(
  catalog: Catalog,
  chassis: Chassis,
  factory: FactoryBuild,
  standard: number | null,
): Content | undefined {
  if (standard === null) return undefined;
  if (standard === 0) return null;
  const held = factory.slots.get('volume-spacers') ?? null;
  const listed = allowedIn(catalog, 'volume-spacers', chassis);
  const sku = held?.sku ?? (listed.length === 1 ? listed[0]?.sku : undefined);
  return sku === undefined ? undefined : { sku, quantity: standard };
}
