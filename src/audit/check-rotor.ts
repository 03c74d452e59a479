import { type Fault, fault } from './finding.ts';
import { length } from './measure.ts';
import { row } from './read.ts';
import { ontoAnother, partIn, type Scene } from './scene.ts';

/** `rotor-size`, `rotor-greatest` (section 10). A length that one side does not state does not block. */
export function* checkRotor(scene: Scene): Iterable<Fault> {
  const { after, changed } = scene;
  const rotor = length(row(partIn(scene, after, 'rotor')?.dimensions).rotor);
  if (rotor === null) return;
  const brake = row(after.chassis.brake);
  const [native, greatest] = [length(brake.native), length(brake.greatest)];
  const another = changed.has('rotor') || scene.chassisChanged || ontoAnother(scene);
  const step = stepOf(scene);
  if ((another || changed.has('adaptor')) && native !== null && step !== null && rotor !== native + step) {
    yield fault('rotor-size', `the rotor is ${rotor} um, mount and adaptor are for ${native + step}`);
  }
  if (another && greatest !== null && rotor > greatest) {
    yield fault('rotor-greatest', `the rotor is ${rotor} um, the greatest ${greatest}`);
  }
}

/** How much larger a rotor the adaptor makes room for: nothing without one. */
function stepOf(scene: Scene): number | null {
  const adaptor = scene.after.build.get('adaptor');
  return adaptor ? length(row(scene.book.parts.get(adaptor.sku)?.dimensions)['rotor-step']) : 0;
}
