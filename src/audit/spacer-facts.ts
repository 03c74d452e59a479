import { givingClause } from './clauses.ts';
import type { Made } from './made.ts';
import { length } from './measure.ts';
import { isRow, type Row, row, rows, text, whole } from './read.ts';

/** The maker's counts of volume spacers; null is not known. */
interface SpacerFacts {
  readonly standard: number | null;
  readonly greatest: number | null;
}

const NOT_KNOWN: SpacerFacts = { standard: null, greatest: null };

/** What the maker says for this spring, chassis and travel (section 4, "Volume spacers"). */
export function spacerFacts(spring: Row | undefined, chassis: Row, travel: number | null, made: Made): SpacerFacts {
  const clause = spring && givingClause(spring, chassis, made);
  if (!spring || !clause) return NOT_KNOWN;
  const said = clause['volume-spacers'];
  if (said === undefined) return hasSpacerSeat(spring) ? NOT_KNOWN : { standard: 0, greatest: 0 };
  if (isRow(said)) return counts(said);
  const here = rows(said).find((entry) => travel !== null && length(entry.travel) === travel);
  return here ? counts(here) : NOT_KNOWN;
}

const counts = (said: Row): SpacerFacts => ({ standard: whole(said.standard), greatest: whole(said.greatest) });

const hasSpacerSeat = (spring: Row): boolean => text(row(spring.interfaces)['spacer-seat']) !== null;
