import { type Build, readBuild } from './build.ts';
import type { Book } from './catalog.ts';
import { inMonths } from './made.ts';
import { length } from './measure.ts';
import { type Row, row, rows, text, texts } from './read.ts';

/** The bike that the fork must suit. */
export interface Ride {
  readonly bike: Row;
  /** Frame size, where the question names it. */
  readonly size: string | null;
  /** True where the fork left the works on this bike: then what is unchanged is a fact. */
  readonly own: boolean;
}

/** The slots that a bike may add to those of the fork, in their order. */
const BIKE_SLOTS: ReadonlyMap<string, Row> = new Map<string, Row>([
  ['headset-lower', {}],
  ['crown-race', {}],
  ['stem-spacers', { most: 100 }],
  ['hub', {}],
  ['end-caps', {}],
  ['rotor', {}],
  ['adaptor', { 'may-be-empty': true }],
  ['calliper', {}],
]);

/** With only `--bike`, that is also the bike it must suit. */
export function rideOf(book: Book, asked: Row): Ride | null {
  const onto = text(asked.onto);
  const from = text(asked.bike);
  const bike = book.bikes.get(onto ?? from ?? '');
  if (!bike) return null;
  const own = onto === null || onto === from;
  return { bike, size: text(asked.ontoSize) ?? (own ? text(asked.size) : null), own };
}

/** What is on the bike when the fork comes, as far as its record names it. */
export const contentsOf = (ride: Ride | null): Build => readBuild(row(ride?.bike).slots);

/** The slots that the bike adds. A slot that holds several pieces now holds as many afterwards. */
export function slotsOfBike(ride: Ride | null): ReadonlyMap<string, Row> {
  const held = contentsOf(ride);
  return new Map(
    [...BIKE_SLOTS]
      .filter(([slot]) => held.has(slot))
      .map(([slot, facts]) => [slot, 'most' in facts ? facts : { ...facts, pieces: held.get(slot)?.quantity ?? 1 }]),
  );
}

/** The fork that the bike left the works with: by size and month; chassis and travel tell the rest apart. */
export function firstFork(book: Book, asked: Row, travelNow: number | null): Row | null {
  const bike = book.bikes.get(text(asked.bike) ?? '');
  const bySize = rows(bike?.forks).filter((fork) => isOfSize(fork, text(asked.size)));
  const byMonth = bySize.filter((fork) => inMonths(fork.months, text(asked.built)) !== 'no');
  const byChassis = byMonth.filter((fork) => asked.chassis === undefined || fork.chassis === asked.chassis);
  const byTravel = byChassis.filter((fork) => travelNow === null || length(fork.travel) === travelNow);
  const left = byTravel.length > 0 ? byTravel : byChassis;
  return left.length === 1 ? (left[0] ?? null) : null;
}

/** Does a statement speak of this size? A size that nobody names it speaks of too. */
export function isOfSize(statement: Row, size: string | null): boolean {
  const sizes = texts(statement.sizes);
  return size === null || sizes.length === 0 || sizes.includes(size);
}
