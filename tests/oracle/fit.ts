import { type Book, roleOf } from './book.ts';
import type { Chassis, Clause, Family, Part } from './records.ts';
import { namesChassis } from './spring.ts';
import { clauseStands, type WhenMade } from './when-made.ts';

/** `fits-if`: it hangs on when the fork was made, and nobody said. */
export type Verdict = 'fits' | 'fits-if' | 'unknown' | 'no' | 'makers-no';

/** What makers say of a part in a chassis, dimensions left aside. */
export function verdict(part: Part, family: Family, chassis: Chassis, when: WhenMade): Verdict {
  const standing = (denies: boolean): readonly string[] =>
    part.fits
      .filter((clause: Clause) => clause.not === denies && namesChassis(clause, chassis))
      .map((clause) => clauseStands(clause, chassis, when));
  const [no, yes] = [standing(true), standing(false)];
  if (no.includes('yes')) return 'makers-no';
  if (yes.includes('yes')) return no.includes('perhaps') ? 'fits-if' : 'fits';
  if (yes.includes('perhaps')) return 'fits-if';
  if (yes.length > 0) return 'no';
  return family.complete.includes(part.role) ? 'no' : 'unknown';
}

/** Slots whose contents need a clause: upper and lowers are the chassis, parts of the bike go by their standards. */
export const slotsWithClauses = (family: Family): readonly string[] =>
  Object.keys(family.slots).filter((slot) => slot !== 'upper' && slot !== 'lowers');

/** Whether the catalogue lists every part of the slot's role for the family. */
export const isComplete = (family: Family, slot: string): boolean => family.complete.includes(roleOf(family, slot));

export const partOf = (book: Book, sku: string | undefined): Part | null =>
  sku === undefined ? null : (book.parts.get(sku) ?? null);
