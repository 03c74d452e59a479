import type { Catalog } from '../catalog/index.ts';
import type { Build } from '../fork/index.ts';
import { airCurve, airForce, axialLoad, coilForce, metres } from '../physics/index.ts';
import type { SpringEffects } from './answer.ts';
import { drawingOf } from './bike-drawing.ts';
import { type LoadedSpring, loadedSpring } from './loaded-spring.ts';
import type { Prepared } from './prepare.ts';
import { AROUND, HIT_EXPONENT, type Rider, riderOf } from './rider.ts';
import { tenths } from './rounding.ts';
import { startFor } from './spring-side.ts';

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
/** Points of a curve. */
const POINTS = 61;
/** The curves of the spring before and after; null where neither is known, or the rider is beyond what the maker prints. */
export function springPicture(catalog: Catalog, { now, question }: Prepared, after: Build): SpringPicture | null {
  const [from, to] = [loadedSpring(catalog, now.build, now.identity), loadedSpring(catalog, after, now.identity)];
  const drawing = now.bike ? drawingOf(now.bike) : null;
  const rider = riderOf(question.rider, drawing, to?.part ?? from?.part ?? null);
  const load = axialLoad(rider.load);
  const [before, afterwards] = [curveOf(from, rider), curveOf(to, rider)];
  if (!load.ok || (before === null && afterwards === null)) return null;
  const { rider: mass, frontShare, headAngle } = rider.load;
  return {
    rider: {
      mass: tenths(mass),
      named: rider.named,
      frontShare,
      headAngle,
      sag: rider.sag,
      load: Math.round(load.value),
    },
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
  const start = startFor({ spring, limits }, rider);
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
