import type { QuestionInput } from '../plan/index.ts';
import type { Trouble } from './service.ts';
import { words } from './words/words.ts';

interface Props {
  readonly trouble: Trouble;
  readonly question: QuestionInput;
  readonly onAsk: (next: QuestionInput) => void;
}

/** What is wrong with a question, as the service words it; or that the service cannot be reached. */
export function TroubleView({ trouble, question, onAsk }: Props) {
  const { trouble: say } = words;
  return (
    <section class="verdict open" aria-labelledby="verdict">
      <h1 id="verdict">{trouble.status === 0 ? say.unreachable : say.title}</h1>
      {trouble.status === 0 ? (
        <button type="button" onClick={() => onAsk({ ...question })}>
          {say.again}
        </button>
      ) : (
        <ul>
          {(trouble.errors.length === 0 ? [trouble] : trouble.errors).map(({ detail }) => (
            <li key={detail}>{detail}</li>
          ))}
        </ul>
      )}
    </section>
  );
}
