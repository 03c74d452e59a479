import { multiplyDivide } from '../quantity/index.ts';
import type { Line } from './answer.ts';
import { itemOf, itemUnit } from './catalog.ts';
import { type Fault, fault } from './finding.ts';
import { amount, inWords, isMoney, price, shownAmount } from './measure.ts';
import { type Row, rows, text } from './read.ts';
import type { Scene } from './scene.ts';

/** Lines dosed from what the shop holds in bulk. */
export const dosed = (scene: Scene): readonly Line[] =>
  scene.plan.lines.filter((line) => line.action === 'use' && line.from === null);

/** Bulk is used only where the question allows it and the shop has it; amount x price per unit, rounded half up. */
export function* checkBulk(scene: Scene): Iterable<Fault> {
  const { digits } = scene.book;
  for (const line of dosed(scene)) {
    const held = bulkEntry(scene, line);
    if (!scene.question.bulk || !held) {
      yield fault('bulk', `${line.sku} is not to be had in bulk`);
      continue;
    }
    const total = bulkTotal(scene, line, held);
    const right = total === null ? line.total === null : isMoney(line.total, total, digits);
    if (!right) yield fault('line-total', `${line.sku}: ${total === null ? 'no price' : inWords(total, digits)}`);
  }
}

const bulkEntry = (scene: Scene, line: Line): Row | undefined =>
  rows(scene.market.shop?.bulk).find((entry) => text(entry.supply) === itemOf(scene.book, line.sku ?? ''));

function bulkTotal(scene: Scene, line: Line, entry: Row): number | null {
  const unit = itemUnit(scene.book, itemOf(scene.book, line.sku ?? ''));
  const per = amount(entry.per, unit);
  const each = price(entry.price, scene.book.digits);
  const used = shownAmount(line.quantity, line.unit);
  if (per === null || per <= 0 || each === null || !Number.isSafeInteger(used)) return null;
  return multiplyDivide(used, each, per);
}
