import type { AnswerDocument } from '../plan/index.ts';
import type { PlanDocument } from './records.ts';
import { words } from './words/words.ts';

/** The verdict first: in words, never by colour alone. */
export function Verdict({
  answer,
  plan,
}: {
  readonly answer: AnswerDocument;
  readonly plan: PlanDocument | undefined;
}) {
  const { verdict } = words;
  return (
    <section class={`verdict ${plan ? 'yes' : toneOf(answer)}`} aria-labelledby="verdict">
      <h1 id="verdict">{plan ? verdict.yes(answer.plans.length) : noWords(answer)}</h1>
      {plan ? (
        <p class="sums">
          <strong>{totalWords(plan)}</strong>, {verdict.bench(plan.minutes)}, {words.days(plan.readyInDays)}
          {plan.label.length === 0 ? '' : ` (${plan.label.map((label) => verdict.labels[label]).join(', ')})`}
        </p>
      ) : null}
      {plan && plan.money.unpriced > 0 ? <p>{verdict.unpriced(plan.money.unpriced)}</p> : null}
      {plan && !answer.complete ? <p>{verdict.incomplete}</p> : null}
    </section>
  );
}

/** A total with its tax, and whether it is the least that it can be. */
export function totalWords({ money }: PlanDocument): string {
  const { verdict } = words;
  const sum = words.money(money.total, money.currency);
  const total = money.atLeast ? verdict.atLeast(sum) : sum;
  if (money.tax === null) return total;
  return `${total} ${verdict.tax(money.tax.rate, money.tax.included, words.money(money.tax.amount, money.currency))}`;
}

/** Whether nothing but a maker's notice stands in the way. */
export const stoppedByNotice = ({ refusal }: AnswerDocument): boolean =>
  refusal?.conflicts.every((conflict) => conflict.every(({ kind }) => kind === 'notice')) ?? false;

function noWords(answer: AnswerDocument): string {
  const { verdict } = words;
  if (answer.status === 'answered') return verdict['nothing-to-do'];
  if (answer.status === 'nothing-to-do' && answer.question.onto !== undefined) return verdict.suits;
  return answer.status === 'impossible' && stoppedByNotice(answer) ? verdict.notice : verdict[answer.status];
}

function toneOf({ status }: AnswerDocument): 'yes' | 'no' | 'open' {
  switch (status) {
    case 'answered':
    case 'nothing-to-do':
      return 'yes';
    case 'impossible':
      return 'no';
    case 'not-known':
    case 'not-obtainable':
    case 'stopped':
      return 'open';
  }
}
