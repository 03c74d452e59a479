import { itemOf } from './catalog.ts';
import { type Fault, fault } from './finding.ts';
import { shownAmount } from './measure.ts';
import { companions, slotNeeds } from './needs.ts';
import { isBarred } from './replaced.ts';
import type { Scene } from './scene.ts';
import { atHand } from './sources.ts';
import { tally } from './tally.ts';

/** Take lines take no more than is at hand, and no used piece goes into a renewable slot. */
export function* checkAtHand(scene: Scene): Iterable<Fault> {
  const { book, plan, question } = scene;
  const takes = plan.lines.filter((line) => line.action === 'take');
  const taken = tally(
    takes.flatMap((line) =>
      counted(scene, line.sku ?? '', shownAmount(line.quantity, line.unit), line.unit !== 'piece'),
    ),
  );
  const had = tally(question.have.flatMap((have) => counted(scene, have.sku, have.held, have.isAmount)));
  const unused = tally(
    question.have.filter((have) => !have.used).flatMap((have) => counted(scene, have.sku, have.held, have.isAmount)),
  );
  for (const [what, quantity] of taken) {
    if (quantity > (had.get(what) ?? 0))
      yield fault('take', `${what}: taken ${quantity}, at hand ${had.get(what) ?? 0}`);
    if (isBarred(scene, what)) yield fault('old-stock', `${what} is replaced and its old stock not usable`);
    if (!book.parts.has(what)) continue;
    const used = Math.max(0, quantity - (unused.get(what) ?? 0));
    if (used > usedAllowed(scene, what)) yield fault('used-piece', `a used ${what} goes into a renewable slot`);
  }
}

/** Kits are counted as kits, all else as items. */
function counted(scene: Scene, sku: string, held: number, isAmount: boolean): readonly (readonly [string, number])[] {
  if (scene.book.kits.has(sku)) return [[sku, held]];
  return [[itemOf(scene.book, sku), [...atHand(scene.book, sku, held, isAmount).values()][0] ?? 0]];
}

/** Pieces that go where a used one may: slots that are neither single-use nor wear, and parts without a slot. */
function usedAllowed(scene: Scene, sku: string): number {
  const inSlots = slotNeeds(scene).filter((need) => need.sku === sku && !isRenewable(scene, need.slot));
  return inSlots.reduce((sum, need) => sum + need.pieces, companions(scene).get(sku) ?? 0);
}

const isRenewable = (scene: Scene, slot: string): boolean =>
  scene.slots.get(slot)?.['single-use'] === true || scene.slots.get(slot)?.wears === true;
