import { useEffect, useRef, useState } from 'preact/hooks';
import type { QuestionInput } from '../plan/index.ts';
import { Field } from './field.tsx';
import { wishes } from './link.ts';
import { type Part, partsOf } from './parts.ts';
import type { Known } from './records.ts';
import { words } from './words/words.ts';

interface Props {
  readonly question: QuestionInput;
  readonly known: Known;
  /** True while what exists is still looked up. */
  readonly loading: boolean;
  /** True once the page shows: what is hidden cannot take the focus. */
  readonly opened: boolean;
  readonly onAsk: (next: QuestionInput) => void;
}

/** The question as one sentence: each part can be said otherwise, and the field at its end says the next. */
export function Sentence({ question, known, loading, opened, onAsk }: Props) {
  const [said, setSaid] = useState<string | null>(null);
  const end = useRef<HTMLInputElement | null>(null);
  const parts = partsOf(question, known);
  const field = useRef(false);
  useEffect(() => {
    // after a part was taken, the next is said at the end
    if (field.current) end.current?.focus();
    field.current = false;
  }, [question]);
  useEffect(() => {
    // nothing is said yet: whoever opens the page can type at once
    if (opened && question.chassis === undefined && question.bike === undefined) end.current?.focus();
  }, [opened]);
  const take = (next: QuestionInput): void => {
    field.current = true;
    setSaid(null);
    onAsk(next);
  };
  const last = parts.at(-1);
  return (
    <section class="sentence" aria-label={words.sentence.name}>
      <p class="said">
        <span class="lead">{words.sentence.lead}</span>{' '}
        {parts.map((part) =>
          part.key === said ? (
            <Field
              key={part.key}
              question={part.without}
              known={known}
              loading={loading}
              only={part.kind}
              label={words.sentence.instead(part.text)}
              placeholder={part.text}
              onTake={take}
              onLeave={() => setSaid(null)}
              onBack={() => take(part.without)}
              out={() => take(part.without)}
            />
          ) : (
            <PartButton key={part.key} part={part} onPress={() => setSaid(part.key)} />
          ),
        )}{' '}
        <Field
          key="end"
          field={end}
          question={question}
          known={known}
          loading={loading}
          only={null}
          label={words.sentence.field}
          placeholder={placeholderOf(question)}
          onTake={take}
          onLeave={() => undefined}
          onBack={() => last && take(last.without)}
        />
      </p>
      <p class="hint" id="sentence-hint">
        {words.sentence.hint}
      </p>
      {parts.length === 0 ? null : (
        <details class="hint">
          <summary>{words.sentence.more}</summary>
          {words.sentence.also}
        </details>
      )}
    </section>
  );
}

function PartButton({ part, onPress }: { readonly part: Part; readonly onPress: () => void }) {
  return (
    <>
      <button type="button" class="part" title={words.sentence.change(part.text)} onClick={onPress}>
        {part.text}
      </button>{' '}
    </>
  );
}

function placeholderOf(question: QuestionInput): string {
  const { sentence } = words;
  const { chassis, bike, travelNow } = question;
  if (chassis === undefined && bike === undefined) return sentence.first;
  if (chassis !== undefined && travelNow === undefined) return sentence.now;
  return wishes(question) ? sentence.further : sentence.next;
}
