import { useRef } from 'preact/hooks';
import type { ChoicesDocument, QuestionInput } from '../plan/index.ts';
import type { BikeRecord, ForkRecord, Known } from './records.ts';
import { type Heard, type Trouble, useAnswer } from './service.ts';

/** What is known beside a question, whether it is still looked up, and why it cannot be. */
export interface Knowledge {
  readonly known: Known;
  readonly loading: boolean;
  /** True once all names in the sentence are known, or cannot be. */
  readonly named: boolean;
  readonly trouble: Trouble | null;
}

/** Looks up what a question can be asked with, and the names in it. */
export function useKnown(question: QuestionInput): Knowledge {
  const paths = [
    choicesPath(question),
    recordPath('bikes', question.bike),
    recordPath('bikes', question.onto),
    recordPath('chassis', question.chassis),
  ] as const;
  const choices = useAnswer<ChoicesDocument>(paths[0]);
  const bike = useAnswer<BikeRecord>(paths[1]);
  const onto = useAnswer<BikeRecord>(paths[2]);
  const fork = useAnswer<ForkRecord>(paths[3]);
  const current = choices.kind === 'here' && isHeard(choices, paths[0]) ? choices.value : null;
  return {
    known: {
      fork: fork.kind === 'here' && fork.value.id === question.chassis ? fork.value : null,
      choices: current,
      named: useLastHeard(question, current),
      bike: bike.kind === 'here' && bike.value.id === question.bike ? bike.value : null,
      onto: onto.kind === 'here' && onto.value.id === question.onto ? onto.value : null,
    },
    trouble: choices.kind === 'trouble' && !choices.late ? choices.trouble : null,
    loading: paths[0] !== null && !isHeard(choices, paths[0]),
    named: [choices, bike, onto, fork].every((heard, at) => isHeard(heard, paths[at] ?? null)),
  };
}

/** Whether what is heard is about that path, or there is nothing to hear. */
const isHeard = (heard: Heard<unknown>, path: string | null): boolean =>
  path === null || ((heard.kind === 'here' || heard.kind === 'trouble') && !heard.late);

/** What was last heard of this fork, be it at another travel: its names hold while the rest is looked up anew. */
function useLastHeard({ chassis, bike }: QuestionInput, current: ChoicesDocument | null): ChoicesDocument | null {
  const last = useRef<{ readonly fork: string; readonly heard: ChoicesDocument } | null>(null);
  const fork = JSON.stringify([chassis, bike]);
  if (current !== null && (chassis === undefined || current.chassis === chassis))
    last.current = { fork, heard: current };
  return last.current?.fork === fork ? last.current.heard : null;
}

function choicesPath({ chassis, bike, size, travelNow, serial, built }: QuestionInput): string | null {
  if (chassis === undefined && bike === undefined) return null;
  const parameters = new URLSearchParams();
  for (const [name, value] of Object.entries({ chassis, bike, size, travelNow, serial, built }))
    if (value !== undefined) parameters.append(name, String(value));
  return `/v1/choices?${parameters}`;
}

const recordPath = (kind: 'bikes' | 'chassis', id: string | undefined): string | null =>
  id === undefined ? null : `/v1/catalog/${kind}/${encodeURIComponent(id)}`;
