import type { Question } from '../../src/plan/question.ts';
import { millimetres } from '../../src/quantity/brands.ts';
import { type Book, type Content, chassisById, familyOf, known, partsFor } from './book.ts';
import type { Bike, Chassis, Family, WrittenContent } from './records.ts';
import { fittingClause, givenTravel, spacerRule, takenAway } from './spring.ts';
import { inMonths, type WhenMade, whenMade } from './when-made.ts';

/** The fork in front of you. Lengths in micrometres. */
export interface Now {
  readonly family: Family;
  readonly chassis: Chassis;
  readonly when: WhenMade;
  readonly travel: number;
  readonly contents: ReadonlyMap<string, Content>;
  readonly settings: ReadonlyMap<string, number>;
  /** The bike it left the works with. */
  readonly ownBike: Bike | null;
  /** The bike that it must suit. */
  readonly bike: Bike | null;
  readonly bikeSize: string | null;
  readonly steererOfBike: number | null;
}

/** The fork in front of you, or null where the question does not settle it. */
export function findNow(book: Book, question: Question): Now | null {
  const ownBike = bikeById(book, question.bike);
  const leftWith = ownBike === null ? null : forkOfBike(ownBike, question);
  const chassisId = question.chassis ?? leftWith?.chassis;
  if (chassisId === undefined) return null;
  const chassis = chassisById(book, chassisId);
  const family = familyOf(book, chassis);
  const when = whenMade(question, family, chassis);
  const travel = question.travelNow === undefined ? (leftWith?.travel ?? null) : millimetres(question.travelNow);
  if (travel === null) return null;
  const works = worksBuild(book, family, chassis, travel, when);
  if (works === null) return null;
  const contents = new Map(works.contents);
  for (const [slot, written] of Object.entries(leftWith?.with ?? {}))
    contents.set(slot, readContent(family, slot, written));
  for (const [slot, content] of Object.entries(question.with)) contents.set(slot, content);
  if (travelOf(book, family, chassis, contents, when) !== travel) return null;
  const bike = bikeById(book, question.onto) ?? ownBike;
  for (const [slot, written] of Object.entries(bike?.slots ?? {}))
    if (!(slot in question.with)) contents.set(slot, readContent(family, slot, written));
  const settings = new Map([...works.settings, ...Object.entries(question.settings).map(settingInMicrometres)]);
  const bikeSize = (question.onto === undefined ? question.size : question.ontoSize) ?? null;
  const steererOfBike = leftWith?.['steerer-length'] ?? null;
  return { family, chassis, when, travel, contents, settings, ownBike, bike, bikeSize, steererOfBike };
}

const settingInMicrometres = ([name, value]: [string, number]): [string, number] => [name, millimetres(value)];

const bikeById = (book: Book, id: string | undefined): Bike | null =>
  id === undefined
    ? null
    : known(
        book.catalog.bikes.find((bike) => bike.id === id),
        id,
      );

/** The one fork that the bike left the works with, by size and month; null where that is not one. */
function forkOfBike(bike: Bike, question: Question): Bike['forks'][number] | null {
  const possible = bike.forks.filter(
    ({ sizes, months }) =>
      (sizes === undefined || question.size === undefined || sizes.includes(question.size)) &&
      inMonths(months, question.built ?? null) !== 'no',
  );
  return possible.length === 1 ? (possible[0] ?? null) : null;
}

interface WorksBuild {
  readonly travel: number;
  readonly usual: boolean;
  readonly contents: ReadonlyMap<string, Content>;
  readonly settings: readonly (readonly [string, number])[];
}

function worksBuild(book: Book, family: Family, chassis: Chassis, travel: number, when: WhenMade): WorksBuild | null {
  const builds = factoryBuilds(family, chassis, when);
  const there = builds.filter((build) => build.travel === travel);
  if (there.length > 0) return usualOf(there);
  const usual = [...new Set(builds.map((build) => build.travel))].map((at) =>
    usualOf(builds.filter((build) => build.travel === at)),
  );
  return onlyOne(usual.flatMap((build) => (build === null ? [] : swapsTo(book, family, chassis, build, travel, when))));
}

const usualOf = (builds: readonly WorksBuild[]): WorksBuild | null =>
  builds.length === 1 ? (builds[0] ?? null) : (builds.find(({ usual }) => usual) ?? null);

