import type { Flag, QuestionInput } from '../plan/index.ts';
import { SourceNote } from './source.tsx';
import { words } from './words/words.ts';

type Worded = Flag & { readonly message: string };
interface Props {
  readonly flags: readonly Worded[];
  readonly question: QuestionInput;
  readonly onAsk: (next: QuestionInput) => void;
}

/** What to look up, to measure, or to know before the work begins; the gravest first. */
export function Flags({ flags, question, onAsk }: Props) {
  if (flags.length === 0) return null;
  const order = ['blocks', 'verify', 'advice'];
  const sorted = [...flags].sort((a, b) => order.indexOf(a.severity) - order.indexOf(b.severity));
  return (
    <section aria-labelledby="flags">
      <h2 id="flags">{words.flags.title}</h2>
      <ul class="flags">
        {sorted.map((flag) => (
          <li key={flag.code + flag.message} class={flag.severity}>
            <strong>{words.flags.severity[flag.severity]}</strong>{' '}
            <span>
              {flag.message} <SourceNote source={flag.source} />
              {assumedOtherwise(flag).map(({ slot, content }) => (
                <button
                  type="button"
                  key={content.sku}
                  onClick={() => onAsk({ ...question, with: { ...question.with, [slot]: content } })}
                >
                  {words.flags.itHolds(content.sku)}
                </button>
              ))}
            </span>
          </li>
        ))}
      </ul>
    </section>
  );
}

/** What else a slot may hold, where the answer had to assume: "damper=QN-DMP-185*1". */
function assumedOtherwise({ code, params }: Worded) {
  const others = code === 'now-assumed' ? params.others : null;
  return (Array.isArray(others) ? others : []).flatMap((other) => {
    const [, slot, sku, quantity] = /^([^=]+)=(.+?)(?:\*([0-9]+))?$/.exec(other) ?? [];
    return slot === undefined || sku === undefined ? [] : [{ slot, content: { sku, quantity: Number(quantity ?? 1) } }];
  });
}
