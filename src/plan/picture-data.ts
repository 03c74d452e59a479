import type { Catalog, Content } from '../catalog/index.ts';
import { type Build, familyOf, travelOf } from '../fork/index.ts';
import {
  airCurve,
  airForce,
  axialLoad,
  coilForce,
  metres,
  startPressure,
  tyreFromDesignation,
} from '../physics/index.ts';
import type { Micrometres } from '../quantity/index.ts';
import type { Answer, GeometryEffects, Plan, SpringEffects } from './answer.ts';
import { drawingOf, forkLength } from './bike-drawing.ts';
import { type LoadedSpring, loadedSpring } from './loaded-spring.ts';
import { type Prepared, prepare } from './prepare.ts';
import { questionSchema } from './question.ts';
import { AROUND, HIT_EXPONENT, type Rider, riderOf, SAG_TOLERANCE } from './rider.ts';
import type { SetUpAnswer } from './set-up.ts';
import type { World } from './world.ts';

/** What is drawn of a plan; lengths in mm, forces in N, angles in degrees. A part that is not known is null. */
export interface PictureData {
  readonly spring: SpringPicture | null;
  readonly bike: BikePicture | null;
  /** `before` is null where nothing changes: then `after` is the fork as it is. */
  readonly fork: { readonly before: ForkShape | null; readonly after: ForkShape };
}
export interface SpringPicture {
  readonly rider: SpringEffects['rider'];
  readonly before: SpringCurve | null;
  readonly after: SpringCurve | null;
}
/** Force over travel, moved slowly, filled for the rider's sag. */
export interface SpringCurve {
  readonly kind: 'air' | 'coil';
  readonly sku: string;
  readonly volumeSpacers: number;
  readonly travel: number;
  readonly points: readonly { readonly travel: number; readonly force: number }[];
  readonly sag: { readonly travel: number; readonly force: number };
  /** Force at full travel in a hard hit. */
  readonly hit: number;
}
export interface BikePicture {
  readonly name: string;
  readonly size: string | null;
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
export interface ForkShape {
  readonly chassis: string;
  readonly travel: number;
  /** Axle-to-crown along the steering axis; null where it is not known. */
  readonly along: number | null;
  readonly stanchion: number;
  readonly legs: { readonly left: string; readonly right: string };
  readonly slots: readonly { readonly slot: string; readonly content: Content; readonly changed: boolean }[];
}

/** Points of a curve. */
const POINTS = 61;
/** What a stanchion is drawn with where the family does not state it: a drawing, not a figure. */
const STANCHION = 34;

/** What is drawn of one plan of an answer, the recommended one (0) if none is named; null where there is none. */
export function planPicture(world: World, answer: Answer, way = 0): PictureData | null {
  const plan = answer.plans[way];
  const { prepared } = prepare(world, questionSchema.parse(answer.question));
  if (!plan || !prepared) return null;
  const after = buildOfPlan(world.catalog, prepared, plan);
  return after && pictureOf(world.catalog, prepared, after, plan);
}

/** What is drawn of the fork as it is, for a set-up; null where the question has a fault. */
export function setUpPicture(world: World, { question: { filledAt: _, ...asked } }: SetUpAnswer): PictureData | null {
  const { prepared } = prepare(world, questionSchema.parse(asked));
  return prepared && pictureOf(world.catalog, prepared, prepared.now.build, null);
}

function buildOfPlan(catalog: Catalog, { now }: Prepared, plan: Plan): Build | null {
  const chassis = catalog.chassis.get(plan.chassis);
  if (!chassis) return null;
  const settings = new Map(
    [...now.build.settings].map(([name, value]) => [
      name,
      ((plan.settings[name] ?? value / 1000) * 1000) as typeof value,
    ]),
  );
  return { chassis, slots: new Map(Object.entries(plan.build)), settings };
}

function pictureOf(catalog: Catalog, prepared: Prepared, after: Build, plan: Plan | null): PictureData {
  const { now } = prepared;
  const travel = travelOf(catalog, after, now.identity) ?? now.travel;
  const changed = new Set(plan?.changes.map(({ slot }) => slot));
  return {
    spring: springPicture(catalog, prepared, after),
    bike: plan?.effects.geometry ? bikePicture(prepared, after, travel, plan.effects.geometry) : null,
    fork: {
      before: plan && forkShape(catalog, prepared, now.build, now.travel, changed),
      after: forkShape(catalog, prepared, after, travel, changed),
    },
  };
}

function springPicture(catalog: Catalog, { now, question }: Prepared, after: Build): SpringPicture | null {
  const [from, to] = [loadedSpring(catalog, now.build, now.identity), loadedSpring(catalog, after, now.identity)];
  const drawing = now.bike ? drawingOf(now.bike) : null;
  const rider = riderOf(question.rider, drawing, to?.part ?? from?.part ?? null);
  const load = axialLoad(rider.load);
  const [before, afterwards] = [curveOf(from, rider), curveOf(to, rider)];
  if (!load.ok || (before === null && afterwards === null)) return null;
  const { rider: mass, frontShare, headAngle } = rider.load;
  return {
    rider: { mass, named: rider.named, frontShare, headAngle, sag: rider.sag, load: Math.round(load.value) },
    before: after === now.build ? null : before,
    after: afterwards,
  };
}

function curveOf(loaded: LoadedSpring | null, rider: Rider): SpringCurve | null {
  switch (loaded?.kind) {
    case 'air':
      return airCurveOf(loaded, rider);
    case 'coil':
      return coilCurveOf(loaded, rider);
    default:
      return null;
  }
}

function airCurveOf(
  { part, spring, limits }: Extract<LoadedSpring, { kind: 'air' }>,
  rider: Rider,
): SpringCurve | null {
  const start = startPressure({
    spring,
    rider: rider.load,
    sag: { wanted: rider.sag, tolerance: SAG_TOLERANCE },
    ambient: AROUND,
    limits,
  });
  if (!start.ok) return null;
  const filled = { pump: start.value.pressure, ambient: AROUND };
  const curve = airCurve(spring, { ...filled, exponent: 1 }, POINTS);
  const hit = airForce(spring, { ...filled, exponent: HIT_EXPONENT }, spring.travel);
  if (!curve.ok || !hit.ok) return null;
  return {
    kind: 'air',
    sku: part.sku,
    volumeSpacers: spring.spacers,
    travel: spring.travel * 1000,
    points: curve.value.map(({ travel, force }) => ({ travel: travel * 1000, force })),
    sag: { travel: rider.sag * spring.travel * 1000, force: start.value.load },
    hit: hit.value,
  };
}

function coilCurveOf({ part, coil }: Extract<LoadedSpring, { kind: 'coil' }>, rider: Rider): SpringCurve | null {
  const [first, last] = [coilForce(coil, metres(0)), coilForce(coil, coil.travel)];
  const load = axialLoad(rider.load);
  if (!first.ok || !last.ok || !load.ok) return null;
  return {
    kind: 'coil',
    sku: part.sku,
    volumeSpacers: 0,
    travel: coil.travel * 1000,
    points: [
      { travel: 0, force: first.value },
      { travel: coil.travel * 1000, force: last.value },
    ],
    sag: { travel: Math.min(coil.travel, load.value / coil.rate) * 1000, force: Math.min(load.value, last.value) },
    hit: last.value,
  };
}

function bikePicture(
  { now }: Prepared,
  after: Build,
  travel: Micrometres,
  geometry: GeometryEffects,
): BikePicture | null {
  const context = now.bike;
  const drawing = context ? drawingOf(context) : null;
  const [from, to] = [
    forkLength(now.build.chassis, now.travel, now.build.settings),
    forkLength(after.chassis, travel, after.settings),
  ];
  if (!context || !drawing || !from || !to) return null;
  const chainstay = drawing.bottomBracket ? drawing.bottomBracket.chainstay / 1000 : null;
  const pose = (side: 'from' | 'to', fork: typeof from): BikePose | null => {
    const { wheelbase, headAngle, seatAngle, trail, bottomBracketHeight, reach, stack, frontTyre, rearTyre } = geometry;
    const [front, rear] = [radiusOf(frontTyre[side]), radiusOf(rearTyre)];
    const [base, angle, behind] = [wheelbase[side], headAngle[side], trail[side]];
    if (front === null || rear === null || base === null || angle === null || behind === null) return null;
    const height = bottomBracketHeight?.[side] ?? null;
    const [ahead, above] = [reach?.[side] ?? null, stack?.[side] ?? null];
    return {
      wheelbase: base,
      frontRadius: front,
      rearRadius: rear,
      headAngle: angle,
      seatAngle: seatAngle?.[side] ?? null,
      trail: behind,
      bottomBracket:
        height === null || chainstay === null
          ? null
          : { ahead: Math.sqrt(Math.max(0, chainstay ** 2 - (rear - height) ** 2)), height },
      reachAndStack: ahead === null || above === null ? null : { reach: ahead, stack: above },
      fork: { along: fork.along * 1000, offset: fork.offset * 1000 },
    };
  };
  const [before, afterwards] = [pose('from', from), pose('to', to)];
  return before && afterwards && { name: context.bike.name, size: geometry.size, before, after: afterwards };
}

function radiusOf(designation: string): number | null {
  const tyre = tyreFromDesignation(designation);
  return tyre.ok ? tyre.value.diameter * 500 : null;
}

function forkShape(
  catalog: Catalog,
  { now }: Prepared,
  build: Build,
  travel: Micrometres,
  changed: ReadonlySet<string>,
): ForkShape {
  const family = familyOf(catalog, build.chassis);
  const length = forkLength(build.chassis, travel, build.settings);
  return {
    chassis: build.chassis.name,
    travel: travel / 1000,
    along: length === null ? null : length.along * 1000,
    stanchion: (family.dimensions.get('stanchion') ?? STANCHION * 1000) / 1000,
    legs: family.legs,
    slots: now.slots
      .filter(({ name }) => family.slots.some((slot) => slot.name === name))
      .map(({ name }) => ({ slot: name, content: build.slots.get(name) ?? null, changed: changed.has(name) })),
  };
}
