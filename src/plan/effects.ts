import type { Catalog } from '../catalog/index.ts';
import { axleToCrown, type Build, type Now, travelOf } from '../fork/index.ts';
import type { Effects, Flag } from './answer.ts';
import { drawingOf } from './bike-drawing.ts';
import { geometryFlags, springFlags } from './effect-flags.ts';
import { geometryEffects } from './geometry-effects.ts';
import type { Prepared } from './prepare.ts';
import { springEffects } from './spring-effects.ts';
import { tyreEffects } from './tyre-effects.ts';

export interface PlanEffects {
  readonly effects: Effects;
  readonly flags: readonly Flag[];
}

/** What a plan does to fork and bike, before and after, and what the desk should know of it. */
export function planEffects(catalog: Catalog, prepared: Prepared, after: Build): PlanEffects {
  const { now } = prepared;
  const travelAfter = after.slots.has('spring') ? (travelOf(catalog, after, now.identity) ?? now.travel) : now.travel;
  const from = axleToCrown(now.build.chassis, now.travel, now.build.settings);
  const to = axleToCrown(after.chassis, travelAfter, after.settings);
  const massFrom = massOf(catalog, now, now.build);
  const massTo = massOf(catalog, now, after);
  const geometry = geometryEffects(catalog, prepared, after, travelAfter);
  const drawing = now.bike ? drawingOf(now.bike) : null;
  const spring = springEffects(catalog, now, after, prepared.question.rider, drawing);
  return {
    effects: {
      travel: { from: now.travel / 1000, to: travelAfter / 1000, unit: 'mm' },
      axleToCrown:
        from === null && to === null
          ? null
          : {
              from: tenths(from),
              to: tenths(to),
              unit: 'mm',
              measured: after.chassis.axleToCrown?.measured ?? 'along-steerer',
            },
      mass: massFrom === null || massTo === null ? null : { from: massFrom, to: massTo, unit: 'g' },
      tyre: tyreEffects(prepared, after.chassis),
      geometry: geometry?.kind === 'known' ? geometry.effects : null,
      spring,
    },
    flags: [...geometryFlags(prepared, geometry, from !== to), ...springFlags(catalog, spring)],
  };
}

const tenths = (length: number | null): number | null => (length === null ? null : Math.round(length / 100) / 10);

/** Mass of everything in the slots of the fork, in g; null where the mass of one piece is not known. */
function massOf(catalog: Catalog, now: Now, build: Build): number | null {
  let sum = 0;
  const bike = new Set(now.bike?.slots.map(({ name }) => name));
  for (const [slot, content] of build.slots) {
    if (!content || bike.has(slot)) continue;
    const mass = catalog.parts.get(content.sku)?.mass ?? null;
    if (mass === null) return null;
    sum += mass * content.quantity;
  }
  return sum / 1000;
}
