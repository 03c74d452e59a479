import type { Bike, Catalog, Geometry, Problem } from '../catalog/index.ts';
import { axleToCrown } from '../fork/index.ts';
import { axisLength, degreesOf, type MeasuredAs, metres, metresOf, tyreFromDesignation } from '../physics/index.ts';
import { doubt } from './places.ts';

/** How far a drawing may be off, in mm: makers round, and reckon with a tyre or a cup of their own. */
const TOLERANCE = 5;

/** Does a bike's drawing add up: do stack and wheelbase follow from reach, head tube, fork, head angle, chainstay and drop? */
export const drawingDoubts = (catalog: Catalog): Problem[] =>
  [...catalog.bikes.values()].flatMap((bike) => bike.geometry.flatMap((row) => oneDrawing(catalog, bike, row)));

function oneDrawing(catalog: Catalog, bike: Bike, row: Geometry): Problem[] {
  const worked = workedOut(catalog, bike, row);
  if (worked === null || row.reachAndStack === null) return [];
  const drawn = { stack: metresOf(row.reachAndStack.stack) * 1000, wheelbase: metresOf(row.wheelbase) * 1000 };
  return (['stack', 'wheelbase'] as const)
    .filter((measure) => Math.abs(drawn[measure] - worked[measure]) > TOLERANCE)
    .map((measure) =>
      doubt(catalog, row.source, 'drawing-contradicts', {
        bike: bike.id,
        sizes: [...(row.sizes ?? [])],
        measure,
        drawn: Math.round(drawn[measure]),
        worked: Math.round(worked[measure]),
      }),
    );
}

/**
 * Stack and wheelbase in mm, by plane trigonometry with the bottom bracket as origin: the steering axis runs from the top of the head tube down along
 * (cos, -sin) of the head angle and is left by the offset along (sin, cos); there the front axle is. Null where the drawing does not say enough.
 */
function workedOut(catalog: Catalog, bike: Bike, row: Geometry): { stack: number; wheelbase: number } | null {
  const fork = forkOf(catalog, bike, row);
  const headTube = bike.headTube.length.get(row.sizes?.[0] ?? '') ?? bike.headTube.length.get('');
  if (!fork || !row.bottomBracket || !row.reachAndStack || headTube === undefined) return null;
  const cup = catalog.parts.get(bike.slots.get('headset-lower')?.sku ?? '')?.dimensions.get('stack') ?? 0;
  const angle = (degreesOf(row.headAngle) * Math.PI) / 180;
  const down = (headTube + cup) / 1000 + fork.length;
  const drop = metresOf(row.bottomBracket.drop) * 1000;
  const axle = drop + radiusOf(bike.tyre) - radiusOf(bike.rearTyre);
  const behind = Math.sqrt((metresOf(row.bottomBracket.chainstay) * 1000) ** 2 - drop ** 2);
  const ahead = metresOf(row.reachAndStack.reach) * 1000 + down * Math.cos(angle) + fork.offset * Math.sin(angle);
  return { stack: down * Math.sin(angle) - fork.offset * Math.cos(angle) + axle, wheelbase: ahead + behind };
}

/** The fork that a drawing means, along the steerer and in mm: the one that it states, else the one that the size left the works with; null where several may be. */
function forkOf(
  catalog: Catalog,
  bike: Bike,
  row: Geometry,
): { readonly length: number; readonly offset: number } | null {
  if (row.axleToCrown && row.offset !== null) return inMm(row.axleToCrown.length, row.offset, row.axleToCrown.measured);
  const forks = bike.forks.filter(
    ({ sizes }) => !sizes || !row.sizes || row.sizes.some((size) => sizes.includes(size)),
  );
  const found = forks.map(({ chassis: id, travel }) => {
    const chassis = catalog.chassis.get(id);
    const settings = chassis?.builds.find((build) => build.travel === travel)?.settings ?? new Map();
    const length = chassis ? axleToCrown(chassis, travel, settings) : null;
    if (!chassis?.axleToCrown || chassis.offset === null || length === null) return null;
    return inMm(length, chassis.offset, chassis.axleToCrown.measured);
  });
  const [first = null] = found;
  return found.every((one) => one?.length === first?.length && one?.offset === first?.offset) ? first : null;
}

function inMm(length: number, offset: number, measured: MeasuredAs): { length: number; offset: number } | null {
  const along = axisLength(metres(length / 1e6), metres(offset / 1e6), measured);
  return along.ok ? { length: along.value * 1000, offset: offset / 1000 } : null;
}

/** Radius of a tyre by its designation, in mm; 0 where the record has none, so that both wheels are taken to be alike. */
function radiusOf(tyre: Bike['tyre']): number {
  const size = tyre ? tyreFromDesignation(tyre.designation) : null;
  return size?.ok ? (size.value.diameter / 2) * 1000 : 0;
}
