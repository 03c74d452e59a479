import { type Fault, fault } from './finding.ts';
import { length } from './measure.ts';
import { type Row, row } from './read.ts';
import type { Scene } from './scene.ts';

/** Each setting of the family has a number; one that changes is set to a mark between least and greatest. */
export function* checkSettings(scene: Scene): Iterable<Fault> {
  const { now, after, family } = scene;
  for (const setting of after.settings.keys()) {
    if (!now.settings.has(setting)) yield fault('setting', `${setting} is no setting of the family`);
  }
  for (const [setting, was] of now.settings) {
    const is = after.settings.get(setting);
    if (is === undefined) yield fault('setting', `${setting} is not said`);
    else if (is !== was && !isMark(row(row(family.settings)[setting]), is)) {
      yield fault('setting-mark', `${setting} is ${is} um, which is no mark`);
    }
  }
}

function isMark(range: Row, value: number): boolean {
  const [least, greatest, step] = [length(range.least), length(range.greatest), length(range.step)];
  if (least === null || greatest === null || step === null || step <= 0) return false;
  return value >= least && value <= greatest && (value - least) % step === 0;
}
