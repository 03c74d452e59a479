import { givingClause, headTubeLength, isLimited, isSettled, type Now, wheelOn } from '../fork/index.ts';
import type { Flag } from './answer.ts';
import type { Prepared } from './prepare.ts';
import type { Candidate } from './search.ts';
import { sourceOf } from './source.ts';
import type { World } from './world.ts';

type Params = Flag['params'];
const verify = (code: string, params: Params, source: Flag['source'] = null): Flag => ({
  severity: 'verify',
  code,
  params,
  source,
});

/** What has to be asked about the bike, because its record or the chassis' does not say. */
export function bikeFlags(
  { catalog }: World,
  prepared: Prepared,
  candidate: Pick<Candidate, 'build' | 'travel'>,
): Flag[] {
  const { now } = prepared;
  const longer = candidate.travel > now.travel;
  const { bike } = now;
  if (!bike) return longer ? [verify('frame-limit', { from: now.travel / 1000, to: candidate.travel / 1000 })] : [];
  const source = sourceOf(bike.bike.source);
  const name = bike.bike.name;
  const { chassis } = candidate.build;
  const moved = !bike.own || chassis.id !== now.build.chassis.id;
  const flags: Flag[] = [];
  if ((longer || moved || !isSettled(bike, prepared.wants)) && !isLimited(catalog, bike, chassis, prepared.wants)) {
    flags.push(
      verify(
        'frame-limit-not-known',
        { bike: name, to: candidate.travel / 1000, wheel: wheelOn(chassis, bike, prepared.wants) },
        source,
      ),
    );
  }
  if (bike.bike.limits.some(({ sizes }) => sizes !== null) && bike.size === null)
    flags.push(verify('size-not-known', { bike: name, sizes: bike.bike.sizes }, source));
  if (moved && bike.tyre === null) flags.push(verify('tyre-not-known', { bike: name }, source));
  if (moved && bike.tyre !== null && (chassis.tyreRoom.crown === null || chassis.tyreRoom.width === null)) {
    flags.push(
      verify('tyre-room-not-known', { chassis: chassis.name, tyre: bike.tyre.designation }, sourceOf(chassis.source)),
    );
  }
  if (
    moved &&
    (headTubeLength(bike) === null ||
      bike.bike.headTube.stemClamp === null ||
      (chassis.steerer?.length ?? null) === null)
  ) {
    flags.push(verify('steerer-length-not-known', { bike: name, chassis: chassis.name }, source));
  }
  return flags;
}

/** Where the fork's maker and a part's maker allow different travel, both are shown; the stricter holds. */
export function issuerFlags(world: World, now: Now, candidate: Candidate): Flag[] {
  const { chassis, slots } = candidate.build;
  return [...slots].flatMap(([slot, content]): Flag[] => {
    const part = content ? world.catalog.parts.get(content.sku) : undefined;
    if (!part || (slot !== 'spring' && slot !== 'damper')) return [];
    const clause = givingClause(world.catalog, part, chassis, now.identity);
    const limits = clause?.limits;
    if (!clause || !limits) return [];
    const differs =
      (limits.greatest !== null && chassis.travel.greatest !== null && limits.greatest !== chassis.travel.greatest) ||
      (limits.least !== null && chassis.travel.least !== null && limits.least !== chassis.travel.least);
    if (!differs) return [];
    const shown = (value: number | null): string => (value === null ? 'not stated' : `${value / 1000} mm`);
    return [
      verify(
        'limits-disagree',
        {
          part: part.name,
          chassis: chassis.name,
          partLeast: shown(limits.least),
          partGreatest: shown(limits.greatest),
          chassisLeast: shown(chassis.travel.least),
          chassisGreatest: shown(chassis.travel.greatest),
        },
        sourceOf(clause.source),
      ),
    ];
  });
}

/** Old numbers that the question names or the plan buys from the last of the stock. */
export function replacedFlags(prepared: Prepared, candidate: Candidate): Flag[] {
  const flags: Flag[] = [];
  for (const sku of prepared.question.wants.use) {
    if (!prepared.asked.wants.use.includes(sku)) {
      const by = prepared.asked.wants.use.filter((other) => !prepared.question.wants.use.includes(other));
      flags.push({ severity: 'advice', code: 'replaced', params: { sku, by }, source: null });
    }
  }
  for (const { offer } of candidate.purchase.bought) {
    if (offer.replaced !== 'no')
      flags.push({ severity: 'advice', code: 'last-of-old-number', params: { sku: offer.sku }, source: null });
  }
  return flags;
}
