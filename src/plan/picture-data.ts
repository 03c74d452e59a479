import type { Catalog, Content } from '../catalog/index.ts';
import { type Build, familyOf, travelOf } from '../fork/index.ts';
import type { Micrometres } from '../quantity/index.ts';
import type { Answer, Plan } from './answer.ts';
import { forkLength } from './bike-drawing.ts';
import { type BikePicture, changedBike, saggedBike } from './bike-picture.ts';
import { geometryEffects } from './geometry-effects.ts';
import { type Prepared, prepare } from './prepare.ts';
import { questionSchema } from './question.ts';
import type { SetUpAnswer } from './set-up.ts';
import { type SpringPicture, springPicture } from './spring-picture.ts';
import type { World } from './world.ts';

/** What is drawn of a plan; lengths in mm, forces in N, angles in degrees. A part that is not known is null. */
export interface PictureData {
  readonly spring: SpringPicture | null;
  readonly bike: BikePicture | null;
  /** `before` is null where nothing changes: then `after` is the fork as it is. */
  readonly fork: { readonly before: ForkShape | null; readonly after: ForkShape };
}
export interface ForkShape {
  readonly chassis: string;
  readonly travel: number;
  /** Axle-to-crown along the steering axis; null where it is not known. */
  readonly along: number | null;
  readonly stanchion: number;
  readonly crown: 'single' | 'dual';
  readonly legs: { readonly left: string; readonly right: string };
  readonly slots: readonly { readonly slot: string; readonly content: Content; readonly changed: boolean }[];
}

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

/**
 * What is drawn for a set-up: the fork as it is, and where a bike is named and its drawing known, that bike unloaded and at the sag that is
 * set up for. Null where the question has a fault.
 */
export function setUpPicture(world: World, answer: SetUpAnswer): PictureData | null {
  const { filledAt: _, rider, ...asked } = answer.question;
  const question = questionSchema.parse({ ...asked, rider: { ...rider, sag: answer.rider.sag } });
  const { prepared } = prepare(world, question);
  if (!prepared) return null;
  const { now } = prepared;
  const geometry = geometryEffects(world.catalog, prepared, now.build, now.travel);
  const bike = geometry?.kind === 'known' ? saggedBike(now, geometry.effects) : null;
  return { ...pictureOf(world.catalog, prepared, now.build, null), bike };
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
    bike: plan?.effects.geometry ? changedBike(now, after, travel, plan.effects.geometry) : null,
    fork: {
      before: plan && forkShape(catalog, prepared, now.build, now.travel, changed),
      after: forkShape(catalog, prepared, after, travel, changed),
    },
  };
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
    crown: family.crown,
    legs: family.legs,
    slots: now.slots
      .filter(({ name }) => family.slots.some((slot) => slot.name === name))
      .map(({ name }) => ({ slot: name, content: build.slots.get(name) ?? null, changed: changed.has(name) })),
  };
}
