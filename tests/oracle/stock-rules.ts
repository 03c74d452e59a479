import { costsOf } from './buying.ts';
import { type Member, rule } from './member.ts';
import { type Draft, type Scene, slotsOf } from './scene.ts';
import { workOf } from './work.ts';

/** Everything that the job needs can be had. */
export const stockRules = (scene: Scene): readonly Member[] => [
  rule({
    code: 'not-obtainable',
    looksAt: ['chassis', 'travel', ...Object.keys(scene.now.family.settings), ...slotsOf(scene)],
    holds: (draft) => isObtainable(scene, draft),
  }),
];

export const isObtainable = (scene: Scene, draft: Draft): boolean => costsOf(scene, workOf(scene, draft)).length > 0;
