import type { Book, Content } from './book.ts';
import type { Chassis, Clause, Family, Part, SpacerCounts } from './records.ts';
import { clauseStands, type WhenMade } from './when-made.ts';

/** Whether a clause names the chassis: all that it names must hold. */
export const namesChassis = (clause: Clause, chassis: Chassis): boolean =>
  clause.family === chassis.family &&
  (clause.chassis === undefined || clause.chassis.includes(chassis.id)) &&
  (clause.wheel === undefined || clause.wheel.includes(chassis.wheel)) &&
  (clause.axle === undefined || clause.axle.includes(chassis.axle.standard));

/** The clause by which a part fits a chassis, perhaps only for some forks; null where there is none, or a maker's no. */
export function fittingClause(part: Part, chassis: Chassis, when: WhenMade): Clause | null {
  const speaking = part.fits.filter(
    (clause) => namesChassis(clause, chassis) && clauseStands(clause, chassis, when) !== 'no',
  );
  if (speaking.some((clause) => clause.not && clauseStands(clause, chassis, when) === 'yes')) return null;
  return speaking.find((clause) => !clause.not) ?? null;
}

/** A maker's no; it may still say what the part would give. */
export const denyingClause = (part: Part, chassis: Chassis, when: WhenMade): Clause | null =>
  part.fits.find(
    (clause) => clause.not && namesChassis(clause, chassis) && clauseStands(clause, chassis, when) === 'yes',
  ) ?? null;

/** The greatest travel that a spring gives in a chassis without travel spacers; null where nobody says. */
export function givenTravel(part: Part, chassis: Chassis, when: WhenMade): number | null {
  const clause = fittingClause(part, chassis, when) ?? denyingClause(part, chassis, when);
  if (!clause) return null;
  const travels = [...(clause.travels ?? []), ...(clause.travel === undefined ? [] : [clause.travel])];
  return travels.length === 0 ? null : Math.max(...travels);
}

/** What the travel spacers of a build take away. */
export function takenAway(book: Book, family: Family, spacers: Content): number {
  if (family['travel-set-by'] !== 'travel-spacers' || spacers === null) return 0;
  return spacers.quantity * (book.parts.get(spacers.sku)?.dimensions.length ?? 0);
}

/** The maker's count of volume spacers, and the most; a number that nobody states is null. */
export interface SpacerRule {
  readonly standard: number | null;
  readonly greatest: number | null;
}

/** What the maker says of volume spacers for a spring in a chassis at a travel. */
export function spacerRule(part: Part | null, chassis: Chassis, travel: number, when: WhenMade): SpacerRule {
  const clause = part === null ? null : fittingClause(part, chassis, when);
  if (part === null || clause === null) return { standard: null, greatest: null };
  const counts = clause['volume-spacers'];
  if (counts === undefined)
    return part.interfaces['spacer-seat'] === undefined
      ? { standard: 0, greatest: 0 }
      : { standard: null, greatest: null };
  const here: SpacerCounts | undefined = counts.find((one) => one.travel === undefined || one.travel === travel);
  return { standard: here?.standard ?? null, greatest: here?.greatest ?? null };
}
