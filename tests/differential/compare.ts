import type { Answer } from '../../src/plan/answer.ts';
import { parseMoney } from '../../src/quantity/money.ts';
import { type Content, sameContent } from '../oracle/book.ts';
import type { OracleAnswer, OraclePlan } from '../oracle/index.ts';
import { chassisOf, contentOf } from '../oracle/scene.ts';
import type { Packs } from '../oracle/shopping.ts';

/** What of an answer is compared: all that does not depend on words. */
type Shown = Pick<Answer, 'status' | 'plans'>;
type ShownPlan = Shown['plans'][number];

/** Where an answer differs from what the oracle finds; nothing where they agree. */
export function differences(answer: Shown, found: OracleAnswer): readonly string[] {
  if (answer.status !== found.status) return [`status: ${answer.status}, the oracle says ${found.status}`];
  const theirs = new Map(answer.plans.map((plan) => [vectorText(plan), plan]));
  const ours = new Map(found.front.map((plan) => [oracleVectorText(plan), plan]));
  return [
    ...[...theirs.keys()].filter((vector) => !ours.has(vector)).map((vector) => `only in the answer: ${vector}`),
    ...[...ours.keys()].filter((vector) => !theirs.has(vector)).map((vector) => `only the oracle finds: ${vector}`),
    ...(theirs.size === answer.plans.length ? [] : ['a vector is shown twice']),
    ...unlike('order', [...theirs.keys()].join('; '), [...ours.keys()].join('; ')),
    ...[...ours].flatMap(([vector, plan]) => planDifferences(vector, theirs.get(vector), plan)),
  ];
}

const vectorText = ({ money, minutes, readyInDays, unknowns }: ShownPlan): string =>
  `total ${parseMoney(money.total, 2)}, ${minutes} min, ${readyInDays ?? '?'} days, ${money.unpriced} unpriced, ${unknowns} unknown`;

const oracleVectorText = ({ vector }: OraclePlan): string =>
  `total ${vector.total}, ${vector.minutes} min, ${Number.isFinite(vector.days) ? vector.days : '?'} days, ${vector.unpriced} unpriced, ${vector.unknowns} unknown`;

function planDifferences(vector: string, theirs: ShownPlan | undefined, ours: OraclePlan): readonly string[] {
  if (!theirs) return [];
  const { draft, work } = ours.build;
  return [
    ...(theirs.chassis === chassisOf(draft).id ? [] : [`chassis ${theirs.chassis}, the oracle ${chassisOf(draft).id}`]),
    ...Object.entries(theirs.build)
      .filter(([slot, content]) => !sameContent(content, contentOf(draft, slot)))
      .map(([slot, content]) => `${slot} ${contentText(content)}, the oracle ${contentText(contentOf(draft, slot))}`),
    ...unlike('steps', theirs.steps.map(({ id }) => id).join(' '), work.steps.join(' ')),
    ...unlike('packs', packsText(packsBought(theirs)), packsText(ours.packs)),
  ].map((difference) => `${vector}: ${difference}`);
}

const unlike = (what: string, theirs: string, ours: string): readonly string[] =>
  theirs === ours ? [] : [`${what} ${theirs}, the oracle ${ours}`];

const contentText = (content: Content): string => (content === null ? '-' : `${content.sku}*${content.quantity}`);

const packsBought = ({ lines }: ShownPlan): Packs =>
  Object.fromEntries(lines.filter(({ action }) => action === 'buy').map(({ sku, packs }) => [sku ?? '', packs ?? 0]));

const packsText = (packs: Packs): string =>
  Object.entries(packs)
    .map(([sku, count]) => `${count} ${sku}`)
    .sort()
    .join(', ');
