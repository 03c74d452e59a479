import { useState } from 'preact/hooks';
import type { AnswerDocument, QuestionInput } from '../plan/index.ts';
import type { PlanDocument } from './records.ts';
import { questionPath, useAnswer } from './service.ts';
import { words } from './words/words.ts';
import { toolText } from './work.tsx';

/** For a rider: can I do it myself, which tools must I buy, is there a way back. */
export function Self({ answer, plan }: { readonly answer: AnswerDocument; readonly plan: PlanDocument }) {
  return (
    <section class="self" aria-labelledby="self">
      <h2 id="self">{words.self.title}</h2>
      <Skill plan={plan} />
      <Tools plan={plan} />
      <Back key={JSON.stringify(plan.build)} answer={answer} plan={plan} />
    </section>
  );
}

function Skill({ plan: { steps } }: { readonly plan: PlanDocument }) {
  const { skill } = words.self;
  const hard = steps.filter((step) => step.skill === 'workshop');
  if (hard.length === 0)
    return <p>{steps.some((step) => step.skill === 'home-workshop') ? skill['home-workshop'] : skill.rider}</p>;
  return (
    <>
      <p>{skill.workshop(hard.length)}</p>
      <ul>
        {hard.map(({ id, title }) => (
          <li key={id}>{title}</li>
        ))}
      </ul>
    </>
  );
}

function Tools({ plan }: { readonly plan: PlanDocument }) {
  const { tools, money } = plan;
  const { self } = words;
  const [had, setHad] = useState<readonly string[]>([]);
  const missing = tools.filter(({ id }) => !had.includes(id));
  const sum = missing.reduce((total, { price }) => total + Number(price ?? 0), 0);
  if (tools.length === 0) return null;
  return (
    <fieldset class="tools">
      <legend>{self.tools}</legend>
      {tools.map(({ id, price }) => (
        <label key={id}>
          <input
            type="checkbox"
            checked={had.includes(id)}
            onChange={() => setHad(had.includes(id) ? had.filter((one) => one !== id) : [...had, id])}
          />{' '}
          {toolText(plan, id)},{price === null ? self.noPrice : words.money(price, money.currency)}
        </label>
      ))}
      <p role="status">{self.toBuy(words.money(sum.toFixed(2), money.currency))}</p>
    </fieldset>
  );
}

/** The way back is a question of its own, so it is asked: from the fork of the plan to what it was, with what came out at hand. */
function Back({ answer, plan }: { readonly answer: AnswerDocument; readonly plan: PlanDocument }) {
  const { self } = words;
  const [asked, setAsked] = useState(false);
  const heard = useAnswer<AnswerDocument>(asked ? questionPath('plan', backQuestion(answer, plan)) : null);
  if (plan.changes.length === 0) return <p>{self.backNothing}</p>;
  return (
    <>
      <h3>{self.back}</h3>
      {asked ? (
        <p role="status">
          {heard.kind === 'here'
            ? backWords(heard.value)
            : heard.kind === 'trouble'
              ? heard.trouble.detail
              : words.waiting}
        </p>
      ) : (
        <button type="button" onClick={() => setAsked(true)}>
          {self.askBack}
        </button>
      )}
    </>
  );
}

function backWords({ plans: [back] }: AnswerDocument): string {
  const { self } = words;
  if (!back) return self.backNo;
  const sum = words.money(back.money.total, back.money.currency);
  return self.backYes(sum, words.minutes(back.minutes), words.days(back.readyInDays));
}

function backQuestion({ now, question }: AnswerDocument, plan: PlanDocument): QuestionInput {
  const before = plan.changes.flatMap(({ slot, from }) => (from === null ? [] : [{ slot, ...from }]));
  const cameOut = plan.lines.flatMap(({ action, sku, quantity, unit }) =>
    action === 'remove' && sku !== null && unit === 'piece' ? [{ sku, quantity, used: true }] : [],
  );
  const counted = before.find(({ slot }) => slot === 'volume-spacers');
  return {
    chassis: plan.chassis,
    travelNow: plan.effects.travel.to,
    with: plan.build,
    settings: plan.settings,
    wants: {
      travel: now.travel,
      use: before.map(({ sku }) => sku),
      ...(plan.changes.some(({ slot }) => slot === 'volume-spacers') ? { spacers: counted?.quantity ?? 0 } : {}),
    },
    have: cameOut,
    supplies: question.supplies,
  };
}
