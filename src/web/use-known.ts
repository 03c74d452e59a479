import type { ChoicesDocument, QuestionInput } from '../plan/index.ts';
import type { BikeRecord, Known } from './records.ts';
import { type Trouble, useAnswer } from './service.ts';

/** What is known beside a question, whether it is still looked up, and why it cannot be. */
export interface Knowledge {
  readonly known: Known;
  readonly loading: boolean;
  readonly trouble: Trouble | null;
}

/** Looks up what a question can be asked with, and the names in it. */
export function useKnown(question: QuestionInput): Knowledge {
  const choices = useAnswer<ChoicesDocument>(choicesPath(question));
  const bike = useAnswer<BikeRecord>(recordPath(question.bike));
  const onto = useAnswer<BikeRecord>(recordPath(question.onto));
  return {
    known: {
      choices: choices.kind === 'here' && !choices.late ? choices.value : null,
      bike: bike.kind === 'here' ? bike.value : null,
      onto: onto.kind === 'here' ? onto.value : null,
    },
    trouble: choices.kind === 'trouble' && !choices.late ? choices.trouble : null,
    loading: choices.kind === 'waiting' || (choices.kind === 'here' && choices.late),
  };
}

function choicesPath({ chassis, bike, size, travelNow, serial, built }: QuestionInput): string | null {
  if (chassis === undefined && bike === undefined) return null;
  const parameters = new URLSearchParams();
  for (const [name, value] of Object.entries({ chassis, bike, size, travelNow, serial, built }))
    if (value !== undefined) parameters.append(name, String(value));
  return `/v1/choices?${parameters}`;
}

const recordPath = (id: string | undefined): string | null =>
  id === undefined ? null : `/v1/catalog/bikes/${encodeURIComponent(id)}`;
