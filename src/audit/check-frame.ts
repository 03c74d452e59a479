import { axleToCrown, type Measured, measuredOf, turned } from './axle-to-crown.ts';
import { isOfSize } from './bike.ts';
import { type Fault, fault } from './finding.ts';
import { length } from './measure.ts';
import { number, numbers, type Row, row, rows } from './read.ts';
import { ontoAnother, type Scene } from './scene.ts';
import { sameSettings } from './settings.ts';

/** Half of a tenth of a millimetre: lengths that were turned are not judged finer. */
const GRAIN = 0.05;

/** `frame-travel`, `frame-axle-to-crown`, `wheel-of-bike` (section 10): what the frame's maker says of forks on it. */
export function* checkFrame(scene: Scene): Iterable<Fault> {
  const { ride } = scene.question;
  if (!ride) return;
  const { now, after } = scene;
  const newLength =
    ontoAnother(scene) ||
    scene.chassisChanged ||
    now.travel !== after.travel ||
    !sameSettings(now.settings, after.settings);
  const newWheel = wheelAfter(scene) !== wheelNow(scene);
  const limits = rows(ride.bike.limits).filter((limit) => speaks(scene, limit));
  for (const limit of newLength || newWheel ? limits : []) {
    yield* checkTravel(scene, row(limit.travel));
    yield* checkLength(scene, row(limit['axle-to-crown']));
  }
  const takes = [...numbers(after.chassis.wheel), ...numbers(after.chassis.takes)];
  const wheel = wheelAfter(scene);
  if ((ontoAnother(scene) || scene.chassisChanged || newWheel) && wheel !== null && !takes.includes(wheel)) {
    yield fault('wheel-of-bike', `${after.chassis.id} does not take ${wheel}`);
  }
}

/** The wheel that turns in the fork afterwards: the wanted one, else the bike's, else the one it is made for. */
export const wheelAfter = (scene: Scene): number | null =>
  scene.question.wheel ?? number(scene.question.ride?.bike.wheel) ?? number(scene.after.chassis.wheel);

/** The wheel that turns in it now. */
export const wheelNow = (scene: Scene): number | null =>
  number(scene.question.ride?.bike.wheel) ?? number(scene.now.chassis.wheel);

/** A limit speaks of this wheel, size and kind of crown, as far as it names them. */
function speaks(scene: Scene, limit: Row): boolean {
  const wheel = number(limit.wheel);
  const crown = scene.family.crown ?? 'single';
  return (
    (wheel === null || wheel === wheelAfter(scene)) &&
    isOfSize(limit, scene.question.ride?.size ?? null) &&
    (limit.crown === undefined || limit.crown === crown)
  );
}

function* checkTravel(scene: Scene, { least, greatest }: Row): Iterable<Fault> {
  const [from, to, travel] = [length(least), length(greatest), scene.after.travel];
  if (travel === null) return;
  if ((from !== null && travel < from) || (to !== null && travel > to)) {
    yield fault('frame-travel', `travel ${travel} um, the frame takes ${from ?? 'any'} to ${to ?? 'any'}`);
  }
}

/** The limit's own way of measuring counts. What cannot be turned into it does not block. */
function* checkLength(scene: Scene, limit: Row): Iterable<Fault> {
  const { chassis } = scene.after;
  const own = axleToCrown(scene.family, scene.after);
  const measured: Measured = limit.measured === 'straight' ? 'straight' : 'along-steerer';
  const mm = own === null ? null : turned(own, measuredOf(chassis), measured, chassis);
  const [from, to] = [length(limit.least), length(limit.greatest)];
  if (mm === null) return;
  if ((from !== null && mm < from / 1000 - GRAIN) || (to !== null && mm > to / 1000 + GRAIN)) {
    yield fault('frame-axle-to-crown', `${mm.toFixed(1)} mm ${measured}, the frame takes ${from} to ${to} um`);
  }
}
