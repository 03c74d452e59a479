import type { Plan } from './answer.ts';
import { slotsOfBike } from './bike.ts';
import { type Build, changedSlots, chassisOf, slotsOf, travelOf } from './build.ts';
import type { Book } from './catalog.ts';
import { type Made, madeOf } from './made.ts';
import type { Question } from './question.ts';
import { type Row, text } from './read.ts';
import { changedSettings, type Settings } from './settings.ts';
import { type Work, workOf } from './work.ts';

/** A build as it is set, with the chassis it makes and the travel it has there. */
export interface Standing {
  readonly build: Build;
  readonly settings: Settings;
  readonly chassis: Row;
  /** Greatest travel, whole micrometres; null where the catalogue does not give it. */
  readonly travel: number | null;
}

/** What a fork holds and how it is set. */
export interface Held {
  readonly build: Build;
  readonly settings: Settings;
}

/** The shop's side of a question. */
export interface Market {
  /** Rows of the stock file by SKU. */
  readonly stock: ReadonlyMap<string, Readonly<Record<string, string>>>;
  /** Null without a shop file. */
  readonly shop: Row | null;
}

/** One plan with all that it is judged by. */
export interface Scene {
  readonly book: Book;
  readonly market: Market;
  readonly question: Question;
  readonly family: Row;
  readonly made: Made;
  /** The slots of the fork, then those of the bike. */
  readonly slots: ReadonlyMap<string, Row>;
  readonly bikeSlots: ReadonlyMap<string, Row>;
  readonly now: Standing;
  readonly after: Standing;
  readonly changed: ReadonlySet<string>;
  readonly chassisChanged: boolean;
  readonly work: Work;
  readonly plan: Plan;
}

export function setScene(book: Book, market: Market, question: Question, fork: Held, plan: Plan): Scene {
  const named = book.chassis.get(question.chassis) ?? {};
  const family = book.families.get(text(named.family) ?? '') ?? {};
  const made = madeOf(question.serial, question.built, named, family);
  const now = standing(book, fork, question.chassis, made);
  const after = standing(book, plan, plan.chassis, made);
  const changed = changedSlots(fork.build, plan.build);
  const bikeSlots = slotsOfBike(question.ride);
  return {
    book,
    market,
    question,
    family,
    made,
    slots: new Map([...slotsOf(family), ...bikeSlots]),
    bikeSlots,
    now,
    after,
    changed,
    chassisChanged: now.chassis.id !== after.chassis.id,
    work: workOf(book, question, family, [...changed, ...changedSettings(fork.settings, plan.settings)]),
    plan,
  };
}

/** A build where it stands: in the chassis it makes; if it makes none, in the one that was named. */
export function standing(book: Book, { build, settings }: Held, named: string, made: Made): Standing {
  const listing = chassisOf(book, build);
  const chassis = (listing.length === 1 ? listing[0] : book.chassis.get(named)) ?? {};
  return { build, settings, chassis, travel: travelOf(book, build, chassis, made) };
}

/** The catalogue's record of the part in a slot. */
export const partIn = (scene: Scene, side: Standing, slot: string): Row | undefined =>
  scene.book.parts.get(side.build.get(slot)?.sku ?? '');

/** True where the spring, what lowers it, or the chassis it stands in is another: travel is a new fact. */
export const travelIsNew = (scene: Scene): boolean => scene.now.travel !== scene.after.travel;

/** True where the fork comes onto another bike than its own: then every fact between fork and bike is new. */
export const ontoAnother = (scene: Scene): boolean => scene.question.ride?.own === false;
