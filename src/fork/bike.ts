import { BIKE_SLOTS, type Bike, type BikeFork, type Slot, type Tyre } from '../catalog/index.ts';
import { type Identity, monthStands } from '../fitment/index.ts';
import type { Micrometres } from '../quantity/index.ts';

/** The bike that the fork must suit. */
export interface BikeContext {
  readonly bike: Bike;
  /** Frame size; null where the question does not say. */
  readonly size: string | null;
  /** True where the fork is on that bike already: then what is there is a fact. */
  readonly own: boolean;
  /** The tyre on it, or the one that the question names. */
  readonly tyre: Tyre | null;
  /** Length to which the steerer of the fork in front of you was cut; null where nobody says. */
  readonly steererLength: Micrometres | null;
  /** The slots of the bike that it speaks of. */
  readonly slots: readonly Slot[];
}

/** Most spacers that a question about a bike considers under the stem. */
const MOST_STEM_SPACERS = 10;

/** The slots of a bike as slots of a build: one piece each, but stem spacers by count. Only those the bike speaks of. */
export const bikeSlots = (bike: Bike): Slot[] =>
  BIKE_SLOTS.filter((name) => bike.slots.has(name)).map((name) => ({
    name,
    role: name,
    pieces: name === 'stem-spacers' ? MOST_STEM_SPACERS : 1,
    counted: name === 'stem-spacers',
    mayBeEmpty: name === 'stem-spacers' || name === 'adaptor' || bike.slots.get(name) === null,
    singleUse: false,
    wears: false,
  }));

/** The forks that a bike can have left the works with, by size and month, as far as these are known. */
export const forksOf = (bike: Bike, size: string | null, identity: Identity): readonly BikeFork[] =>
  bike.forks.filter(
    (fork) =>
      (fork.sizes === null || size === null || fork.sizes.includes(size)) &&
      (identity.month === null || monthStands(fork.months, identity.month) !== 'no'),
  );

/** The head tube's length for a size; null where the catalogue or the question does not say. */
export const headTubeLength = ({ bike, size }: BikeContext): Micrometres | null =>
  bike.headTube.length.get('') ?? (size === null ? null : (bike.headTube.length.get(size) ?? null));
