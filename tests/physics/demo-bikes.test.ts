import { describe, expect, it } from 'vitest';
import type { Bike, Geometry } from '../../src/catalog/index.ts';
import { axleToCrown } from '../../src/fork/index.ts';
import {
  axisLength,
  degreesOf,
  type MeasuredAs,
  metres,
  metresOf,
  tyreFromDesignation,
} from '../../src/physics/index.ts';
import { demoFolder, loadCatalogFolder } from '../support/demo.ts';
import { value } from './outcomes.ts';

// Do the drawings of the demo catalogue's bikes add up? With the bottom bracket as origin, the steering axis runs from the top of the head
// tube (reach, stack) down along (cos θ, -sin θ); after head tube, lower cup and fork it is left by the offset along (sin θ, cos θ). There the
// front axle is. Plane trigonometry. On level ground it stands above the bottom bracket by its drop, and by how much larger the front wheel is.

const { catalog } = (await loadCatalogFolder(demoFolder)).world;
const drawings = [...catalog.bikes.values()].flatMap((bike) =>
  bike.geometry.map((row) => [`${bike.id} ${row.sizes?.join(' ') ?? ''}`.trim(), bike, row] as const),
);
const whole = drawings.filter(([, , row]) => row.reachAndStack !== null && row.bottomBracket !== null);

/** The fork that the drawing means: its axle-to-crown along the steerer and its offset, in mm. */
function forkOf(bike: Bike, row: Geometry): { readonly length: number; readonly offset: number } {
  if (row.axleToCrown && row.offset !== null) {
    const { length, measured } = row.axleToCrown;
    return { length: along(length, row.offset, measured), offset: row.offset / 1000 };
  }
  const size = row.sizes?.[0];
  const fork = bike.forks.find(({ sizes }) => sizes === null || size === undefined || sizes.includes(size));
  const chassis = fork && catalog.chassis.get(fork.chassis);
  if (!chassis || chassis.offset === null) throw new Error(`${bike.id}: drawn with which fork?`);
  const settings = chassis.builds.find(({ travel }) => travel === fork.travel)?.settings ?? new Map();
  const length = axleToCrown(chassis, fork.travel, settings) ?? Number.NaN;
  const measured = chassis.axleToCrown?.measured ?? 'along-steerer';
  return { length: along(length, chassis.offset, measured), offset: chassis.offset / 1000 };
}

/** Along the steerer, in mm, of a length in µm. */
const along = (length: number, offset: number, measured: MeasuredAs): number =>
  value(axisLength(metres(length / 1e6), metres(offset / 1e6), measured)) * 1000;

const radiusOf = (designation: string): number => (value(tyreFromDesignation(designation)).diameter / 2) * 1000;

describe('demo catalogue, drawings of bikes', () => {
  it('most: give enough to be added up, and the others at least head angle and wheelbase', () => {
    expect(whole.length).toBeGreaterThan(45);
    expect(drawings.length - whole.length).toBeLessThanOrEqual(2);
  });

  it.each(whole)(
    '%s: stack and wheelbase follow from head tube, fork and wheels, to the millimetre',
    (_name, bike, row) => {
      const { reachAndStack, bottomBracket } = row;
      if (!reachAndStack || !bottomBracket || !bike.tyre || !bike.rearTyre) throw new Error('chosen by these');
      const { length, offset } = forkOf(bike, row);
      const lengths = bike.headTube.length;
      const headTube = (lengths.get(row.sizes?.[0] ?? '') ?? [...lengths.values()][0] ?? Number.NaN) / 1000;
      const cup = catalog.parts.get(bike.slots.get('headset-lower')?.sku ?? '')?.dimensions.get('stack') ?? 0;
      const angle = (degreesOf(row.headAngle) * Math.PI) / 180;
      const down = headTube + cup / 1000 + length;
      const drop = metresOf(bottomBracket.drop) * 1000;
      const axleHeight = drop + radiusOf(bike.tyre.designation) - radiusOf(bike.rearTyre.designation);
      const stack = down * Math.sin(angle) - offset * Math.cos(angle) + axleHeight;
      expect(Math.abs(metresOf(reachAndStack.stack) * 1000 - stack)).toBeLessThan(1);
      const behind = Math.sqrt((metresOf(bottomBracket.chainstay) * 1000) ** 2 - drop ** 2);
      const ahead = metresOf(reachAndStack.reach) * 1000 + down * Math.cos(angle) + offset * Math.sin(angle);
      expect(Math.abs(metresOf(row.wheelbase) * 1000 - (ahead + behind))).toBeLessThan(1);
    },
  );
});
