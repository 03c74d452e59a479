import { wheelAfter, wheelNow } from './check-frame.ts';
import { type Fault, fault } from './finding.ts';
import { length } from './measure.ts';
import { row, text } from './read.ts';
import { ontoAnother, type Scene } from './scene.ts';

/** `tyre-room` (section 10): radius = bead/2 + width clears crown and arch, and the width the arch. */
export function* checkTyreRoom(scene: Scene): Iterable<Fault> {
  const { question, after } = scene;
  const wheel = wheelAfter(scene);
  const tyre = tyreOf(question.tyre ?? text(question.ride?.bike.tyre));
  const another = ontoAnother(scene) || scene.chassisChanged || wheel !== wheelNow(scene);
  if (!tyre || !another || tyre.bead !== wheel) return;
  const room = row(after.chassis['tyre-room']);
  const radius = tyre.bead / 2 + tyre.width;
  for (const [place, size] of Object.entries({ crown: radius, arch: radius, width: tyre.width })) {
    const most = length(room[place]);
    if (most !== null && size * 1000 > most)
      yield fault('tyre-room', `${size} mm at the ${place}, room for ${most} um`);
  }
}

/** A tyre by its designation: 60-622 is 60 mm wide on a bead seat of 622 mm. */
function tyreOf(designation: string | null): { readonly width: number; readonly bead: number } | null {
  const match = /^([0-9]{2,3})-([0-9]{3})$/.exec(designation ?? '');
  return match ? { width: Number(match[1]), bead: Number(match[2]) } : null;
}
