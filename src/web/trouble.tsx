import type { QuestionInput } from '../plan/index.ts';
import { choicesOf } from './choices-of.ts';
import type { Listing, NamedRecord } from './records.ts';
import { type Trouble, useAnswer } from './service.ts';
import { words } from './words/words.ts';

interface Props {
  readonly trouble: Trouble;
  readonly question: QuestionInput;
  readonly onAsk: (next: QuestionInput) => void;
}

/** What is wrong with a question, as the service words it, each way to say it better a button; or that the service cannot be reached. */
export function TroubleView({ trouble, question, onAsk }: Props) {
  const { trouble: say } = words;
  const forks = useAnswer<Listing<NamedRecord>>(trouble.errors.length === 0 ? null : '/v1/catalog/chassis');
  const nameOf = (chassis: string): string =>
    (forks.kind === 'here' ? forks.value.records.find(({ id }) => id === chassis)?.name : undefined) ?? chassis;
  return (
    <section class="verdict open" aria-labelledby="verdict">
      <h1 id="verdict">{trouble.status === 0 ? say.unreachable : say.title}</h1>
      {trouble.status === 0 ? (
        <button type="button" onClick={() => onAsk({ ...question })}>
          {say.again}
        </button>
      ) : (
        <ul>
          {trouble.errors.length === 0 ? <li>{trouble.detail}</li> : null}
          {trouble.errors.map((error) => (
            <li key={error.code + error.detail}>
              {error.detail}
              <span class="choices">
                {choicesOf(error, question, nameOf).map(({ text, next }) => (
                  <button type="button" key={text} onClick={() => onAsk(next)}>
                    {text}
                  </button>
                ))}
              </span>
            </li>
          ))}
        </ul>
      )}
    </section>
  );
}
