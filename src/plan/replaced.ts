import type { Family } from '../catalog/index.ts';
import { isReplaced, possibleGenerations, replacementOf, type Successor, successorsOf } from '../fitment/index.ts';
import { familyOf, type Now } from '../fork/index.ts';
import { type AtHand, onShelf } from '../supply/index.ts';
import type { World } from './world.ts';

/** Whose fork it is that a number is asked for, and what is at hand. */
interface Asker {
  readonly family: Family;
  readonly now: Now;
  readonly atHand: AtHand;
}

/**
 * What so many pieces of a number stand for: themselves where it is not replaced, or where so many are at hand and on the shelf and may be used; else
 * its last replacements, with how many of each for one.
 */
export function standingFor(world: World, asker: Asker, sku: string, pieces: number): readonly Successor[] {
  const itself = [{ sku, quantity: 1 }];
  if (!isReplaced(world.catalog, sku)) return itself;
  const { family, now, atHand } = asker;
  const generations = possibleGenerations(familyOf(world.catalog, now.build.chassis), now.build.chassis, now.identity);
  const replacement = replacementOf(world.catalog, sku, family.id, generations);
  const mayBeUsed = replacement?.oldStockUsable ?? true;
  return mayBeUsed && there(world, atHand, sku) >= pieces
    ? itself
    : successorsOf(world.catalog, sku, family.id, generations);
}

/** Pieces of a part, or kits, at hand and on the shelf. */
function there({ market }: World, { fresh, used, kits }: AtHand, sku: string): number {
  const offer = market.offers.get(sku);
  const inPack = offer?.kind === 'part' ? (offer.gives[0]?.amount ?? 1) : 1;
  return (fresh.get(sku) ?? 0) + (used.get(sku) ?? 0) + (kits.get(sku) ?? 0) + (offer ? onShelf(offer) * inPack : 0);
}
