import type { Plan, Step } from '../../plan/index.ts';
import type { Scene } from '../scene.ts';

/** A look on the way: what to look at, what it means, and what it would add to this plan. */
export function lookWords({ language }: Scene, plan: Plan, look: Step['looks'][number]): string {
  const adds = language.phrases.lookAdds(look, plan.money.currency);
  return `${look.look}. If ${look.if}: ${look.then}${adds === '' ? '' : ` (${adds})`}`;
}
