import { roundUpAmount } from '../quantity/index.ts';
import { allDoses } from './doses.ts';
import { rows, text, whole } from './read.ts';
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

/** Parts without a slot that the new pieces of changed slots need, and what these need in turn. */
export function companions(scene: Scene): ReadonlyMap<string, number> {
  const inBuild = new Set([...scene.after.build.values()].map((content) => content?.sku));
  const needed = new Map<string, number>();
  const add = (sku: string, pieces: number, above: readonly string[]): void => {
    for (const need of rows(scene.book.parts.get(sku)?.needs)) {
      const other = text(need.sku);
      if (other === null || inBuild.has(other) || above.includes(other)) continue;
      const more = pieces * (whole(need.quantity) ?? 1);
      needed.set(other, (needed.get(other) ?? 0) + more);
      add(other, more, [...above, other]);
    }
  };
  for (const need of slotNeeds(scene)) if (need.changed) add(need.sku, need.pieces, [need.sku]);
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
