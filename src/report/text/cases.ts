import { section, table, wrapped } from '../layout.ts';
import type { Scene } from '../scene.ts';
import { say } from '../words/say.ts';

/** What the fork may hold: the answer in each case, what tells the cases apart, and what to have in hand for all. */
export function caseLines({ answer, page, language, catalog }: Scene): string[] {
  const { cases } = answer;
  if (cases === null) return [];
  const { phrases } = language;
  const rows = cases.rows.map(({ contents, travelNow, status, plan }, at) => [
    `${at + 1}.`,
    Object.entries(contents)
      .map(([slot, content]) => `${phrases.role(slot)} ${content ? `${content.quantity} x ${content.sku}` : 'none'}`)
      .join(', '),
    `${travelNow} mm now`,
    plan
      ? `${plan.money} ${catalog.currency}, ${phrases.minutes(plan.minutes)}, ${phrases.ready(plan.days)}`
      : say(language, 'statuses', { code: status, params: { plans: 0, steps: answer.question.stepLimit } }),
  ]);
  const covers = cases.covers.map(({ sku, packs }) => (packs === 1 ? sku : `${packs} x ${sku}`));
  return section(page, phrases.heading.cases, [
    ...table(page, [{ align: 'right' }, { align: 'left', gives: true }, { align: 'left' }, { align: 'left' }], rows),
    ...(cases.sameInAll ? wrapped(page, 'The answer is the same in every case.', '  ') : []),
    ...cases.decides.flatMap((look) => wrapped(page, phrases.decides(look), '  what decides: ', '    ')),
    ...(covers.length === 0 ? [] : wrapped(page, covers.join(', '), '  covers every case: ', '    ')),
  ]);
}
