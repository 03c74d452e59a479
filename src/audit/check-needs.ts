import { parseQuantity } from '../quantity/parse.ts';
import { itemOf, itemUnit, supplyOf } from './catalog.ts';
import { type Fault, fault } from './finding.ts';
import { shownAmount } from './measure.ts';
import { companions, slotNeeds, supplyNeeds } from './needs.ts';
import { type Row, row, rows, text, texts } from './read.ts';
import type { Scene } from './scene.ts';
import { tally } from './tally.ts';

/** Install, renew and use lines are exactly what the plan needs. */
export function* checkNeeds(scene: Scene): Iterable<Fault> {
  yield* checkPieces(scene);
  yield* checkSupplies(scene);
  yield* checkUseLines(scene);
}

/** A changed slot is installed, a renewed one renewed; where both are true of a slot either word will do. */
function* checkPieces(scene: Scene): Iterable<Fault> {
  const needs = slotNeeds(scene);
  const needed = tally([...needs.map((need) => [need.sku, need.pieces] as const), ...companions(scene)]);
  const onlyRenewed = tally(needs.filter((need) => !need.changed).map((need) => [need.sku, need.pieces]));
  const everRenewed = tally(needs.filter((need) => need.renewed).map((need) => [need.sku, need.pieces]));
  const shown = (actions: readonly string[]) =>
    tally(
      scene.plan.lines
        .filter((line) => actions.includes(line.action))
        .map((line) => [line.sku ?? '', line.quantity] as const),
    );
  const [all, renew] = [shown(['install', 'renew']), shown(['renew'])];
  for (const sku of new Set([...needed.keys(), ...all.keys()])) {
    const [right, is, renewed] = [needed.get(sku) ?? 0, all.get(sku) ?? 0, renew.get(sku) ?? 0];
    if (right !== is) yield fault('need-pieces', `${sku}: ${is} pieces go in, needed are ${right}`);
    if (renewed < (onlyRenewed.get(sku) ?? 0) || renewed > (everRenewed.get(sku) ?? 0)) {
      yield fault('need-pieces', `${sku}: ${renewed} pieces are renewed`);
    }
  }
}

/** Each specification is served by one product that meets it; use lines add up to the rounded needs. */
function* checkSupplies(scene: Scene): Iterable<Fault> {
  const needed: [string, number][] = [];
  for (const [specification, held] of supplyNeeds(scene)) {
    const products = productsFor(scene, specification);
    const [product] = products;
    if (product === undefined || products.length > 1) {
      yield fault('need-product', `${specification} is served by ${products.length} products`);
      continue;
    }
    if (!meets(scene, product, specification)) yield fault('need-product', `${product} does not meet ${specification}`);
    needed.push([product, held]);
  }
  const right = tally(needed);
  const shown = tally(
    scene.plan.lines
      .filter((line) => line.action === 'use')
      .map((line) => [itemOf(scene.book, line.sku ?? ''), shownAmount(line.quantity, line.unit)] as const),
  );
  for (const item of new Set([...right.keys(), ...shown.keys()])) {
    const unit = itemUnit(scene.book, item);
    if (right.get(item) !== shown.get(item)) {
      yield fault(
        'need-amount',
        `${item}: used ${shown.get(item) ?? 0}, needed ${right.get(item) ?? 0} (thousandths of ${unit})`,
      );
    }
  }
}

/** The products that the steps name for a specification. */
function productsFor(scene: Scene, specification: string): readonly string[] {
  const named = scene.plan.steps
    .flatMap((step) => rows(step.amounts))
    .filter((dose) => dose.action === 'use' && dose.specification === specification)
    .map((dose) => itemOf(scene.book, text(dose.sku) ?? ''));
  return [...new Set(named)];
}

/** A supply meets a specification where it says so, has the same use and is counted in the same unit. */
function meets(scene: Scene, product: string, specification: string): boolean {
  const supply = supplyOf(scene.book, product);
  const asked = scene.book.specifications.get(specification);
  if (supply === null || supply.use !== asked?.use || supply.unit !== asked?.unit) return false;
  return (
    texts(supply.meets).includes(specification) || (scene.question.substitutes && equals(scene, supply, specification))
  );
}

/** An equal supply (section 6, "Equal supplies"): viscosity at 40 °C within 10 % of that of one that meets the specification. */
function equals(scene: Scene, supply: Row, specification: string): boolean {
  const at40 = (one: Row): number | null => viscosity(row(one.viscosity)['at-40']);
  const mine = at40(supply);
  return [...scene.book.supplies.values()].some((one) => {
    const theirs = at40(one);
    const specified = texts(one.meets).includes(specification) && one.use === supply.use && one.unit === supply.unit;
    return specified && mine !== null && theirs !== null && Math.abs(mine - theirs) * 10 <= theirs;
  });
}

function viscosity(value: unknown): number | null {
  const parsed = typeof value === 'string' ? parseQuantity('viscosity', value) : null;
  return parsed?.ok ? parsed.value : null;
}

/** What is used of one product from one supplier stands in one line. */
function* checkUseLines(scene: Scene): Iterable<Fault> {
  const uses = scene.plan.lines.filter((line) => line.action === 'use');
  const named = uses.map((line) => `${itemOf(scene.book, line.sku ?? '')} from ${line.from ?? 'the shop'}`);
  for (const name of named.filter((other, index) => named.indexOf(other) !== index)) yield fault('use-lines', name);
}
