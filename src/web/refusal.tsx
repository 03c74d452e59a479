import type { AnswerDocument, QuestionInput } from '../plan/index.ts';
import { partsOf } from './parts.ts';
import type { Known } from './records.ts';
import { SourceNote } from './source.tsx';
import { stoppedByNotice } from './verdict.tsx';
import { words } from './words/words.ts';

type Refused = NonNullable<AnswerDocument['refusal']>;
interface Props {
  readonly answer: AnswerDocument;
  readonly question: QuestionInput;
  readonly known: Known;
  readonly currency: string;
  readonly onAsk: (next: QuestionInput) => void;
}

/** Why not, as sentences that say who speaks; then what can be had instead, each to be asked. */
export function Refusal({ answer, question, known, currency, onAsk }: Props) {
  const { refusal: say } = words;
  const { refusal } = answer;
  if (refusal === null) return null;
  return (
    <>
      {refusal.conflicts.map((conflict, at) => (
        <section key={conflict.map(({ message }) => message).join()} aria-labelledby={`conflict-${at}`}>
          <h2 id={`conflict-${at}`}>
            {stoppedByNotice(answer) ? say.speaker.notice : say.conflict(at + 1, refusal.conflicts.length)}
          </h2>
          <dl class="conflict">
            {conflict.map(({ kind, message, source }) => (
              <div key={message}>
                <dt>{say.speaker[kind]}</dt>
                <dd>
                  {message} <SourceNote source={source} />
                </dd>
              </div>
            ))}
          </dl>
          {conflict.length < 2 ? null : (
            <p class="quiet">
              {say.irreducible} {refusal.smallest ? say.smallest : ''}
            </p>
          )}
        </section>
      ))}
      {stoppedByNotice(answer) ? null : (
        <section aria-labelledby="instead">
          <h2 id="instead">{say.ways}</h2>
          <ol class="instead">
            {refusal.instead.map((way) => (
              <li key={JSON.stringify(way.wants)}>
                <button type="button" onClick={() => onAsk(asked(question, way))}>
                  {newWords(question, way, known)}
                </button>
                <span>
                  {words.money(way.money, currency)}, {words.minutes(way.minutes)}, {words.days(way.days)}
                </span>
                <small>{say.gives(way.drop.map(dropped))}</small>
              </li>
            ))}
          </ol>
          <p class="quiet">{closing(answer, refusal)}</p>
        </section>
      )}
    </>
  );
}

type WayOut = Refused['instead'][number];

function asked(question: QuestionInput, { wants, drop }: WayOut): QuestionInput {
  const { onto, ontoSize, ...rest } = question;
  const without = drop.some(({ code }) => code === 'want-onto');
  return { ...(without ? rest : question), wants };
}

/** What the way out says that the question did not. */
function newWords(question: QuestionInput, way: WayOut, known: Known): string {
  const before = new Set(partsOf(question, known).map(({ text }) => text));
  const fresh = partsOf(asked(question, way), known).flatMap(({ text }) => (before.has(text) ? [] : [text]));
  return fresh.length === 0 ? words.refusal.without : fresh.join(', ');
}

function dropped({ code, params, message }: WayOut['drop'][number]): string {
  const { trait, value, becomes } = params;
  if (code !== 'kept-trait') return message;
  return words.refusal.kept(String(trait), String(value), typeof becomes === 'string' ? becomes : null);
}

function closing({ status }: AnswerDocument, { instead, complete }: Refused): string {
  const { refusal: say } = words;
  if (instead.length === 0) return status === 'not-obtainable' ? say.noneToBuy : say.none;
  return complete ? say.complete : say.more;
}