function factoryBuilds(family: Family, chassis: Chassis, when: WhenMade): readonly WorksBuild[] {
  return chassis.builds
    .filter(
      ({ generations }) =>
        generations.length === 0 ||
        when.generations.length === 0 ||
        generations.some((id) => when.generations.includes(id)),
    )
    .map(({ travel, usual, slots, settings }) => {
      const written: Readonly<Record<string, WrittenContent>> = {
        ...chassis.fitted,
        ...slots,
        upper: { sku: chassis.upper, quantity: 1 },
        lowers: { sku: chassis.lowers, quantity: 1 },
      };
      const contents = new Map(
        Object.keys(family.slots).map((slot) => [slot, readContent(family, slot, written[slot] ?? null)]),
      );
      return { travel, usual, contents, settings: Object.entries(settings) };
    });
}

/** A SKU alone means the slot's pieces; in a slot with a greatest count, one. */
export function readContent(family: Family, slot: string, written: WrittenContent): Content {
  if (written === null) return null;
  const rule = family.slots[slot];
  return { sku: written.sku, quantity: written.quantity ?? (rule?.most === undefined ? (rule?.pieces ?? 1) : 1) };
}

/** A usual build with the one spring that gives a travel there, or with the count of travel spacers where these set it. */
function swapsTo(
  book: Book,
  family: Family,
  chassis: Chassis,
  build: WorksBuild,
  travel: number,
  when: WhenMade,
): readonly WorksBuild[] {
  const springs = partsFor(book, family, 'spring').map((part): readonly [string, Content] => [
    'spring',
    { sku: part.sku, quantity: 1 },
  ]);
  const isBySpacers = family['travel-set-by'] === 'travel-spacers';
  const swaps = isBySpacers ? otherTravelSpacers(book, family, chassis, build, when) : springs;
  return swaps.flatMap(([slot, content]) => {
    const contents = new Map(build.contents).set(slot, content);
    if (travelOf(book, family, chassis, contents, when) !== travel) return [];
    return [{ ...build, travel, contents: atStandardSpacers(book, chassis, contents, travel, when) }];
  });
}

function otherTravelSpacers(
  book: Book,
  family: Family,
  chassis: Chassis,
  build: WorksBuild,
  when: WhenMade,
): readonly (readonly [string, Content])[] {
  const most = family.slots['travel-spacers']?.most ?? 0;
  if (most === 0) return [];
  const fitted = build.contents.get('travel-spacers') ?? null;
  const fitting = partsFor(book, family, 'travel-spacers').filter(
    (part) => fittingClause(part, chassis, when) !== null,
  );
  const skus = fitted === null ? fitting.map(({ sku }) => sku) : [fitted.sku];
  const counts = Array.from({ length: most }, (_, at) => at + 1);
  const some = skus.flatMap((sku) =>
    counts.map((quantity): [string, Content] => ['travel-spacers', { sku, quantity }]),
  );
  return [['travel-spacers', null], ...some];
}

function atStandardSpacers(
  book: Book,
  chassis: Chassis,
  contents: ReadonlyMap<string, Content>,
  travel: number,
  when: WhenMade,
): ReadonlyMap<string, Content> {
  const spring = contents.get('spring') ?? null;
  const { standard } = spacerRule(spring === null ? null : (book.parts.get(spring.sku) ?? null), chassis, travel, when);
  if (standard === null || !contents.has('volume-spacers')) return contents;
  const now = contents.get('volume-spacers') ?? null;
  const seat = spring === null ? undefined : book.parts.get(spring.sku)?.interfaces['spacer-seat'];
  const sku =
    now?.sku ??
    book.catalog.parts.find(
      (part) =>
        part.role === 'volume-spacers' &&
        part.interfaces['spacer-seat'] === seat &&
        fittingClause(part, chassis, when) !== null,
    )?.sku;
  const next = standard === 0 || sku === undefined ? null : { sku, quantity: standard };
  return new Map(contents).set('volume-spacers', next);
}

/** The travel that a build has by its spring and travel spacers; null where nobody says. */
export function travelOf(
  book: Book,
  family: Family,
  chassis: Chassis,
  contents: ReadonlyMap<string, Content>,
  when: WhenMade,
): number | null {
  const spring = contents.get('spring') ?? null;
  const part = spring === null ? undefined : book.parts.get(spring.sku);
  const given = part === undefined ? null : givenTravel(part, chassis, when);
  return given === null ? null : given - takenAway(book, family, contents.get('travel-spacers') ?? null);
}

/** The build, where all are the same one. */
function onlyOne(builds: readonly WorksBuild[]): WorksBuild | null {
  const distinct = new Map(builds.map((build) => [JSON.stringify([...build.contents]), build]));
  return distinct.size === 1 ? ([...distinct.values()][0] ?? null) : null;
}
