import { ask, type QuestionInput } from '../../src/plan/index.ts';
import { type Book, checkProof, oracle } from '../oracle/index.ts';
import { demoFolder, type Loaded, loadCatalogFolder } from '../support/demo.ts';
import { bookOf } from './book-of.ts';
import { byChassis } from './by-chassis.ts';
import { differences } from './compare.ts';

export interface Demo {
  readonly loaded: Loaded;
  readonly book: Book;
}

export async function loadDemo(): Promise<Demo> {
  const loaded = await loadCatalogFolder(demoFolder);
  return { loaded, book: bookOf(loaded) };
}

/** Puts each question to engine and oracle; what they differ in, with the question. */
export const disagreements = (demo: Demo, questions: readonly QuestionInput[]): readonly string[] =>
  byChassis(questions).flatMap((body) => body.flatMap((question) => putTo(demo, question, 'the answer').found));

/** What engine and oracle differ in, or what is wrong with the reasons of a refusal too. */
export function putTo(
  { loaded, book }: Demo,
  question: QuestionInput,
  what: 'the answer' | 'the answer and its reasons',
): { readonly found: readonly string[]; readonly isRefused: boolean } {
  const reply = ask(loaded.world, question);
  const plainly = oracle(book, question);
  const asked = JSON.stringify(question);
  if (reply.kind === 'faults') {
    const found =
      plainly.status === 'at-fault' ? [] : [`${asked}: the question is refused, the oracle says ${plainly.status}`];
    return { found, isRefused: false };
  }
  const isRefused = reply.answer.refusal !== null;
  const found = [
    ...differences(reply.answer, plainly),
    ...(isRefused && what !== 'the answer' ? checkProof(book, reply.answer, 'what is listed') : []),
  ];
  return { found: found.map((difference) => `${asked}: ${difference}`), isRefused };
}

/** How many were compared stands in the test's output. */
export function tell(what: string, count: number): void {
  console.log(`${what}: ${count} questions compared`);
}
