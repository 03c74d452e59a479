import { ask, type QuestionInput } from '../../src/plan/index.ts';
import type { Generated } from '../generator/catalogue.ts';
import { loaded } from '../generator/load.ts';
import { checkProof, oracle } from '../oracle/index.ts';
import { audited } from '../support/ask.ts';
import { bookOf } from './book-of.ts';
import { differences } from './compare.ts';

/** What oracle and auditor have against the answers to questions about a generated catalogue; nothing where all agree. */
export function disputed(generated: Generated, questions: readonly QuestionInput[]): readonly string[] {
  const shelf = loaded(generated);
  const book = bookOf(shelf);
  return questions.flatMap((question) => {
    const reply = ask(shelf.world, question);
    const asked = `seed ${generated.seed}: ${JSON.stringify(question)}`;
    if (reply.kind === 'faults') return [`${asked}: ${JSON.stringify(reply.faults)}`];
    const { answer } = reply;
    return [
      ...differences(answer, oracle(book, question)),
      ...(answer.refusal === null ? [] : checkProof(book, answer, 'what is listed')),
      ...audited(shelf, answer).findings.map((finding) => JSON.stringify(finding)),
    ].map((difference) => `${asked}: ${difference}`);
  });
}
