import { asText, section, wrapped } from './layout.ts';
import type { Scene } from './scene.ts';
import { basisLines } from './text/basis.ts';
import { buyingSections } from './text/buying.ts';
import { caseLines } from './text/cases.ts';
import { flagLines } from './text/flags.ts';
import { forkSections } from './text/fork.ts';
import { otherWays } from './text/other-ways.ts';
import { refusalSections } from './text/refusal.ts';
import { verdictLines } from './text/verdict.ts';
import { whyLines } from './text/why.ts';
import { workSections } from './text/work.ts';

/**
 * An answer for people. The first screen has the verdict, the total, the time, what to buy and what to look at first;
 * then the rest of the recommended plan, in the order in which a workshop needs it.
 */
export function answerText(scene: Scene): string {
  const { answer, page, language } = scene;
  const { heading, cautions, standsAbove } = language.phrases;
  const plan = answer.plans[0];
  const body = plan
    ? [
        ...buyingSections.toBuy(scene, plan),
        ...flagLines(scene, [...answer.flags, ...plan.flags]),
        ...caseLines(scene),
        ...otherWays(scene),
        ...whyLines(scene, plan),
        ...forkSections(scene, plan),
        ...buyingSections.rest(scene, plan),
        ...workSections(scene, plan),
        ...section(
          page,
          heading.cautions,
          cautions.flatMap((caution) => wrapped(page, caution, '  - ')),
        ),
        ...wrapped(page, page.paint('strong', standsAbove), '  '),
      ]
    : [...refusalSections(scene), ...flagLines(scene, answer.flags), ...caseLines(scene)];
  return asText([...verdictLines(scene), ...body, ...basisLines(scene)]);
}
