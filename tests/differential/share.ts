import { ask, type QuestionInput } from '../../src/plan/index.ts';
import { type Book, oracle } from '../oracle/index.ts';
import { demoFolder, type Loaded, loadCatalogFolder } from '../support/demo.ts';
import { bookOf } from './book-of.ts';
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
export function disagreements({ loaded, book }: Demo, questions: readonly QuestionInput[]): readonly string[] {
  return questions.flatMap((question) => {
    const reply = ask(loaded.world, question);
    const found = oracle(book, question);
    const asked = JSON.stringify(question);
    if (reply.kind === 'faults')
      return found.status === 'at-fault' ? [] : [`${asked}: the question is refused, the oracle says ${found.status}`];
    return differences(reply.answer, found).map((difference) => `${asked}: ${difference}`);
  });
}

/** How many were compared stands in the test's output. */
export function tell(what: string, count: number): void {
  console.log(`${what}: ${count} questions compared`);
}
