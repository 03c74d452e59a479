import type { Line } from './answer.ts';
import { inOnePack } from './catalog.ts';
import { type Fault, fault } from './finding.ts';
import { inWords, isMoney, shownAmount } from './measure.ts';
import { delivery, packPrice } from './offers.ts';
import type { Scene } from './scene.ts';

/** Buy lines: whole packs that can be had, at their price, in their time; the plan is ready when the last has come. */
export function* checkBuying(scene: Scene): Iterable<Fault> {
  const bought = scene.plan.lines.filter((line) => line.action === 'buy');
  for (const [index, line] of bought.entries()) {
    if (bought.findIndex((other) => other.sku === line.sku) !== index) yield fault('buy', `${line.sku} has two lines`);
    yield* checkLine(scene, line);
  }
  const days = bought.map((line) => daysOf(scene, line));
  const known = days.filter((day) => day !== null);
  const ready = known.length < days.length ? null : Math.max(0, ...known);
  if (scene.plan.readyInDays !== ready)
    yield fault('ready-in-days', `ready in ${ready ?? 'nobody knows how many'} days`);
  for (const line of scene.plan.lines) {
    const shelf = scene.market.stock.get(line.sku ?? '')?.bin ?? '';
    if (line.bin !== null && line.bin !== shelf) yield fault('bin', `${line.sku} lies in ${shelf || 'no bin'}`);
    const priced = line.action === 'buy' || (line.action === 'use' && line.from === null);
    if (!priced && line.total !== null) yield fault('line-total', `${line.action} ${line.sku} has a total`);
    if (line.action !== 'buy' && line.days !== null) yield fault('days', `${line.action} ${line.sku} has days`);
  }
}

function* checkLine(scene: Scene, line: Line): Iterable<Fault> {
  const { book, market } = scene;
  const sku = line.sku ?? '';
  const contents = inOnePack(book, sku);
  const packs = line.packs ?? 0;
  if (!contents || packs < 1) {
    yield fault('buy', `${packs} packs of ${sku}, which is ${contents ? '' : 'not '}sold`);
    return;
  }
  const single = book.kits.has(sku) ? 1 : ([...contents.values()][0] ?? 1);
  const shown = shownAmount(line.quantity, line.unit);
  const isPacks = line.unit === 'piece' && line.quantity === packs;
  if (!isPacks && shown !== packs * single)
    yield fault('buy', `${packs} packs of ${sku} are not ${line.quantity} ${line.unit}`);
  const comes = delivery(scene, sku, packs);
  if (comes.kind === 'never') yield fault('not-obtainable', `${packs} packs of ${sku} cannot be had`);
  if (line.days !== daysOf(scene, line)) yield fault('days', `${sku} takes ${daysOf(scene, line) ?? 'unknown'} days`);
  yield* checkPrice(scene, line, packs, packPrice(book, market, sku));
}

function* checkPrice(scene: Scene, line: Line, packs: number, each: number | null): Iterable<Fault> {
  const { digits } = scene.book;
  if (each === null) {
    if (line.unitPrice !== null) yield fault('unit-price', `${line.sku} has no price`);
    if (line.total !== null) yield fault('line-total', `${line.sku} has no price`);
    return;
  }
  if (!isMoney(line.unitPrice, each, digits)) yield fault('unit-price', `${line.sku} costs ${inWords(each, digits)}`);
  const total = each * packs;
  if (!isMoney(line.total, total, digits)) yield fault('line-total', `${line.sku}: ${inWords(total, digits)}`);
}

const daysOf = (scene: Scene, line: Line): number | null => {
  const comes = delivery(scene, line.sku ?? '', line.packs ?? 0);
  return comes.kind === 'days' ? comes.days : null;
};
