import { checkStep } from './check-step.ts';
import { type Fault, fault } from './finding.ts';
import { type Row, text, texts } from './read.ts';
import type { Scene } from './scene.ts';

/** The steps are the least set of operations, each once, in the order of section 5; minutes are their sum. */
export function* checkSteps(scene: Scene): Iterable<Fault> {
  const { work, plan } = scene;
  if (!work.hasOrder) yield fault('no-order', 'the needed operations form a circle');
  for (const slot of work.outOfReach) yield fault('no-operation', `no operation changes ${slot}`);
  for (const id of work.missing) yield fault('no-operation', `${id} is no operation of the family`);
  const shown = plan.steps.map((step) => text(step.id) ?? '');
  const lacking = work.needed.filter((id) => !shown.includes(id));
  const extra = shown.filter((id, index) => !work.needed.includes(id) || shown.indexOf(id) !== index);
  for (const id of lacking) yield fault('missing-step', id);
  for (const id of extra) yield fault('extra-step', id);
  if (lacking.length + extra.length === 0 && shown.some((id, index) => id !== work.needed[index])) {
    yield fault('step-order', `should be ${work.needed.join(', ')}`);
  }
  for (const [index, step] of plan.steps.entries()) {
    const operation = work.operations.get(shown[index] ?? '');
    if (operation) yield* checkStep(scene, step, operation);
  }
  yield* checkFills(plan.steps);
}

/** What the steps open or renew is filled once, and not before the last step that touches it. */
function* checkFills(steps: readonly Row[]): Iterable<Fault> {
  const slotsOf = (step: Row): readonly string[] => texts(step.slots);
  const fillsOf = (step: Row): readonly string[] => texts(step.fills);
  for (const slot of new Set(steps.flatMap((step) => [...slotsOf(step), ...fillsOf(step)]))) {
    const last = steps.findLastIndex((step) => slotsOf(step).includes(slot));
    const filled = steps.flatMap((step, at) => (fillsOf(step).includes(slot) ? [at] : []));
    if (last < 0 || filled.length !== 1 || (filled[0] ?? -1) < last) yield fault('step-fills', slot);
  }
}
