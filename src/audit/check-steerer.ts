import { type Fault, fault } from './finding.ts';
import { length } from './measure.ts';
import { isRow, row, text } from './read.ts';
import { ontoAnother, type Scene } from './scene.ts';

/** `steerer-length` (section 10): it reaches through head tube, headset, spacers and stem. */
export function* checkSteerer(scene: Scene): Iterable<Fault> {
  const touched = ['upper', 'headset-lower', 'stem-spacers'].some((slot) => scene.changed.has(slot));
  if (!touched && !ontoAnother(scene)) return;
  const [has, needs] = [steererOf(scene), neededLength(scene)];
  if (has !== null && needs !== null && has < needs) {
    yield fault('steerer-length', `the steerer is ${has} um long, needed are ${needs}`);
  }
}

/** A new upper has the steerer of the new chassis; else what is told or on record, else the chassis' own. */
function steererOf(scene: Scene): number | null {
  if (scene.changed.has('upper')) return length(row(scene.after.chassis.steerer).length);
  return scene.question.steererLength ?? length(row(scene.now.chassis.steerer).length);
}

/** Null where one of the lengths is not stated. */
function neededLength(scene: Scene): number | null {
  const { ride } = scene.question;
  const tube = row(ride?.bike['head-tube']);
  const tall = isRow(tube.length) ? tube.length[ride?.size ?? ''] : text(tube.length);
  const lengths = [
    length(tall),
    length(tube['upper-stack']),
    length(tube['stem-clamp']),
    stackOf(scene, 'headset-lower'),
    stackOf(scene, 'stem-spacers'),
  ];
  const known = lengths.filter((each) => each !== null);
  return known.length < lengths.length ? null : known.reduce((sum, each) => sum + each, 0);
}

/** How much the pieces of a slot raise what is above them. */
function stackOf(scene: Scene, slot: string): number | null {
  const held = scene.after.build.get(slot);
  if (!held) return 0;
  const each = length(row(scene.book.parts.get(held.sku)?.dimensions).stack);
  return each === null ? null : each * held.quantity;
}
