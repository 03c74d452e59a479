import { chassisOf, readContent, roleOf, sameContent, show } from './build.ts';
import { type Fault, fault } from './finding.ts';
import { number, text } from './read.ts';
import type { Scene } from './scene.ts';

/** The build is a build: every slot of the family, allowed contents, one chassis (section 1). */
export function* checkBuild(scene: Scene): Iterable<Fault> {
  const { plan, slots } = scene;
  for (const slot of slots.keys()) {
    if (!plan.build.has(slot)) yield fault('build-slot', `${slot} is not in the build`);
  }
  for (const slot of plan.build.keys()) {
    if (!slots.has(slot)) yield fault('build-slot', `${slot} is not a slot of the family`);
  }
  yield* checkContents(scene);
  yield* checkChassis(scene);
  yield* checkChanges(scene);
}

function* checkContents(scene: Scene): Iterable<Fault> {
  for (const [slot, content] of scene.plan.build) {
    if (!scene.changed.has(slot)) continue;
    if (content) {
      const part = scene.book.parts.get(content.sku);
      if (!part) yield fault('build-part', `${content.sku} in ${slot} is no part of the catalogue`);
      else if (part.role !== roleOf(scene.family, slot)) {
        yield fault('build-part', `${content.sku} in ${slot} has the role ${text(part.role)}`);
      }
    }
    yield* checkCount(scene, slot, content?.quantity ?? 0);
  }
}

/** `slot-filled`: a changed slot holds the pieces it takes, a spacer slot at most its `most`. */
function* checkCount(scene: Scene, slot: string, quantity: number): Iterable<Fault> {
  const facts = scene.slots.get(slot) ?? {};
  const most = number(facts.most);
  const pieces = number(facts.pieces) ?? 1;
  const mayBeEmpty = most !== null || facts['may-be-empty'] === true;
  if (quantity === 0 && !mayBeEmpty) yield fault('slot-filled', `${slot} is empty`);
  if (quantity > 0 && most !== null && quantity > most) {
    yield fault('slot-filled', `${slot} holds ${quantity}, at most ${most}`);
  }
  if (quantity > 0 && most === null && quantity !== pieces) {
    yield fault('slot-filled', `${slot} holds ${quantity}, takes ${pieces}`);
  }
}

function* checkChassis(scene: Scene): Iterable<Fault> {
  const made = chassisOf(scene.book, scene.plan.build);
  const id = text(made[0]?.id);
  if (made.length !== 1) yield fault('build-chassis', `${made.length} chassis list this upper and lowers together`);
  else if (id !== scene.plan.chassis) yield fault('build-chassis', `upper and lowers make ${id}`);
  if (scene.after.chassis.family !== scene.now.chassis.family) {
    yield fault('build-chassis', 'the chassis is of another family');
  }
}

/** `changes` lists the slots that differ from now, each once. */
function* checkChanges(scene: Scene): Iterable<Fault> {
  const listed = scene.plan.changes.map((change) => text(change.slot) ?? '');
  for (const slot of scene.changed) {
    if (!listed.includes(slot)) yield fault('changes', `${slot} changes and is not listed`);
  }
  for (const [index, change] of scene.plan.changes.entries()) {
    const slot = listed[index] ?? '';
    if (listed.indexOf(slot) !== index) yield fault('changes', `${slot} is listed twice`);
    if (!scene.changed.has(slot)) yield fault('changes', `${slot} is listed and does not change`);
    const [from, to] = [scene.now.build.get(slot), scene.after.build.get(slot)];
    if (!sameContent(readContent(change.from), from) || !sameContent(readContent(change.to), to)) {
      yield fault('changes', `${slot} goes from ${show(from)} to ${show(to)}`);
    }
  }
}
