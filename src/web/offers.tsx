import type { AnswerDocument, QuestionInput } from '../plan/index.ts';
import { words } from './words/words.ts';

interface Props {
  readonly answer: AnswerDocument;
  readonly currency: string;
  readonly question: QuestionInput;
  readonly onAsk: (next: QuestionInput) => void;
}

/** Services that go well with the job, and what each would add. */
export function Offers({ answer: { offers, plans }, currency, question, onAsk }: Props) {
  if (offers.length === 0) return null;
  const { offers: say, verdict } = words;
  const wants = question.wants ?? {};
  // beside a plan what it adds, by itself what it comes to
  const costs = plans.length === 0 ? say.comesTo : say.adds;
  return (
    <section aria-labelledby="offers">
      <h2 id="offers">{say.title}</h2>
      <ul class="instead">
        {offers.map(({ service, name, money, minutes, days, atLeast }) => {
          const sum = words.money(money, currency);
          return (
            <li key={service}>
              <button
                type="button"
                onClick={() =>
                  onAsk({ ...question, wants: { ...wants, service: [...(wants.service ?? []), service] } })
                }
              >
                {say.add(name)}
              </button>
              <span>{costs(atLeast ? verdict.atLeast(sum) : sum, minutes, words.days(days))}</span>
            </li>
          );
        })}
      </ul>
    </section>
  );
}
