import { toolsOf } from './check-tools.ts';
import { dosesOf } from './doses.ts';
import { type Fault, fault } from './finding.ts';
import { isUnit, length, minutes, shownAmount, torque } from './measure.ts';
import { field, number, type Row, row, rows, text, texts } from './read.ts';
import type { Scene } from './scene.ts';

/** One step says what its operation says. */
export function* checkStep(scene: Scene, step: Row, operation: Row): Iterable<Fault> {
  const id = text(operation.id);
  for (const fact of ['title', 'text', 'skill']) {
    const said = text(operation[fact]);
    if (said !== null && step[fact] !== said) yield fault('step-fact', `${fact} of ${id}`);
  }
  if (step.minutes !== minutes(operation.minutes)) yield fault('step-minutes', `${id} takes ${operation.minutes}`);
  for (const caution of texts(operation.cautions)) {
    if (!texts(step.cautions).includes(caution)) yield fault('step-fact', `${id} does not say: ${caution}`);
  }
  for (const look of rows(operation.looks)) {
    const shown = rows(step.looks).some((other) => ['look', 'if', 'then'].every((key) => other[key] === look[key]));
    if (!shown) yield fault('step-fact', `${id} does not look at: ${text(look.look)}`);
  }
  const own = texts(operation.tools);
  const all = toolsOf(operation);
  if (own.some((tool) => !texts(step.tools).includes(tool)) || texts(step.tools).some((tool) => !all.includes(tool))) {
    yield fault('step-tools', `${id} needs ${all.join(', ')}`);
  }
  const touched = [...texts(operation.changes), ...rows(operation.renews).map((entry) => text(entry.slot))];
  if (texts(step.slots).some((slot) => !touched.includes(slot)))
    yield fault('step-slots', `${id} does not touch these`);
  yield* checkFasteners(scene, step, operation);
  yield* checkRings(step, operation);
  yield* checkAmounts(scene, step, operation);
}

/** Fasteners and torques are the catalogue's, in its order. */
function* checkFasteners(scene: Scene, step: Row, operation: Row): Iterable<Fault> {
  const right = rows(operation.fasteners);
  const shown = rows(step.fasteners);
  if (right.length !== shown.length) yield fault('step-fastener', `${text(operation.id)} has ${right.length}`);
  for (const [index, fastener] of right.entries()) {
    const other = shown[index];
    if (!other) continue;
    const same = ['name', 'side', 'thread', 'tool', 'state', 'position'].every(
      (key) => (text(other[key]) ?? null) === (text(fastener[key]) ?? null),
    );
    const does = text(field(row(scene.family.legs), text(fastener.side) ?? ''));
    if (!same || other.count !== (number(fastener.count) ?? 1)) {
      yield fault('step-fastener', `${text(fastener.name)} is not as in the catalogue`);
    }
    if (text(other.function) !== null && other.function !== does) {
      yield fault('step-fastener', `${text(fastener.name)} is on the leg that does ${does}`);
    }
    if (torque(other.torque) === null || torque(other.torque) !== torque(fastener.torque)) {
      yield fault('step-torque', `${text(fastener.name)} is tightened to ${text(fastener.torque)}`);
    }
  }
}

/** Retaining rings stand in the bores that the catalogue states, and are taken with the pliers that it names. */
function* checkRings(step: Row, operation: Row): Iterable<Fault> {
  const right = rows(operation['retaining-rings']);
  const shown = rows(step.rings);
  const same = right.every((ring, index) => {
    const other = shown[index] ?? {};
    const bore = number(other.bore);
    return bore !== null && bore * 1000 === length(ring.bore) && text(other.tool) === text(ring.tool);
  });
  if (!same || right.length !== shown.length) yield fault('step-ring', `${text(operation.id)} has ${right.length}`);
}

/** Amounts poured and drained are the doses, before any rounding. */
function* checkAmounts(scene: Scene, step: Row, operation: Row): Iterable<Fault> {
  const right = dosesOf(scene, operation).map((dose) =>
    [dose.action, dose.specification, dose.side, dose.held].join(' '),
  );
  const shown = rows(step.amounts).map((shownDose) => {
    const unit = isUnit(shownDose.unit) ? shownDose.unit : 'piece';
    const held = shownAmount(number(shownDose.quantity) ?? 0, unit);
    return [text(shownDose.action), text(shownDose.specification), text(shownDose.side), held].join(' ');
  });
  if ([...right].sort().join('\n') !== [...shown].sort().join('\n')) {
    yield fault(
      'step-amounts',
      `${text(operation.id)}: ${right.join('; ') || 'none'}; shown ${shown.join('; ') || 'none'}`,
    );
  }
}
