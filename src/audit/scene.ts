import type { Plan } from './answer.ts';
import { type Build, changedSlots, chassisOf, slotsOf, travelOf } from './build.ts';
import type { Book } from './catalog.ts';
import type { Question } from './question.ts';
import { type Row, text } from './read.ts';
import { type Work, workOf } from './work.ts';

/** A build with the chassis it makes and the travel it has there. */
export interface Standing {
  readonly build: Build;
  readonly chassis: Row;
  /** Greatest travel, whole micrometres; null where the catalogue does not give it. */
  readonly travel: number | null;
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
  readonly slots: ReadonlyMap<string, Row>;
  readonly now: Standing;
  readonly after: Standing;
  readonly changed: ReadonlySet<string>;
  readonly chassisChanged: boolean;
  readonly work: Work;
  readonly plan: Plan;
}

export function setScene(book: Book, market: Market, question: Question, nowBuild: Build, plan: Plan): Scene {
  const now = standing(book, nowBuild, question.chassis);
  const after = standing(book, plan.build, plan.chassis);
  const family = book.families.get(text(now.chassis.family) ?? '') ?? {};
  const changed = changedSlots(nowBuild, plan.build);
  return {
    book,
    market,
    question,
    family,
    slots: slotsOf(family),
    now,
    after,
    changed,
    chassisChanged: now.chassis.id !== after.chassis.id,
    work: workOf(book, question, family, changed),
    plan,
  };
}

/** A build where it stands: in the chassis it makes; if it makes none, in the one that was named. */
export function standing(book: Book, build: Build, named: string): Standing {
  const made = chassisOf(book, build);
  const chassis = (made.length === 1 ? made[0] : book.chassis.get(named)) ?? {};
  return { build, chassis, travel: travelOf(book, build, chassis) };
}

/** The catalogue's record of the part in a slot. */
export const partIn = (scene: Scene, side: Standing, slot: string): Row | undefined =>
  scene.book.parts.get(side.build.get(slot)?.sku ?? '');

/** True where the spring, what lowers it, or the chassis it stands in is another: travel is a new fact. */
export const travelIsNew = (scene: Scene): boolean => scene.now.travel !== scene.after.travel;
