import { type Build, type Content, clauseTravel, roleOf, slotsOf, travelOf } from './build.ts';
import type { Book } from './catalog.ts';
import { givingClause, verdict } from './clauses.ts';
import { length } from './measure.ts';
import { number, type Row, row, text } from './read.ts';
import { spacerFacts } from './spacer-facts.ts';

/**
 * The builds that come of a usual build when its travel is set to another: by the count of travel spacers where
 * the family sets travel so, else by the spring; each with its standard volume spacers (section 2).
 */
export function derivedBuilds(book: Book, usual: Build, chassis: Row, family: Row, travel: number): readonly Build[] {
  const bySpacers = family['travel-set-by'] === 'travel-spacers';
  const ways = bySpacers
    ? byTravelSpacers(book, usual, chassis, family, travel)
    : fitting(book, chassis, family, 'spring')
        .filter((spring) => clauseTravelIn(spring, chassis) === travel)
        .map((spring) => swap(usual, 'spring', { sku: text(spring.sku) ?? '', quantity: 1 }));
  return ways.flatMap((way) => withStandardSpacers(book, way, chassis, family));
}

function byTravelSpacers(book: Book, usual: Build, chassis: Row, family: Row, travel: number): readonly Build[] {
  const bare = travelOf(book, swap(usual, 'travel-spacers', null), chassis);
  const most = number(slotsOf(family).get('travel-spacers')?.most) ?? 0;
  if (bare === null || bare < travel) return [];
  if (bare === travel) return [swap(usual, 'travel-spacers', null)];
  return candidates(book, usual, chassis, family, 'travel-spacers').flatMap((spacer) => {
    const each = length(row(spacer.dimensions).length) ?? 0;
    const quantity = each > 0 ? (bare - travel) / each : 0;
    const whole = Number.isInteger(quantity) && quantity >= 1 && quantity <= most;
    return whole ? [swap(usual, 'travel-spacers', { sku: text(spacer.sku) ?? '', quantity })] : [];
  });
}

function withStandardSpacers(book: Book, build: Build, chassis: Row, family: Row): readonly Build[] {
  if (!slotsOf(family).has('volume-spacers')) return [build];
  const spring = book.parts.get(build.get('spring')?.sku ?? '');
  const { standard } = spacerFacts(spring, chassis, travelOf(book, build, chassis));
  if (standard === null) return [build];
  if (standard === 0) return [swap(build, 'volume-spacers', null)];
  return candidates(book, build, chassis, family, 'volume-spacers').map((spacer) =>
    swap(build, 'volume-spacers', { sku: text(spacer.sku) ?? '', quantity: standard }),
  );
}

/** The part that is in the slot; where the slot is empty, every part that fits it. */
function candidates(book: Book, build: Build, chassis: Row, family: Row, slot: string): readonly Row[] {
  const there = book.parts.get(build.get(slot)?.sku ?? '');
  return there ? [there] : fitting(book, chassis, family, slot);
}

const fitting = (book: Book, chassis: Row, family: Row, slot: string): readonly Row[] =>
  [...book.parts.values()].filter(
    (part) => part.role === roleOf(family, slot) && verdict(part, chassis, family) === 'fits',
  );

const clauseTravelIn = (spring: Row, chassis: Row): number | null => {
  const clause = givingClause(spring, chassis);
  return clause && clauseTravel(clause);
};

const swap = (build: Build, slot: string, content: Content | null): Build => new Map([...build, [slot, content]]);
