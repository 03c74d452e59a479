import type { Catalog } from '../catalog/index.ts';
import { axleToCrown, type Build, type Now, travelOf } from '../fork/index.ts';
import type { Effects } from './answer.ts';

/** What a plan does to the fork: travel, axle-to-crown and mass, before and after. */
export function planEffects(catalog: Catalog, now: Now, after: Build): Effects {
  const travelAfter = after.slots.has('spring') ? (travelOf(catalog, after, now.identity) ?? now.travel) : now.travel;
  const from = axleToCrown(now.build.chassis, now.travel, now.build.settings);
  const to = axleToCrown(after.chassis, travelAfter, after.settings);
  const massFrom = massOf(catalog, now, now.build);
  const massTo = massOf(catalog, now, after);
  return {
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
    geometry: null,
    spring: null,
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
