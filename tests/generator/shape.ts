import type { Dice } from './dice.ts';

/** How big a generated family is. */
export interface FamilyShape {
  readonly bodies: number;
  readonly travels: number;
  /** Springs for one travel, at most. */
  readonly springs: number;
  readonly dampers: number;
  /** Slots beside the usual ones, and parts made for each of them. */
  readonly modules: number;
  readonly candidates: number;
}

/** Small enough that brute force and an outside solver go through it in a moment. */
export const smallShape = (throwing: Dice): FamilyShape => ({
  bodies: throwing.whole(2, 3),
  travels: throwing.whole(2, 4),
  springs: throwing.whole(1, 2),
  dampers: throwing.whole(2, 3),
  modules: throwing.whole(0, 1),
  candidates: throwing.whole(1, 2),
});

/** A family of so many slots, upper and lowers not counted, with about so many parts for each. */
export const gridShape = (slots: number, candidates: number): FamilyShape => ({
  bodies: 1,
  travels: candidates,
  springs: 1,
  dampers: candidates,
  modules: slots - USUAL_SLOTS,
  candidates,
});
const USUAL_SLOTS = 5;
