import { type Build, type Content, readContent, sameBuild, sameContent, slotsOf, travelOf } from './build.ts';
import type { Book } from './catalog.ts';
import { derivedBuilds } from './derived.ts';
import { length } from './measure.ts';
import type { Question } from './question.ts';
import { field, type Row, row, rows, text } from './read.ts';

/** The build in front of you, or why there is none. */
export type Now =
  | { readonly ok: true; readonly build: Build; readonly derived: boolean; readonly assumed: readonly string[] }
  | { readonly ok: false; readonly why: string };

/** Works out now from catalogue and question alone (section 2). */
export function nowOf(book: Book, question: Question): Now {
  const chassis = book.chassis.get(question.chassis);
  const family = book.families.get(text(chassis?.family) ?? '');
  if (!chassis || !family) return { ok: false, why: `no chassis ${question.chassis} with a family` };
  const slots = [...slotsOf(family).keys()];
  const there = rows(chassis.builds).filter((build) => length(build.travel) === question.travelNow);
  if (there.length === 0) return derivedNow(book, question, chassis, family);
  const usual = usualOf(there);
  if (!usual) return { ok: false, why: 'several factory builds at this travel and not exactly one marked usual' };
  const build = factoryBuild(slots, chassis, usual);
  const assumed = slots.filter(
    (slot) =>
      !question.with.has(slot) &&
      there.some((other) => !sameContent(build.get(slot), factoryBuild(slots, chassis, other).get(slot))),
  );
  return { ok: true, build: put(build, question.with), derived: false, assumed };
}

function derivedNow(book: Book, question: Question, chassis: Row, family: Row): Now {
  const slots = [...slotsOf(family).keys()];
  const usual = usualBuilds(chassis).map((build) => factoryBuild(slots, chassis, build));
  const ways = usual.flatMap((build) => derivedBuilds(book, build, chassis, family, question.travelNow));
  const named = ways.filter((way) => agrees(way, question.with, ['spring', 'travel-spacers']));
  const told = named.length > 0 ? named : usual;
  const builds = distinct(told.map((way) => put(way, question.with))).filter(
    (way) => travelOf(book, way, chassis) === question.travelNow,
  );
  const [only] = builds;
  return only && builds.length === 1
    ? { ok: true, build: only, derived: true, assumed: [] }
    : { ok: false, why: `no factory build at this travel, and ${builds.length} ways to derive one` };
}

/** What left the works: the build's own slots, then what every build of the chassis shares; else nothing. */
function factoryBuild(slots: readonly string[], chassis: Row, build: Row): Build {
  const own = row(build.slots);
  const shared = row(chassis.fitted);
  const listed: Row = { upper: chassis.upper, lowers: chassis.lowers };
  return new Map(
    slots.map((slot) => {
      const from = [own, shared, listed].find((contents) => Object.hasOwn(contents, slot));
      return [slot, from ? readContent(field(from, slot)) : null];
    }),
  );
}

/** One build alone is the usual one; of several the one that is marked. */
function usualOf(builds: readonly Row[]): Row | null {
  const marked = builds.length === 1 ? builds : builds.filter((build) => build.usual === true);
  return marked.length === 1 ? (marked[0] ?? null) : null;
}

function usualBuilds(chassis: Row): readonly Row[] {
  const byTravel = new Map<number | null, Row[]>();
  for (const build of rows(chassis.builds)) {
    const travel = length(build.travel);
    byTravel.set(travel, [...(byTravel.get(travel) ?? []), build]);
  }
  return [...byTravel.values()].map(usualOf).filter((build) => build !== null);
}

const put = (build: Build, contents: Build): Build => new Map<string, Content | null>([...build, ...contents]);

const agrees = (build: Build, told: Build, slots: readonly string[]): boolean =>
  slots.every((slot) => !told.has(slot) || sameContent(build.get(slot), told.get(slot)));

const distinct = (builds: readonly Build[]): readonly Build[] =>
  builds.filter((build, index) => builds.findIndex((other) => sameBuild(other, build)) === index);
