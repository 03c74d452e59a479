import { givingClause } from './clauses.ts';
import { type Fault, fault } from './finding.ts';
import { length } from './measure.ts';
import { isRow, row } from './read.ts';
import { partIn, type Scene, travelIsNew } from './scene.ts';

/** `travel-range`, `damper-stroke`, `damper-length`, and what the makers of the parts allow. A missing limit does not block. */
export function* checkLimits(scene: Scene): Iterable<Fault> {
  yield* checkRange(scene);
  yield* checkStroke(scene);
  yield* checkLength(scene);
  for (const slot of scene.slots.keys()) yield* checkPartLimits(scene, slot);
}

function* checkRange(scene: Scene): Iterable<Fault> {
  const travel = scene.after.travel;
  if (travel === null || !(travelIsNew(scene) || scene.chassisChanged)) return;
  const limits = row(scene.after.chassis.travel);
  const [least, greatest] = [length(limits.least), length(limits.greatest)];
  if (least !== null && travel < least) yield fault('travel-range', `${travel} um is below the least, ${least}`);
  if (greatest !== null && travel > greatest) {
    yield fault('travel-range', `${travel} um is above the greatest, ${greatest}`);
  }
}

/** True where a part or anything that sets the travel is new, be the travel the same or not. */
const isJudged = (scene: Scene, slot: string): boolean =>
  travelIsNew(scene) ||
  scene.chassisChanged ||
  [slot, 'spring', 'travel-spacers'].some((one) => scene.changed.has(one));

function* checkStroke(scene: Scene): Iterable<Fault> {
  const stroke = length(row(partIn(scene, scene.after, 'damper')?.dimensions).stroke);
  const travel = scene.after.travel;
  if (stroke === null || travel === null || !isJudged(scene, 'damper')) return;
  if (stroke < travel) yield fault('damper-stroke', `the damper's stroke is ${stroke} um, the travel ${travel}`);
}

function* checkLength(scene: Scene): Iterable<Fault> {
  if (!(scene.changed.has('damper') || scene.chassisChanged)) return;
  const closed = length(row(partIn(scene, scene.after, 'damper')?.dimensions)['closed-length']);
  const room = length(row(scene.after.chassis.dimensions)['damper-room']);
  if (closed !== null && room !== null && closed > room) {
    yield fault('damper-length', `the closed damper is ${closed} um long, the room ${room}`);
  }
}

/** The travel that a part's maker allows in the chassis; where the fork's maker says otherwise, both are shown. */
function* checkPartLimits(scene: Scene, slot: string): Iterable<Fault> {
  const { after, plan } = scene;
  const part = partIn(scene, after, slot);
  const clause = part && givingClause(part, after.chassis, scene.made);
  if (!clause || !isRow(clause.limits) || !isJudged(scene, slot)) return;
  const own = row(after.chassis.travel);
  const ends = ['least', 'greatest'] as const;
  const [least, greatest] = ends.map((end) => length(row(clause.limits)[end]));
  const travel = after.travel ?? 0;
  if (after.travel !== null && (travel < (least ?? travel) || travel > (greatest ?? travel))) {
    yield fault('part-limits', `${part.sku} is allowed ${least ?? 'any'} to ${greatest ?? 'any'} um, it is ${travel}`);
  }
  const differ = ends.some((end) => {
    const [its, forks] = [length(row(clause.limits)[end]), length(own[end])];
    return its !== null && forks !== null && its !== forks;
  });
  if (differ && !plan.flags.includes('limits-disagree')) yield fault('flag', 'limits-disagree is missing');
}
