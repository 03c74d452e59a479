import { type Fault, fault } from './finding.ts';
import { field, type Row, rows, text, texts } from './read.ts';
import { doesFor } from './replaced.ts';
import { partIn, type Scene } from './scene.ts';

/** `needs` and `excludes` between slots, for pairs with a changed member. What is needed without a slot is bought. */
export function* checkCompany(scene: Scene): Iterable<Fault> {
  for (const slot of scene.slots.keys()) {
    const part = partIn(scene, scene.after, slot);
    if (!part) continue;
    yield* checkNeeds(scene, slot, part);
    yield* checkExcludes(scene, slot, part);
  }
}

function* checkNeeds(scene: Scene, slot: string, part: Row): Iterable<Fault> {
  for (const need of rows(part.needs)) {
    const other = text(field(need, 'slot'));
    if (other === null || !(scene.changed.has(slot) || scene.changed.has(other))) continue;
    const there = scene.after.build.get(other)?.sku ?? '';
    if (!texts(need['any-of']).some((sku) => doesFor(scene, there, sku))) {
      yield fault('needs', `${part.sku} needs one of ${texts(need['any-of']).join(', ')} in ${other}`);
    }
  }
}

function* checkExcludes(scene: Scene, slot: string, part: Row): Iterable<Fault> {
  for (const exclude of rows(part.excludes)) {
    for (const [other, content] of scene.after.build) {
      const met = content !== null && other !== slot && (exclude.sku === content.sku || exclude.slot === other);
      if (met && (scene.changed.has(slot) || scene.changed.has(other))) {
        yield fault('excludes', `${part.sku} cannot be together with ${content.sku} in ${other}`);
      }
    }
  }
}
