import { type Question, questionSchema } from '../../src/plan/question.ts';
import { type Book, type Content, known, roleOf, sameContent } from './book.ts';
import { findNow, type Now } from './now.ts';
import type { Chassis, Part } from './records.ts';

/** A question that is whole: the catalogue it is put to, and the fork in front of you. */
export interface Scene {
  readonly book: Book;
  readonly question: Question;
  readonly now: Now;
}

/** The question is read by its schema. Null where it does not settle which fork is in front of you. */
export function sceneOf(book: Book, input: unknown): Scene | null {
  const question = questionSchema.parse(input);
  const now = findNow(book, question);
  return now === null ? null : { book, question, now };
}

/** A fork in the making: what is chosen so far. Whole, it is a build. */
export interface Draft {
  chassis: Chassis | null;
  /** Micrometres. */
  travel: number | null;
  /** All slots but upper and lowers, which the chassis names. */
  readonly contents: Map<string, Content>;
  /** Micrometres. */
  readonly settings: Map<string, number>;
}

export const chassisOf = (draft: Draft): Chassis => known(draft.chassis, 'a chassis in the draft');
export const travelIn = (draft: Draft): number => known(draft.travel, 'a travel in the draft');

export function contentOf(draft: Draft, slot: string): Content {
  if (slot === 'upper') return { sku: chassisOf(draft).upper, quantity: 1 };
  if (slot === 'lowers') return { sku: chassisOf(draft).lowers, quantity: 1 };
  return draft.contents.get(slot) ?? null;
}

export function partIn(scene: Scene, draft: Draft, slot: string): Part | null {
  const content = contentOf(draft, slot);
  return content === null ? null : known(scene.book.parts.get(content.sku), content.sku);
}

/** The choice that settles a slot: upper and lowers come with the chassis. */
export const choiceOf = (slot: string): string => (slot === 'upper' || slot === 'lowers' ? 'chassis' : slot);

export const nowIn = (scene: Scene, slot: string): Content => scene.now.contents.get(slot) ?? null;

export const isChanged = (scene: Scene, draft: Draft, slot: string): boolean =>
  !sameContent(contentOf(draft, slot), nowIn(scene, slot));

export const isChassisChanged = (scene: Scene, draft: Draft): boolean => chassisOf(draft).id !== scene.now.chassis.id;
export const isTravelChanged = (scene: Scene, draft: Draft): boolean => travelIn(draft) !== scene.now.travel;

/** Slots of the fork, then those of the bike. */
export const slotsOf = ({ now }: Scene): readonly string[] => [
  ...Object.keys(now.family.slots),
  ...Object.keys(now.bike?.slots ?? {}),
];

/** Slots that hold parts of a role. */
export const slotsOfRole = (scene: Scene, role: string): readonly string[] =>
  slotsOf(scene).filter((slot) => roleOf(scene.now.family, slot) === role);
