import { pictureSvg } from '../picture/index.ts';
import {
  ask,
  type ChoicesQuestion,
  choices,
  doesFit,
  type Fault,
  type FitQuestion,
  planPicture,
  type Question,
  reach,
  type SetUpQuestion,
  setUp,
  uses,
  type World,
} from '../plan/index.ts';
import { answerDocument } from '../report/document.ts';
import { fitDocument, reachDocument } from '../report/fit-documents.ts';
import { asJson } from '../report/json.ts';
import { setUpDocument } from '../report/set-up.ts';
import { en } from '../report/words/en.ts';
import type { PictureQuestion } from './questions.ts';

/** An answer as the command line prints it with `--format json`, or what is wrong with the question. */
export type Rendered =
  | { readonly kind: 'text'; readonly text: string }
  /** The question is sound, and its answer has nothing that could be drawn. */
  | { readonly kind: 'nothing' }
  | { readonly kind: 'faults'; readonly faults: readonly Fault[] };

const text = (document: unknown): Rendered => ({ kind: 'text', text: asJson(document) });
const wrong = (faults: readonly Fault[]): Rendered => ({ kind: 'faults', faults });

export function renderPlan(world: World, question: Question): Rendered {
  const reply = ask(world, question);
  return reply.kind === 'faults'
    ? wrong(reply.faults)
    : text(answerDocument(reply.answer, en, world.catalog, 'without-places'));
}

/** One way of the answer, drawn. */
export function renderPicture(world: World, { question, way }: PictureQuestion): Rendered {
  const reply = ask(world, question);
  if (reply.kind === 'faults') return wrong(reply.faults);
  const data = planPicture(world, reply.answer, way - 1);
  return data === null ? { kind: 'nothing' } : { kind: 'text', text: pictureSvg(data, en.phrases.picture) };
}

export function renderReach(world: World, question: Question): Rendered {
  const answer = reach(world, question);
  return 'faults' in answer ? wrong(answer.faults) : text(reachDocument(answer, en));
}

export function renderSetUp(world: World, question: SetUpQuestion): Rendered {
  const reply = setUp(world, question);
  return reply.kind === 'faults' ? wrong(reply.faults) : text(setUpDocument(reply.answer, en));
}

export function renderFit(world: World, question: FitQuestion): Rendered {
  const answer = doesFit(world.catalog, question);
  return 'faults' in answer ? wrong(answer.faults) : text(fitDocument(answer, en));
}

export function renderUses(world: World, part: string): Rendered {
  const answer = uses(world.catalog, part);
  return 'faults' in answer ? wrong(answer.faults) : text(answer);
}

export function renderChoices(world: World, question: ChoicesQuestion): Rendered {
  const answer = choices(world, question);
  return 'faults' in answer ? wrong(answer.faults) : text(answer);
}
