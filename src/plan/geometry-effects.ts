import type { Catalog, Geometry, Tyre } from '../catalog/index.ts';
import { type Build, type Now, wheelOn } from '../fork/index.ts';
import {
  type BikeGeometry,
  changedGeometry,
  degreesOf,
  type Metres,
  metres,
  metresOf,
  type Stance,
  tyreSize,
} from '../physics/index.ts';
import type { Micrometres } from '../quantity/index.ts';
import type { GeometryEffects } from './answer.ts';
import { drawingOf, drawnFork, type ForkLength, forkLength, tyreAfter } from './bike-drawing.ts';
import type { Prepared } from './prepare.ts';
import { hundredths, tenths } from './rounding.ts';

/** The bike before and after, or what is lacking to work it out. */
export type GeometryAnswer =
  | { readonly kind: 'known'; readonly effects: GeometryEffects }
  | { readonly kind: 'not-known'; readonly lacking: GeometryLack };
export type GeometryLack = 'size' | 'drawing' | 'tyre' | 'drawn-fork' | 'fork-length' | 'no-solution';

const lack = (lacking: GeometryLack): GeometryAnswer => ({ kind: 'not-known', lacking });

/**
 * What another fork makes of the bike: before with the fork in front of you on it, after with the fork of the plan. Both are
 * worked out from the drawing, by the exact planar solution of `changedGeometry`. Null where no bike is named.
 */
export function geometryEffects(
  catalog: Catalog,
  prepared: Prepared,
  after: Build,
  travel: Micrometres,
): GeometryAnswer | null {
  const { now } = prepared;
  const context = now.bike;
  if (!context) return null;
  const drawing = drawingOf(context);
  if (!drawing) return lack(context.size === null && context.bike.geometry.length > 1 ? 'size' : 'drawing');
  const { tyre, rearTyre } = context.bike;
  const mounted = context.tyre ?? tyre;
  if (!tyre || !rearTyre || !mounted) return lack('tyre');
  const drawn = drawnFork(catalog, context, drawing, now.identity);
  if (!drawn) return lack('drawn-fork');
  const [from, to] = [
    forkLength(now.build.chassis, now.travel, now.build.settings),
    forkLength(after.chassis, travel, after.settings),
  ];
  if (!from || !to) return lack('fork-length');
  const turning = tyreAfter(mounted, wheelOn(after.chassis, context, prepared.wants));
  const bike = bikeGeometry(drawing, drawn, radiusOf(tyre), radiusOf(rearTyre));
  const at = (fork: ForkLength, front: Tyre, sag: Sag): Stance | null => {
    const changed = changedGeometry(bike, {
      longer: metres(fork.along - sag.fork - drawn.along),
      offset: fork.offset,
      frontRadius: radiusOf(front),
      rearRadius: bike.rearRadius,
      rearSag: sag.rear,
    });
    return changed.ok ? changed.value.after : null;
  };
  const [before, afterwards] = [at(from, mounted, NO_SAG), at(to, turning, NO_SAG)];
  if (!before || !afterwards) return lack('no-solution');
  const sags = seated(prepared, now, travel);
  const sunk = sags && { before: at(from, mounted, sags.before), after: at(to, turning, sags.after) };
  return {
    kind: 'known',
    effects: {
      ...stances(before, afterwards),
      bike: context.bike.id,
      size: context.size,
      drawing: drawing.source.record,
      frontTyre: {
        from: mounted.designation,
        to: turning.designation,
        assumed: turning.designation !== mounted.designation,
      },
      rearTyre: rearTyre.designation,
      atSag:
        sunk?.before && sunk.after
          ? {
              ...stances(sunk.before, sunk.after),
              forkSag: prepared.question.rider?.sag ?? 0,
              rearSag: prepared.question.rider?.rearSag ?? 0,
            }
          : null,
    },
  };
}

interface Sag {
  readonly fork: Metres;
  readonly rear: Metres;
}
const NO_SAG: Sag = { fork: metres(0), rear: metres(0) };

/** How far the bike sinks before and after; null where the question does not say. */
function seated(
  { question: { rider } }: Prepared,
  now: Now,
  travel: Micrometres,
): { readonly before: Sag; readonly after: Sag } | null {
  if (rider?.sag === undefined && rider?.rearSag === undefined) return null;
  const rear = metres((rider.rearSag ?? 0) / 1000);
  const share = rider.sag ?? 0;
  return {
    before: { fork: metres(share * metresOf(now.travel)), rear },
    after: { fork: metres(share * metresOf(travel)), rear },
  };
}

function radiusOf({ width, bead }: Tyre): Metres {
  const size = tyreSize(metres(width / 1000), metres(bead / 1000));
  return metres(size.ok ? size.value.diameter / 2 : Number.NaN);
}

/** A drawing as physics takes it. */
function bikeGeometry(drawing: Geometry, drawn: ForkLength, frontRadius: Metres, rearRadius: Metres): BikeGeometry {
  const { bottomBracket, reachAndStack, seatAngle } = drawing;
  return {
    headAngle: degreesOf(drawing.headAngle),
    wheelbase: metresOf(drawing.wheelbase),
    frontRadius,
    rearRadius,
    offset: drawn.offset,
    bottomBracket: bottomBracket && {
      drop: metresOf(bottomBracket.drop),
      chainstay: metresOf(bottomBracket.chainstay),
    },
    reachAndStack: reachAndStack && { reach: metresOf(reachAndStack.reach), stack: metresOf(reachAndStack.stack) },
    seatAngle: seatAngle === null ? null : degreesOf(seatAngle),
  };
}

type Stances = Omit<NonNullable<GeometryEffects['atSag']>, 'forkSag' | 'rearSag'>;

function stances(before: Stance, after: Stance): Stances {
  const angle = (from: number, to: number) => ({ from: hundredths(from), to: hundredths(to), unit: '°' });
  const length = (from: number, to: number) => ({ from: tenths(from * 1000), to: tenths(to * 1000), unit: 'mm' });
  const known = <T>(from: number | null, to: number | null, made: (from: number, to: number) => T): T | null =>
    from === null || to === null ? null : made(from, to);
  return {
    headAngle: angle(before.headAngle, after.headAngle),
    seatAngle: known(before.seatAngle, after.seatAngle, angle),
    trail: length(before.trail, after.trail),
    mechanicalTrail: length(before.mechanicalTrail, after.mechanicalTrail),
    flop: length(before.flop, after.flop),
    wheelbase: length(before.wheelbase, after.wheelbase),
    bottomBracketHeight: known(before.bottomBracketHeight, after.bottomBracketHeight, length),
    reach: known(before.reach, after.reach, length),
    stack: known(before.stack, after.stack, length),
  };
}
