import type { Bike, Catalog, Chassis, Geometry, Tyre } from '../catalog/index.ts';
import type { Identity } from '../fitment/index.ts';
import { axleToCrown, type BikeContext, type Build, forksOf } from '../fork/index.ts';
import { axisLength, type Metres, metres, metresOf } from '../physics/index.ts';
import { groupBy, type Micrometres } from '../quantity/index.ts';

/** A fork as a drawing of a bike needs it: its length along the steering axis and its offset. */
export interface ForkLength {
  readonly along: Metres;
  readonly offset: Metres;
}

/** The drawing that speaks of the bike's size; where the size is not said, the only one. */
export function drawingOf({ bike, size }: BikeContext): Geometry | null {
  const [only] = bike.geometry;
  if (size === null) return bike.geometry.length === 1 && only ? only : null;
  return bike.geometry.find(({ sizes }) => sizes === null || sizes.includes(size)) ?? null;
}

/** The tyre that turns in the fork afterwards: the one that is there, or its width on the bead seat of another wheel. */
export const tyreAfter = (tyre: Tyre, wheel: number): Tyre =>
  tyre.bead === wheel ? tyre : { designation: `${tyre.width}-${wheel}`, width: tyre.width, bead: wheel };

/** A fork in a build at a travel; null where its length or its offset is not known. */
export const forkLength = (chassis: Chassis, travel: Micrometres, settings: Build['settings']): ForkLength | null =>
  lengthOf(axleToCrown(chassis, travel, settings), chassis.offset, chassis.axleToCrown?.measured ?? 'along-steerer');

/**
 * The fork that a drawing was made with: the one that it names, else the one that the bike left the works with. Null where
 * several left the works with it that differ in length or offset.
 */
export function drawnFork(
  catalog: Catalog,
  context: BikeContext,
  drawing: Geometry,
  identity: Identity,
): ForkLength | null {
  if (drawing.axleToCrown)
    return lengthOf(drawing.axleToCrown.length, drawing.offset, drawing.axleToCrown.measured) ?? null;
  // The month is that of the fork in front of you: it says nothing of another bike's fork.
  const known: Identity = context.own ? identity : { ...identity, month: null };
  const size = drawing.sizes?.length === 1 ? (drawing.sizes[0] ?? null) : context.size;
  const forks = forksOf(context.bike, size, known).map((fork) => workedFork(catalog, fork));
  const [first] = forks;
  const alike = groupBy(forks, (fork) => (fork ? `${fork.along} ${fork.offset}` : ''));
  return first && alike.size === 1 ? first : null;
}

function workedFork(catalog: Catalog, { chassis: id, travel }: Bike['forks'][number]): ForkLength | null {
  const chassis = catalog.chassis.get(id);
  if (!chassis) return null;
  const builds = chassis.builds.filter((build) => build.travel === travel);
  const settings = (builds.find(({ usual }) => usual) ?? builds[0])?.settings ?? new Map();
  return forkLength(chassis, travel, settings);
}

function lengthOf(
  length: Micrometres | null,
  offset: Micrometres | null,
  measured: 'along-steerer' | 'straight',
): ForkLength | null {
  if (length === null || offset === null) return null;
  const along = axisLength(metresOf(length), metresOf(offset), measured);
  return along.ok ? { along: metres(along.value), offset: metresOf(offset) } : null;
}
