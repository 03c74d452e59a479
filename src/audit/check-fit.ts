import { matches, verdict } from './clauses.ts';
import { type Fault, fault } from './finding.ts';
import { rows } from './read.ts';
import { partIn, type Scene } from './scene.ts';

/** `part-fits`: what changes fits the chassis; in another chassis everything does. Unknowns are counted (section 4). */
export function* checkFit(scene: Scene): Iterable<Fault> {
  let unknowns = 0;
  for (const slot of judgedSlots(scene)) {
    const part = partIn(scene, scene.after, slot);
    if (!part) continue;
    const said = verdict(part, scene.after.chassis, scene.family);
    if (said === 'no') yield fault('part-fits', `${part.sku} in ${slot} does not fit ${scene.after.chassis.id}`);
    if (said === 'unknown') unknowns += 1;
    const clauses = rows(part.fits).filter((clause) => clause.not !== true && matches(clause, scene.after.chassis));
    if (clauses.length > 1) yield fault('part-fits', `${clauses.length} clauses of ${part.sku} match the chassis`);
  }
  if (scene.plan.unknowns !== unknowns) yield fault('unknowns', `the plan rests on ${unknowns} unknown fits`);
  if (unknowns > 0 && !scene.question.allowUnknown) {
    yield fault('unknown-not-allowed', `${unknowns} fits are unknown and unknowns are not allowed`);
  }
}

const judgedSlots = (scene: Scene): readonly string[] =>
  [...scene.slots.keys()].filter((slot) => scene.chassisChanged || scene.changed.has(slot));
