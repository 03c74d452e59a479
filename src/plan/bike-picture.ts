import type { Geometry } from '../catalog/index.ts';
import type { Build, Now } from '../fork/index.ts';
import { metres, metresOf, tyreFromDesignation } from '../physics/index.ts';
import type { Micrometres } from '../quantity/index.ts';
import type { GeometryEffects } from './answer.ts';
import { drawingOf, type ForkLength, forkLength } from './bike-drawing.ts';

/** A bike twice: with the fork of now and of the plan, or unloaded and as far down as the rider wants it; then `sag` says how far, mm. */
export interface BikePicture {
  readonly name: string;
  readonly size: string | null;
  readonly sag: { readonly fork: number; readonly rear: number } | null;
  readonly before: BikePose;
  readonly after: BikePose;
}
/** A bike on level ground: the rear axle stands above the origin. */
export interface BikePose {
  readonly wheelbase: number;
  readonly frontRadius: number;
  readonly rearRadius: number;
  readonly headAngle: number;
  readonly seatAngle: number | null;
  readonly trail: number;
  readonly bottomBracket: { readonly ahead: number; readonly height: number } | null;
  readonly reachAndStack: { readonly reach: number; readonly stack: number } | null;
  readonly fork: { readonly along: number; readonly offset: number };
}

/** The bike with the fork in front of you, and with that of the plan, both unloaded. Null where a figure for it is lacking. */
export function changedBike(
  now: Now,
  after: Build,
  travel: Micrometres,
  geometry: GeometryEffects,
): BikePicture | null {
  const drawing = now.bike && drawingOf(now.bike);
  const [from, to] = [
    forkLength(now.build.chassis, now.travel, now.build.settings),
    forkLength(after.chassis, travel, after.settings),
  ];
  if (!now.bike || !drawing || !from || !to) return null;
  const tyres = geometry.frontTyre;
  const before = poseOf(drawing, geometry, 'from', { fork: from, front: tyres.from, rear: geometry.rearTyre });
  const afterwards = poseOf(drawing, geometry, 'to', { fork: to, front: tyres.to, rear: geometry.rearTyre });
  return before && afterwards && { ...named(now.bike, geometry), sag: null, before, after: afterwards };
}

/** The bike with the fork in front of you, unloaded and at the wanted sag. Null where a figure for it is lacking. */
export function saggedBike(now: Now, geometry: GeometryEffects): BikePicture | null {
  const { atSag, frontTyre, rearTyre } = geometry;
  const drawing = now.bike && drawingOf(now.bike);
  const fork = forkLength(now.build.chassis, now.travel, now.build.settings);
  if (!now.bike || !drawing || !fork || !atSag) return null;
  const sunk = atSag.forkSag * metresOf(now.travel);
  const wheels = { front: frontTyre.from, rear: rearTyre };
  const before = poseOf(drawing, geometry, 'from', { fork, ...wheels });
  const after = poseOf(drawing, atSag, 'from', {
    fork: { ...fork, along: metres(fork.along - sunk) },
    ...wheels,
    rearSag: atSag.rearSag,
  });
  return (
    before && after && { ...named(now.bike, geometry), sag: { fork: sunk * 1000, rear: atSag.rearSag }, before, after }
  );
}

const named = ({ bike }: NonNullable<Now['bike']>, { size }: GeometryEffects): Pick<BikePicture, 'name' | 'size'> => ({
  name: bike.name,
  size,
});

interface Mounted {
  readonly fork: ForkLength;
  /** Tyres by their designations. */
  readonly front: string;
  readonly rear: string;
  /** How far the rear axle has moved up against the frame, mm. */
  readonly rearSag?: number;
}
type Stances = Pick<
  GeometryEffects,
  'wheelbase' | 'headAngle' | 'seatAngle' | 'trail' | 'bottomBracketHeight' | 'reach' | 'stack'
>;

/** One side of the figures of a bike as joints to draw; null where one that it stands on is not known. */
function poseOf(
  { bottomBracket }: Geometry,
  { wheelbase, headAngle, seatAngle, trail, bottomBracketHeight, reach, stack }: Stances,
  side: 'from' | 'to',
  { fork, front, rear, rearSag = 0 }: Mounted,
): BikePose | null {
  const [frontRadius, rearRadius] = [radiusOf(front), radiusOf(rear)];
  const [base, angle, behind] = [wheelbase[side], headAngle[side], trail[side]];
  if (frontRadius === null || rearRadius === null || base === null || angle === null || behind === null) return null;
  const height = bottomBracketHeight?.[side] ?? null;
  const [ahead, above] = [reach?.[side] ?? null, stack?.[side] ?? null];
  return {
    wheelbase: base,
    frontRadius,
    rearRadius,
    headAngle: angle,
    seatAngle: seatAngle?.[side] ?? null,
    trail: behind,
    bottomBracket:
      height === null || bottomBracket === null
        ? null
        : { ahead: aheadOfAxle(bottomBracket, rearRadius - height, rearSag), height },
    reachAndStack: ahead === null || above === null ? null : { reach: ahead, stack: above },
    fork: { along: fork.along * 1000, offset: fork.offset * 1000 },
  };
}

/**
 * How far the bottom bracket stands before the rear axle on level ground, mm, by how far it is below it. Their distance is the chainstay's
 * as drawn; with sag at the back the axle has moved straight up against the frame, and it is the hypotenuse of both (Pythagoras).
 */
function aheadOfAxle(
  { drop, chainstay }: NonNullable<Geometry['bottomBracket']>,
  below: number,
  rearSag: number,
): number {
  const squared = (chainstay / 1000) ** 2 - (drop / 1000) ** 2 + (drop / 1000 + rearSag) ** 2;
  return Math.sqrt(Math.max(0, squared - below ** 2));
}

function radiusOf(designation: string): number | null {
  const tyre = tyreFromDesignation(designation);
  return tyre.ok ? tyre.value.diameter * 500 : null;
}
