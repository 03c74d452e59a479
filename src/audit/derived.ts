import { type Build, type Content, clauseTravel, roleOf, slotsOf, travelOf } from './build.ts';
import type { Book } from './catalog.ts';
import { givingClause, verdict } from './clauses.ts';
import type { Made } from './made.ts';
import { length } from './measure.ts';
import { number, type Row, row, text } from './read.ts';
import { spacerFacts } from './spacer-facts.ts';

/** A fork as far as it is known before its contents are: whose body, and when it was made. */
export interface Body {
  readonly book: Book;
  readonly chassis: Row;
  readonly family: Row;
  readonly made: Made;
}

/**
 * The builds that come of a usual build when its travel is set to another: by the count of travel spacers where
 * the family sets travel so, else by the spring; each with its standard volume spacers (section 2).
 */
export function derivedBuilds(body: Body, usual: Build, travel: number): readonly Build[] {
  const bySpacers = body.family['travel-set-by'] === 'travel-spacers';
  const ways = bySpacers
    ? byTravelSpacers(body, usual, travel)
    : fitting(body, 'spring')
        .filter((spring) => clauseTravelIn(body, spring) === travel)
        .map((spring) => swap(usual, 'spring', { sku: text(spring.sku) ?? '', quantity: 1 }));
  return ways.flatMap((way) => withStandardSpacers(body, way));
}

function byTravelSpacers(body: Body, usual: Build, travel: number): readonly Build[] {
  const bare = travelOf(body.book, swap(usual, 'travel-spacers', null), body.chassis, body.made);
  const most = number(slotsOf(body.family).get('travel-spacers')?.most) ?? 0;
  if (bare === null || bare < travel) return [];
  if (bare === travel) return [swap(usual, 'travel-spacers', null)];
  return candidates(body, usual, 'travel-spacers').flatMap((spacer) => {
    const each = length(row(spacer.dimensions).length) ?? 0;
    const quantity = each > 0 ? (bare - travel) / each : 0;
    const whole = Number.isInteger(quantity) && quantity >= 1 && quantity <= most;
    return whole ? [swap(usual, 'travel-spacers', { sku: text(spacer.sku) ?? '', quantity })] : [];
  });
}

function withStandardSpacers(body: Body, build: Build): readonly Build[] {
  const { book, chassis, family, made } = body;
  if (!slotsOf(family).has('volume-spacers')) return [build];
  const spring = book.parts.get(build.get('spring')?.sku ?? '');
  const { standard } = spacerFacts(spring, chassis, travelOf(book, build, chassis, made), made);
  if (standard === null) return [build];
  if (standard === 0) return [swap(build, 'volume-spacers', null)];
  return candidates(body, build, 'volume-spacers').map((spacer) =>
    swap(build, 'volume-spacers', { sku: text(spacer.sku) ?? '', quantity: standard }),
  );
}

/** The part that is in the slot; where the slot is empty, every part that fits it. */
function candidates(body: Body, build: Build, slot: string): readonly Row[] {
  const there = body.book.parts.get(build.get(slot)?.sku ?? '');
  return there ? [there] : fitting(body, slot);
}

const fitting = ({ book, chassis, family, made }: Body, slot: string): readonly Row[] =>
  [...book.parts.values()].filter(
    (part) => part.role === roleOf(family, slot) && verdict(part, chassis, family, made) === 'fits',
  );

const clauseTravelIn = (body: Body, spring: Row): number | null => {
  const clause = givingClause(spring, body.chassis, body.made);
  return clause && clauseTravel(clause);
};

const swap = (build: Build, slot: string, content: Content | null): Build => new Map([...build, [slot, content]]);
