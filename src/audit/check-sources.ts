import { itemOf, itemUnit } from './catalog.ts';
import { type Fault, fault } from './finding.ts';
import { shownAmount } from './measure.ts';
import { number, rows, text } from './read.ts';
import type { Scene } from './scene.ts';
import { drawing, itemDrawn, type Source, sourcesOf } from './sources.ts';
import { tally } from './tally.ts';

/** Every piece and every drop comes from somewhere that has it, and what is left over is said. */
export function* checkSources(scene: Scene): Iterable<Fault> {
  const sources = sourcesOf(scene);
  for (const line of scene.plan.lines) {
    if (line.quantity <= 0) yield fault('quantity', `${line.action} ${line.sku}: ${line.quantity}`);
  }
  for (const line of drawing(scene)) {
    const unit = itemUnit(scene.book, itemOf(scene.book, line.sku ?? ''));
    if (line.unit !== unit) yield fault('quantity', `${line.sku} is counted in ${unit}`);
    if (line.from === null) {
      if (line.action !== 'use') yield fault('from', `${line.sku} comes from nowhere`);
      continue;
    }
    const source = sources.get(line.from);
    const [item] = itemDrawn(scene.book, line).keys();
    if (!source) yield fault('from', `${line.sku} comes from ${line.from}, which is neither bought nor taken`);
    else if (!source.holds.has(item ?? '')) yield fault('from', `${line.from} holds no ${line.sku}`);
  }
  for (const source of sources.values()) {
    yield* checkDraw(source);
    yield* checkLeftOver(scene, source);
  }
}

function* checkDraw(source: Source): Iterable<Fault> {
  for (const [item, drawn] of source.drawn) {
    const holds = source.holds.get(item) ?? 0;
    if (drawn > holds) yield fault('over-drawn', `${source.sku} holds ${holds} of ${item}, drawn are ${drawn}`);
  }
}

/** Left over is what was bought and is not drawn. What is at hand and not wholly used may go unsaid. */
function* checkLeftOver(scene: Scene, source: Source): Iterable<Fault> {
  const right = tally(
    [...source.holds].map(([item, held]) => [item, Math.max(0, held - (source.drawn.get(item) ?? 0))] as const),
  );
  const shown = tally(
    source.lines
      .flatMap((line) => rows(line.leftOver))
      .map((left) => {
        const item = itemOf(scene.book, text(left.sku) ?? '');
        return [item, shownAmount(number(left.quantity) ?? 0, itemUnit(scene.book, item))] as const;
      }),
  );
  if (shown.size === 0 && source.lines.every((line) => line.action === 'take')) return;
  for (const item of new Set([...right.keys(), ...shown.keys()])) {
    if (right.get(item) !== shown.get(item)) {
      yield fault('left-over', `${source.sku}: ${right.get(item) ?? 0} of ${item} left, shown ${shown.get(item) ?? 0}`);
    }
  }
}
