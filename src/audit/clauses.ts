import { numbers, type Row, row, rows, text, texts } from './read.ts';

type Verdict = 'fits' | 'no' | 'unknown';

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

/** The one clause that says what a part gives in a chassis. Two are a catalogue error: then nothing is known. */
export function givingClause(part: Row, chassis: Row): Row | null {
  const found = rows(part.fits).filter((clause) => clause.not !== true && matches(clause, chassis));
  return found.length === 1 ? (found[0] ?? null) : null;
}

/**
 * What the clauses say (section 4). A maker's own no beats every other clause; silence is no only where the
 * role is listed as complete. A chassis that lists an upper or lowers is itself the statement that they fit it.
 */
export function verdict(part: Row, chassis: Row, family: Row): Verdict {
  const found = rows(part.fits).filter((clause) => matches(clause, chassis));
  if (found.some((clause) => clause.not === true)) return 'no';
  if (found.length > 0 || part.sku === chassis.upper || part.sku === chassis.lowers) return 'fits';
  return texts(family.complete).includes(text(part.role) ?? '') ? 'no' : 'unknown';
}
