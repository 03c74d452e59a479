import { axleToCrown } from './axle-to-crown.ts';
import { sameContent, show } from './build.ts';
import { type Fault, fault } from './finding.ts';
import { length, rate } from './measure.ts';
import type { Bounds } from './question.ts';
import { field, numbers, type Row, row, texts } from './read.ts';
import { partIn, type Scene } from './scene.ts';
import { usesOf } from './uses.ts';

/** Every want is met (section 3). */
export function* checkWants(scene: Scene): Iterable<Fault> {
  yield* checkNumbers(scene);
  yield* checkSlots(scene);
  for (const id of scene.question.service) {
    const families = texts(scene.book.services.get(id)?.families);
    if (!families.some((family) => family === scene.family.id)) {
      yield fault('want-service', `${id} is no service of the family`);
    }
  }
  for (const skus of usesOf(scene)) {
    for (const sku of skus) if (!isUsed(scene, sku)) yield fault('want-use', `${sku} is not used`);
  }
  if (scene.work.needed.length === 0 && scene.plan.lines.length === 0) {
    yield fault('nothing-to-do', 'a plan in which nothing is done');
  }
}

/** Half of a tenth of a millimetre in micrometres: axle-to-crown is not judged finer. */
const GRAIN = 50;

function* checkNumbers(scene: Scene): Iterable<Fault> {
  const { question, after } = scene;
  if (question.travel !== null && after.travel !== question.travel) {
    yield fault('want-travel', `the travel is ${after.travel} um, wanted ${question.travel}`);
  }
  const wheels = [...numbers(after.chassis.wheel), ...numbers(after.chassis.takes)];
  if (question.wheel !== null && !wheels.includes(question.wheel)) {
    yield fault('want-wheel', `${after.chassis.id} does not take ${question.wheel}`);
  }
  const spacers = after.build.get('volume-spacers')?.quantity ?? 0;
  if (question.spacers !== null && spacers !== question.spacers) {
    yield fault('want-spacers', `${spacers} volume spacers, wanted ${question.spacers}`);
  }
  const coil = partIn(scene, after, 'coil');
  if (question.coilRate !== null && (!coil || (rate(coil.rate) ?? question.coilRate) !== question.coilRate)) {
    yield fault('want-coil-rate', `the coil has ${coil?.rate ?? 'no rate'}, wanted ${question.coilRate} N/m`);
  }
  const mm = axleToCrown(scene.family, after);
  if (!mayBeWithin(mm === null ? null : mm * 1000, question.axleToCrown, GRAIN)) {
    yield fault('want-axle-to-crown', `axle-to-crown is ${mm} mm`);
  }
  if (!mayBeWithin(length(after.chassis.offset), question.offset, 0)) {
    yield fault('want-offset', `the offset is ${String(after.chassis.offset)}`);
  }
}

/** Where the record is silent it may be: `silentWants` counts it. */
const mayBeWithin = (value: number | null, bounds: Bounds | null, grain: number): boolean =>
  bounds === null || value === null || (value >= bounds.least - grain && value <= bounds.greatest + grain);

/** Wishes for what the record of a part or chassis of the build does not state: not known, like any silence. */
export function silentWants(scene: Scene): readonly string[] {
  const { question, after, family } = scene;
  const coil = partIn(scene, after, 'coil');
  const traits = [...question.traits.keys()].filter((name) => {
    const part = partIn(scene, after, name.split('.')[0] ?? '');
    return part !== undefined && traitOf(part, name) === undefined;
  });
  return [
    ...(question.coilRate !== null && coil && rate(coil.rate) === null ? ['the rate of the coil'] : []),
    ...(question.axleToCrown !== null && axleToCrown(family, after) === null ? ['axle-to-crown'] : []),
    ...(question.offset !== null && length(after.chassis.offset) === null ? ['offset'] : []),
    ...traits,
  ];
}

const traitOf = (part: Row, name: string): unknown => field(row(part.traits), name.split('.')[1] ?? '');

/** A setting may be kept like a slot. */
function* checkSlots(scene: Scene): Iterable<Fault> {
  const { question, after, now } = scene;
  for (const [name, wanted] of question.traits) {
    const part = partIn(scene, after, name.split('.')[0] ?? '');
    const has = part && (traitOf(part, name) ?? wanted);
    if (has !== wanted) yield fault('want-trait', `${name} is ${String(has)}, wanted ${wanted}`);
  }
  for (const slot of question.keep) {
    const same = sameContent(now.build.get(slot), after.build.get(slot));
    if (!same || now.settings.get(slot) !== after.settings.get(slot)) {
      yield fault('want-keep', `${slot} held ${now.settings.get(slot) ?? show(now.build.get(slot))}`);
    }
  }
  for (const slot of question.renew) {
    if (!scene.slots.has(slot)) yield fault('want-renew', `${slot} is no slot of fork or bike`);
  }
}

/** A part is in the build; a kit is bought or taken; a supply, or one of its packs, is used. */
function isUsed(scene: Scene, sku: string): boolean {
  const { book, plan } = scene;
  if (book.parts.has(sku)) return [...scene.after.build.values()].some((content) => content?.sku === sku);
  if (book.kits.has(sku)) {
    return plan.lines.some((line) => (line.action === 'buy' || line.action === 'take') && line.sku === sku);
  }
  const uses = plan.lines.filter((line) => line.action === 'use');
  if (book.packs.has(sku)) return uses.some((line) => line.from === sku || line.sku === sku);
  return uses.some((line) => line.sku === sku || book.packs.get(line.sku ?? '')?.supply.sku === sku);
}
