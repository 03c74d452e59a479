import type { Plan, Step } from '../../plan/index.ts';
import type { Scene } from '../scene.ts';

/** A look on the way: what to look at, what it means, and what it would add to this plan. */
export function lookWords(scene: Scene, plan: Plan, step: Step, look: Step['looks'][number]): string {
  const again = minutesAgain(scene, plan, step, look.adds);
  const adds = scene.language.phrases.lookAdds(look, plan.money.currency, again);
  return `${look.look}. If ${look.if}: ${look.then}${adds === '' ? '' : ` (${adds})`}`;
}

/**
 * Minutes of the steps that are done once more where a look finds something after the way there is closed: of what the work on those slots
 * requires, all that was opened and is closed by now, and its closing. What a look adds (model.md, section 5) counts each step once.
 */
function minutesAgain({ catalog }: Scene, plan: Plan, step: Step, slots: readonly string[]): number {
  const done = plan.steps.slice(0, plan.steps.findIndex(({ id }) => id === step.id) + 1);
  const isDone = (id: string | null): boolean => done.some((one) => one.id === id);
  const family = catalog.chassis.get(plan.chassis)?.family ?? '';
  const needed = [...catalog.operations.values()].filter(
    ({ families, changes }) => families.includes(family) && changes.some((slot) => slots.includes(slot)),
  );
  const again = new Set<string>();
  const seen = new Set<string>();
  for (let one = needed.pop(); one !== undefined; one = needed.pop()) {
    if (seen.has(one.id)) continue;
    seen.add(one.id);
    needed.push(...one.requires.flatMap((id) => catalog.operations.get(id) ?? []));
    if (one.closedBy !== null && isDone(one.id) && isDone(one.closedBy)) again.add(one.id).add(one.closedBy);
  }
  return done.filter(({ id }) => again.has(id)).reduce((sum, { minutes }) => sum + minutes, 0);
}
