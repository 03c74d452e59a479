import { hanging, silentStandards } from './check-dimensions.ts';
import { silentKept } from './check-kept.ts';
import { silentRatings } from './check-ratings.ts';
import { silentWants } from './check-wants.ts';
import { certain, refusals, verdict } from './clauses.ts';
import { type Fault, fault } from './finding.ts';
import { conditions } from './made.ts';
import { partIn, type Scene } from './scene.ts';

/**
 * `part-fits`: what changes fits the chassis; in another chassis everything does (section 4). A part of the bike needs
 * no clause (section 10). What nobody knows, or what hangs on when the fork was made, is counted.
 */
export function* checkFit(scene: Scene): Iterable<Fault> {
  const { plan, after, made, question } = scene;
  for (const slot of scene.changed) {
    const part = scene.bikeSlots.has(slot) ? partIn(scene, after, slot) : undefined;
    const against = part ? refusals(part, after.chassis) : [];
    if (against.some((clause) => conditions(clause, after.chassis, made) === 'yes')) {
      yield fault('part-fits', `${part?.sku} in ${slot} does not fit ${after.chassis.id}`);
    }
  }
  const hangs = hanging(scene);
  const unknown = judgedSlots(scene).filter((slot) => {
    const said = saidOf(scene, slot);
    return said === 'unknown' || said === 'perhaps' || (said !== null && hangs.includes(slot));
  });
  for (const slot of judgedSlots(scene)) {
    const part = partIn(scene, after, slot);
    if (!part) continue;
    if (saidOf(scene, slot) === 'no')
      yield fault('part-fits', `${part.sku} in ${slot} does not fit ${after.chassis.id}`);
    const clauses = certain(part, after.chassis, made).length;
    if (clauses > 1) yield fault('part-fits', `${clauses} clauses of ${part.sku} match the chassis`);
  }
  const all = [
    ...unknown,
    ...silentStandards(scene),
    ...silentRatings(scene),
    ...silentWants(scene),
    ...silentKept(scene),
  ];
  if (plan.unknowns !== all.length) yield fault('unknowns', `not known are ${all.join(', ') || 'none'}`);
  if (all.length > 0 && !question.allowUnknown) {
    yield fault('unknown-not-allowed', `not known and not allowed: ${all.join(', ')}`);
  }
}

/** What the clauses say of the part in a slot of the fork; null where there is none. */
function saidOf(scene: Scene, slot: string): ReturnType<typeof verdict> | null {
  const part = partIn(scene, scene.after, slot);
  return part ? verdict(part, scene.after.chassis, scene.family, scene.made) : null;
}

const judgedSlots = (scene: Scene): readonly string[] =>
  [...scene.slots.keys()].filter(
    (slot) => !scene.bikeSlots.has(slot) && (scene.chassisChanged || scene.changed.has(slot)),
  );
