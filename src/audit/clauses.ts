import { conditions, type Made } from './made.ts';
import { numbers, type Row, row, rows, text, texts } from './read.ts';

/** `perhaps`: it fits if the fork was made when a clause says, and nobody has settled that. */
type Verdict = 'fits' | 'no' | 'unknown' | 'perhaps';

/** Does a clause speak of this chassis? What it does not narrow, it leaves open. */
export function matches(clause: Row, chassis: Row): boolean {
  const only = texts(clause.chassis);
  const wheels = numbers(clause.wheel);
  const axles = texts(clause.axle);
  return (
    clause.family === chassis.family &&
    (only.length === 0 || only.some((id) => id === chassis.id)) &&
    (wheels.length === 0 || wheels.some((wheel) => wheel === chassis.wheel)) &&
    (axles.length === 0 || axles.some((axle) => axle === row(chassis.axle).standard))
  );
}

/** Clauses that say the part fits this chassis, whenever the fork was made. */
const speaking = (part: Row, chassis: Row): readonly Row[] =>
  rows(part.fits).filter((clause) => clause.not !== true && matches(clause, chassis));

/** Clauses that say the part fits this fork for certain; two are a catalogue error. */
export const certain = (part: Row, chassis: Row, made: Made): readonly Row[] =>
  speaking(part, chassis).filter((clause) => conditions(clause, chassis, made) === 'yes');

/** The one clause that says what a part gives in a chassis. Of several nothing is known. */
export function givingClause(part: Row, chassis: Row, made: Made): Row | null {
  const sure = certain(part, chassis, made);
  const found =
    sure.length > 0 ? sure : speaking(part, chassis).filter((one) => conditions(one, chassis, made) === 'perhaps');
  return found.length === 1 ? (found[0] ?? null) : null;
}

/**
 * What the clauses say (section 4). A maker's own no beats every other clause; silence is no only where the
 * role is listed as complete; another generation is always no. A chassis that lists an upper or lowers is itself
 * the statement that they fit it.
 */
export function verdict(part: Row, chassis: Row, family: Row, made: Made): Verdict {
  const against = refusals(part, chassis).map((clause) => conditions(clause, chassis, made));
  if (against.includes('yes')) return 'no';
  const found = speaking(part, chassis).map((clause) => conditions(clause, chassis, made));
  const listed = part.sku === chassis.upper || part.sku === chassis.lowers;
  if (found.includes('yes') || listed) return against.includes('perhaps') ? 'perhaps' : 'fits';
  if (found.includes('perhaps')) return 'perhaps';
  if (found.length > 0) return 'no';
  return texts(family.complete).includes(text(part.role) ?? '') ? 'no' : 'unknown';
}

/** A maker's own no. */
export const refusals = (part: Row, chassis: Row): readonly Row[] =>
  rows(part.fits).filter((clause) => clause.not === true && matches(clause, chassis));
