import { contentsOf } from './bike.ts';
import { type Build, type Content, readContent, sameBuild, sameContent, slotsOf, travelOf } from './build.ts';
import type { Book } from './catalog.ts';
import { type Body, derivedBuilds } from './derived.ts';
import { madeOf, ofGenerations } from './made.ts';
import { length } from './measure.ts';
import type { Question } from './question.ts';
import { field, type Row, row, rows, text } from './read.ts';
import { type Settings, settingsOf } from './settings.ts';

/** The fork in front of you, or why there is none. */
export type Now =
  | {
      readonly ok: true;
      readonly build: Build;
      /** More than one where usual builds that are set differently come to the same build. */
      readonly settings: readonly Settings[];
      readonly derived: boolean;
      readonly assumed: readonly string[];
    }
  | { readonly ok: false; readonly why: string };

/** Works out now from catalogue and question alone (section 2), with what is on the bike (section 10). */
export function nowOf(book: Book, question: Question): Now {
  const chassis = book.chassis.get(question.chassis);
  const family = book.families.get(text(chassis?.family) ?? '');
  if (!chassis || !family) return { ok: false, why: `no chassis ${question.chassis} with a family` };
  const body: Body = { book, chassis, family, made: madeOf(question.serial, question.built, chassis, family) };
  const there = factoryBuilds(body).filter((build) => length(build.travel) === question.travelNow);
  if (there.length === 0) return derivedNow(body, question);
  const usual = usualOf(there);
  if (!usual) return { ok: false, why: 'several factory builds at this travel and not exactly one marked usual' };
  const build = asBuilt(body, usual);
  const differs = (slot: string): boolean =>
    there.some((other) => !sameContent(build.get(slot), asBuilt(body, other).get(slot)));
  return {
    ok: true,
    build: put(body, build, question),
    settings: [settingsOf(family, usual, question.settings)],
    derived: false,
    assumed: [...build.keys()].filter((slot) => !isTold(question, slot) && differs(slot)),
  };
}

function derivedNow(body: Body, question: Question): Now {
  const { book, chassis, family, made } = body;
  const usual = usualBuilds(body);
  const ways = usual.flatMap((from) =>
    derivedBuilds(body, asBuilt(body, from), question.travelNow).map((build) => ({ from, build })),
  );
  const named = ways.filter(({ build }) => agrees(build, question.with, ['spring', 'travel-spacers']));
  const told = named.length > 0 ? named : usual.map((from) => ({ from, build: asBuilt(body, from) }));
  const found = told
    .map(({ from, build }) => ({
      build: put(body, build, question),
      settings: settingsOf(family, from, question.settings),
    }))
    .filter(({ build }) => travelOf(book, build, chassis, made) === question.travelNow);
  const [only] = found;
  return only && found.every(({ build }) => sameBuild(build, only.build))
    ? { ok: true, build: only.build, settings: found.map(({ settings }) => settings), derived: true, assumed: [] }
    : { ok: false, why: `no factory build at this travel, and ${found.length} ways to derive one` };
}

/** Builds of generations that the fork cannot be are left out. */
const factoryBuilds = ({ chassis, made }: Body): readonly Row[] =>
  rows(chassis.builds).filter((build) => ofGenerations(build.generations, made) !== 'no');

/** What left the works: the build's own slots, then what every build of the chassis shares; else nothing. */
function asBuilt({ chassis, family }: Body, build: Row): Build {
  const listed: Row = { upper: chassis.upper, lowers: chassis.lowers };
  const contents = [row(build.slots), row(chassis.fitted), listed];
  return new Map(
    [...slotsOf(family)].map(([slot, facts]) => {
      const from = contents.find((each) => Object.hasOwn(each, slot));
      return [slot, from ? readContent(field(from, slot), facts) : null];
    }),
  );
}

/** One build alone is the usual one; of several the one that is marked. */
function usualOf(builds: readonly Row[]): Row | null {
  const marked = builds.length === 1 ? builds : builds.filter((build) => build.usual === true);
  return marked.length === 1 ? (marked[0] ?? null) : null;
}

function usualBuilds(body: Body): readonly Row[] {
  const byTravel = new Map<number | null, Row[]>();
  for (const build of factoryBuilds(body)) {
    const travel = length(build.travel);
    byTravel.set(travel, [...(byTravel.get(travel) ?? []), build]);
  }
  return [...byTravel.values()].map(usualOf).filter((build) => build !== null);
}

/** Over the factory build goes what the bike's record says of its fork, what is on the bike, and what is told. */
function put({ family }: Body, build: Build, question: Question): Build {
  const slots = slotsOf(family);
  const fitted = Object.entries(question.fitted).map(
    ([slot, held]) => [slot, readContent(held, slots.get(slot))] as const,
  );
  return new Map<string, Content | null>([...build, ...fitted, ...contentsOf(question.ride), ...question.with]);
}

const isTold = (question: Question, slot: string): boolean =>
  question.with.has(slot) || Object.hasOwn(question.fitted, slot);

const agrees = (build: Build, told: Build, slots: readonly string[]): boolean =>
  slots.every((slot) => !told.has(slot) || sameContent(build.get(slot), told.get(slot)));
