import { isReplaced, possibleGenerations, type Successor, successorsOf } from '../fitment/index.ts';
import { familyOf, type Now } from '../fork/index.ts';
import { type AtHand, onShelf } from '../supply/index.ts';
import type { World } from './world.ts';

/** What a number stands for: itself where it is not replaced, or is at hand or on the shelf and may be used; else its last replacements. */
export function standingFor(world: World, family: string, now: Now, atHand: AtHand, sku: string): readonly Successor[] {
  if (!isReplaced(world.catalog, sku)) return [{ sku, quantity: 1 }];
  const offer = world.market.offers.get(sku);
  const there =
    (atHand.fresh.get(sku) ?? 0) +
    (atHand.used.get(sku) ?? 0) +
    (atHand.kits.get(sku) ?? 0) +
    (offer ? onShelf(offer) : 0);
  if (there > 0) return [{ sku, quantity: 1 }];
  const generations = possibleGenerations(familyOf(world.catalog, now.build.chassis), now.build.chassis, now.identity);
  return successorsOf(world.catalog, sku, family, generations);
}
