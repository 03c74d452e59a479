import type { AnswerDocument, QuestionInput } from '../plan/index.ts';
import { Bill } from './bill.tsx';
import { Cases } from './cases.tsx';
import { EffectsTable } from './effects.tsx';
import { Flags } from './flags.tsx';
import { Offers } from './offers.tsx';
import { contentText } from './parts.ts';
import { Pictures } from './pictures.tsx';
import type { Known } from './records.ts';
import { Refusal } from './refusal.tsx';
import { Self } from './self.tsx';
import { Verdict } from './verdict.tsx';
import { Ways } from './ways.tsx';
import { words } from './words/words.ts';
import { Work } from './work.tsx';

interface Props {
  readonly answer: AnswerDocument;
  readonly question: QuestionInput;
  /** The question as it was put to the service. */
  readonly asked: QuestionInput;
  readonly known: Known;
  /** Currency of the catalogue. */
  readonly currency: string;
  readonly way: number;
  readonly addressOfWay: (way: number) => string;
  readonly onAsk: (next: QuestionInput) => void;
}

/** The answer: the verdict, then the way that is shown, or why there is none. */
export function AnswerView({ answer, question, asked, known, currency, way, addressOfWay, onAsk }: Props) {
  const plan = answer.plans[way] ?? answer.plans[0];
  const shown = answer.plans[way] ? way : 0;
  return (
    <>
      <Verdict answer={answer} plan={plan} />
      <Refusal answer={answer} question={question} known={known} currency={currency} onAsk={onAsk} />
      <Cases cases={answer.cases} currency={currency} />
      {plan ? (
        <div class="plan">
          <div class="main">
            <Changes changes={plan.changes} />
            <Bill plan={plan} onWhy={question.why === true ? null : () => onAsk({ ...question, why: true })} />
            <Work plan={plan} />
            <Pictures key={JSON.stringify([asked, shown])} question={asked} way={shown} />
          </div>
          <div class="beside">
            <Ways plans={answer.plans} shown={shown} addressOfWay={addressOfWay} />
            <Flags flags={[...answer.flags, ...plan.flags]} question={question} onAsk={onAsk} />
            <Offers answer={answer} currency={currency} question={question} onAsk={onAsk} />
            <EffectsTable effects={plan.effects} />
            <Self answer={answer} plan={plan} />
            <Always />
          </div>
        </div>
      ) : (
        <>
          <Offers answer={answer} currency={currency} question={question} onAsk={onAsk} />
          <Flags flags={answer.flags} question={question} onAsk={onAsk} />
        </>
      )}
    </>
  );
}

function Always() {
  return (
    <section aria-labelledby="always">
      <h2 id="always">{words.cautionsTitle}</h2>
      <ul>
        {words.cautions.map((caution) => (
          <li key={caution}>{caution}</li>
        ))}
      </ul>
    </section>
  );
}

type Changed = AnswerDocument['plans'][number]['changes'];
function Changes({ changes }: { readonly changes: Changed }) {
  const { changes: say } = words;
  if (changes.length === 0) return null;
  return (
    <section aria-labelledby="changes">
      <h2 id="changes">{say.title}</h2>
      <table class="figures">
        <thead>
          <tr>
            <th scope="col">{say.slot}</th>
            <th scope="col">{say.from}</th>
            <th scope="col">{say.to}</th>
          </tr>
        </thead>
        <tbody>
          {changes.map(({ slot, from, to }) => (
            <tr key={slot}>
              <th scope="row">{words.role(slot)}</th>
              <td>{from === null ? say.none : contentText(from)}</td>
              <td>{to === null ? say.none : contentText(to)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}
