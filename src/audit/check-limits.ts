import { type Fault, fault } from './finding.ts';
import { length } from './measure.ts';
import { row } from './read.ts';
import { partIn, type Scene, travelIsNew } from './scene.ts';

/** `travel-range`, `damper-stroke`, `damper-length`. A limit that is missing does not block. */
export function* checkLimits(scene: Scene): Iterable<Fault> {
  yield* checkRange(scene);
  yield* checkStroke(scene);
  yield* checkLength(scene);
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

/** The stroke is judged against the travel where the damper is new or anything that sets the travel is. */
function* checkStroke(scene: Scene): Iterable<Fault> {
  const isNew = ['damper', 'spring', 'travel-spacers'].some((slot) => scene.changed.has(slot));
  const stroke = length(row(partIn(scene, scene.after, 'damper')?.dimensions).stroke);
  const travel = scene.after.travel;
  if (stroke === null || travel === null || !(isNew || travelIsNew(scene) || scene.chassisChanged)) return;
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
