import type { Catalog, Geometry } from '../catalog/index.ts';
import { type Build, type Now, spacerCounts, travelOf } from '../fork/index.ts';
import { axialLoad, spacersKeepingEnd } from '../physics/index.ts';
import type { SpacerAdvice, SpringEffects } from './answer.ts';
import { type LoadedSpring, loadedSpring } from './loaded-spring.ts';
import type { Question } from './question.ts';
import { AROUND, HIT_EXPONENT, type Rider, riderOf } from './rider.ts';
import { hundredths, rounded, tenths } from './rounding.ts';
import { springSide } from './spring-side.ts';

/**
 * What the spring does under the rider, before and after, and what that says of the volume spacers. Null where spring, count
 * and travel stay and nobody named a rider, and where the catalogue does not state enough of either spring.
 */
export function springEffects(
  catalog: Catalog,
  now: Now,
  after: Build,
  asked: Question['rider'],
  drawing: Geometry | null,
): SpringEffects | null {
  const [from, to] = [loadedSpring(catalog, now.build, now.identity), loadedSpring(catalog, after, now.identity)];
  if (asked?.mass === undefined && sameSpring(from, to)) return null;
  const rider = riderOf(asked, drawing, to?.part ?? from?.part ?? null);
  const load = axialLoad(rider.load);
  const [before, afterwards] = [springSide(from, rider), springSide(to, rider)];
  if (!load.ok || (before === null && afterwards === null)) return null;
  return {
    rider: {
      mass: tenths(rider.load.rider),
      named: rider.named,
      frontShare: rider.load.frontShare,
      headAngle: tenths(rider.load.headAngle),
      sag: rider.sag,
      load: rounded(load.value),
    },
    before,
    after: afterwards,
    spacers: spacerAdvice(catalog, now, after, { from, to, rider }),
  };
}

function sameSpring(a: LoadedSpring | null, b: LoadedSpring | null): boolean {
  if (a?.kind === 'air' && b?.kind === 'air')
    return a.part === b.part && a.spring.spacers === b.spring.spacers && a.spring.travel === b.spring.travel;
  if (a?.kind === 'coil' && b?.kind === 'coil') return a.coil.rate === b.coil.rate && a.coil.travel === b.coil.travel;
  return a?.part === b?.part && a?.kind === b?.kind;
}

interface Change {
  readonly from: LoadedSpring | null;
  readonly to: LoadedSpring | null;
  readonly rider: Rider;
}

/** The count that keeps the end-of-stroke ratio, beside the maker's. Null where the chamber afterwards takes no spacers. */
function spacerAdvice(catalog: Catalog, now: Now, after: Build, { from, to, rider }: Change): SpacerAdvice | null {
  if (from?.kind !== 'air' || to?.kind !== 'air' || to.spring.spacerVolume === 0 || sameSpring(from, to)) return null;
  const travel = travelOf(catalog, after, now.identity);
  const counts = spacerCounts(catalog, after.chassis, after.slots.get('spring') ?? null, travel, now.identity);
  const most = now.slots.find(({ name }) => name === 'volume-spacers')?.pieces ?? 0;
  const load = axialLoad(rider.load);
  if (!load.ok) return null;
  const answer = spacersKeepingEnd({
    before: from.spring,
    after: to.spring,
    load: load.value,
    sag: rider.sag,
    ambient: AROUND,
    exponent: HIT_EXPONENT,
    // Beyond the maker's greatest too: how far the two are apart is to be seen.
    greatest: Math.max(most, counts.greatest ?? 0),
  });
  if (!answer.ok) return null;
  const { before, keeps, nearest, reach, counts: all } = answer.value;
  const fitted = to.spring.spacers;
  const ratio = all.find(({ count }) => count === fitted)?.ratio ?? null;
  return {
    fitted,
    makers: counts.standard,
    greatest: counts.greatest,
    keeps: keeps === null ? null : tenths(keeps),
    nearest,
    reach,
    ratioBefore: hundredths(before),
    ratioAfter: ratio === null ? null : hundredths(ratio),
  };
}
