import { roundUpAmount } from '../quantity/index.ts';
import { allDoses } from './doses.ts';
import { type Fault, fault } from './finding.ts';
import { shownAmount, type Unit } from './measure.ts';
import { goingBack } from './needs.ts';
import type { Scene } from './scene.ts';
import { tally } from './tally.ts';

/** What becomes of what was in the fork: it goes back in, back to the customer, or it is waste. */
export function* checkOldPieces(scene: Scene): Iterable<Fault> {
  const fates = [...scene.slots.keys()].flatMap((slot) => fatesOf(scene, slot));
  for (const action of ['reuse', 'remove', 'waste']) {
    const right = tally(fates.filter((fate) => fate.action === action).map((fate) => [fate.sku, fate.pieces]));
    const shown = tally(
      scene.plan.lines
        .filter((line) => line.action === action && line.unit === 'piece')
        .map((line) => [line.sku ?? '', line.quantity] as const),
    );
    for (const sku of new Set([...right.keys(), ...shown.keys()])) {
      if (right.get(sku) !== shown.get(sku)) {
        yield fault(action, `${sku}: ${shown.get(sku) ?? 0} pieces, should be ${right.get(sku) ?? 0}`);
      }
    }
  }
  for (const unit of ['mL', 'g'] as const) yield* checkDrained(scene, unit);
}

interface Fate {
  readonly action: 'reuse' | 'remove' | 'waste';
  readonly sku: string;
  readonly pieces: number;
}

/** Single-use pieces that come out are waste, all others go back to the customer. */
function fatesOf(scene: Scene, slot: string): readonly Fate[] {
  const before = scene.now.build.get(slot);
  const opened = scene.changed.has(slot) || scene.work.renewed.has(slot);
  if (!before || !opened) return [];
  const back = goingBack(scene, slot);
  const out = scene.slots.get(slot)?.['single-use'] === true ? 'waste' : 'remove';
  return [
    { action: 'reuse', sku: before.sku, pieces: back },
    { action: out, sku: before.sku, pieces: before.quantity - back },
  ];
}

/** Drained oil is waste: the sum of what is drained, exactly or rounded up for each specification. */
function* checkDrained(scene: Scene, unit: Unit): Iterable<Fault> {
  const drained = tally(
    allDoses(scene)
      .filter((dose) => dose.action === 'drain' && dose.unit === unit)
      .map((dose) => [dose.specification, dose.held]),
  );
  const shown = scene.plan.lines
    .filter((line) => line.action === 'waste' && line.unit === unit)
    .reduce((sum, line) => sum + shownAmount(line.quantity, unit), 0);
  const exact = [...drained.values()].reduce((sum, held) => sum + held, 0);
  const rounded = [...drained.values()].reduce((sum, held) => sum + roundUpAmount(held, unit), 0);
  if (shown !== exact && shown !== rounded) {
    yield fault('waste', `${shown} drained, should be ${rounded} (thousandths of ${unit})`);
  }
}
