import { inKit, inOnePack } from './catalog.ts';
import { type Fault, fault } from './finding.ts';
import type { Scene } from './scene.ts';
import { addUp, atHand, drawing, itemDrawn, lineHolds, sourcesOf } from './sources.ts';

/**
 * Nothing is bought that the job can do without: a plan with one pack less and the same work would be as good or
 * better (section 7). What the question says to use is bought all the same. Used pieces are not counted on here.
 */
export function* checkPacks(scene: Scene): Iterable<Fault> {
  const { book, question, plan } = scene;
  const bought = plan.lines.filter((line) => line.action === 'buy');
  const have = question.have.filter((entry) => !entry.used);
  const supply = addUp([
    ...bought.map((line) => lineHolds(book, line)),
    ...have.map((entry) => atHand(book, entry.sku, entry.held, entry.isAmount)),
  ]);
  const need = addUp(
    drawing(scene)
      .filter((line) => line.from !== null)
      .map((line) => itemDrawn(book, line)),
  );
  for (const line of bought) {
    const sku = line.sku ?? '';
    const pack = inOnePack(book, sku);
    const asked = question.use.includes(sku) && (line.packs ?? 0) <= 1;
    if (!pack || asked) continue;
    const spare = [...pack].every(([item, held]) => (supply.get(item) ?? 0) - held >= (need.get(item) ?? 0));
    if (spare) yield fault('extra-pack', `the job needs no ${line.packs} packs of ${sku}`);
  }
  for (const source of sourcesOf(scene).values()) {
    const taken = source.lines.some((line) => line.action === 'take');
    if (taken && source.drawn.size === 0 && !isAskedKit(scene, source.sku)) {
      yield fault('extra-take', `nothing is drawn from ${source.sku}`);
    }
  }
}

const isAskedKit = (scene: Scene, sku: string): boolean => {
  const kit = scene.book.kits.get(sku);
  return kit !== undefined && inKit(scene.book, kit).size > 0 && scene.question.use.includes(sku);
};
