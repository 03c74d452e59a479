import { roundUpAmount } from '../quantity/index.ts';
import { allDoses } from './doses.ts';
import { isGone } from './offers.ts';
import { rows, text, whole } from './read.ts';
import { lastOf } from './replaced.ts';
import type { Scene } from './scene.ts';

/** New pieces that a slot takes. */
interface SlotNeed {
  readonly slot: string;
  readonly sku: string;
  readonly pieces: number;
  readonly changed: boolean;
  readonly renewed: boolean;
}

/** Pieces of the slot's SKU that were in it and go back: same slot, same SKU, not renewed (section 6). */
export function goingBack(scene: Scene, slot: string): number {
  const [before, then] = [scene.now.build.get(slot), scene.after.build.get(slot)];
  if (!before || !then || before.sku !== then.sku || scene.work.renewed.has(slot)) return 0;
  return Math.min(before.quantity, then.quantity);
}

/** For each slot that changes or is renewed the new pieces of the SKU that the build chose. */
export function slotNeeds(scene: Scene): readonly SlotNeed[] {
  return [...scene.slots.keys()].flatMap((slot) => {
    const then = scene.after.build.get(slot);
    const [changed, renewed] = [scene.changed.has(slot), scene.work.renewed.has(slot)];
    const pieces = then ? then.quantity - goingBack(scene, slot) : 0;
    return then && (changed || renewed) && pieces > 0 ? [{ slot, sku: then.sku, pieces, changed, renewed }] : [];
  });
}

/**
 * Parts without a slot that the new pieces of changed slots need, and those of renewed ones where marked `with-renewal`,
 * and what these need in turn. For a replaced one
 * that cannot be had stands its last replacement (section 10).
 */
export function companions(scene: Scene): ReadonlyMap<string, number> {
  const needed = new Map<string, number>();
  const add = (sku: string, pieces: number, above: readonly string[], only: 'all' | 'with-renewal'): void => {
    for (const need of rows(scene.book.parts.get(sku)?.needs)) {
      if (only === 'with-renewal' && need['with-renewal'] !== true) continue;
      const named = text(need.sku);
      const more = pieces * (whole(need.quantity) ?? 1);
      if (named === null || above.includes(named)) continue;
      const meant = isGone(scene, named, more) ? lastOf(scene, named, more) : [{ sku: named, quantity: more }];
      for (const other of meant) {
        needed.set(other.sku, (needed.get(other.sku) ?? 0) + other.quantity);
        add(other.sku, other.quantity, [...above, named, other.sku], 'all');
      }
    }
  };
  for (const need of slotNeeds(scene)) add(need.sku, need.pieces, [need.sku], need.changed ? 'all' : 'with-renewal');
  return needed;
}

/** For each specification its doses added up, then rounded up to 0.1 mL, 0.1 g or a piece. */
export function supplyNeeds(scene: Scene): ReadonlyMap<string, number> {
  const sums = new Map<string, number>();
  const units = new Map<string, 'mL' | 'g' | 'piece'>();
  for (const dose of allDoses(scene)) {
    if (dose.action !== 'use') continue;
    sums.set(dose.specification, (sums.get(dose.specification) ?? 0) + dose.held);
    units.set(dose.specification, dose.unit);
  }
  return new Map([...sums].map(([id, held]) => [id, roundUpAmount(held, units.get(id) ?? 'piece')]));
}
