import { describe, expect, it } from 'vitest';
import { ask, type QuestionInput } from '../../src/plan/index.ts';
import { everyBikeQuestion, everyQuestion } from '../differential/questions.ts';
import { loadDemo, tell } from '../differential/share.ts';
import { checkProof } from '../oracle/index.ts';

const demo = loadDemo();

/** What is found in the refusals of all these questions. */
async function findings(what: string, questions: readonly QuestionInput[]): Promise<readonly string[]> {
  const { loaded, book } = await demo;
  let count = 0;
  const found = questions.flatMap((question) => {
    const reply = ask(loaded.world, question);
    if (reply.kind === 'faults' || reply.answer.refusal === null) return [];
    count++;
    return checkProof(book, reply.answer, 'what is listed').map((one) => `${JSON.stringify(question)}: ${one}`);
  });
  tell(`refusals ${what}`, count);
  return found;
}

describe('reasons of every refusal, the whole demo catalogue', () => {
  it('forks: every refusal stands', async () => {
    expect(await findings('of forks', everyQuestion((await demo).book))).toEqual([]);
  });

  it('forks on bikes: every refusal stands', async () => {
    expect(await findings('of forks on bikes', everyBikeQuestion((await demo).book))).toEqual([]);
  });
});
