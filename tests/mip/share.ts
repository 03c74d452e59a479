import { ask } from '../../src/plan/index.ts';
import { bookOf } from '../differential/book-of.ts';
import { differences } from '../differential/compare.ts';
import { smallCatalogue } from '../generator/catalogue.ts';
import { loaded } from '../generator/load.ts';
import { questionsFor } from '../generator/questions.ts';
import { checkProof, oracle } from '../oracle/index.ts';
import { audited } from '../support/ask.ts';
import { heldAgainst } from './against.ts';
import { modelOf } from './model.ts';
import type { Solver } from './solver.ts';

/** What came of putting the same questions to the engine, a solver, the oracle and the auditor. */
export interface Share {
  readonly questions: number;
  readonly noVerdict: number;
  readonly refusals: number;
  readonly differences: readonly string[];
}

const EACH = 10;

/** What a long run hears on its way: whether to stop before the next catalogue, and what came of all so far. */
export interface Watch {
  readonly isOver: () => boolean;
  readonly hear: (share: Share) => void;
}

const UNWATCHED: Watch = { isOver: () => false, hear: () => {} };

/** Ten questions about the small catalogue of each seed; stops early where the watch says so. */
export function shareOf(seeds: readonly number[], solver: Solver, watch: Watch = UNWATCHED): Share {
  let [questions, noVerdict, refusals] = [0, 0, 0];
  const found: string[] = [];
  for (const seed of seeds) {
    if (watch.isOver()) break;
    const generated = smallCatalogue(seed);
    const shelf = loaded(generated);
    const book = bookOf(shelf);
    for (const question of questionsFor(generated, EACH)) {
      questions++;
      const asked = `seed ${seed}: ${JSON.stringify(question)}`;
      const reply = ask(shelf.world, question);
      if (reply.kind === 'faults') {
        found.push(`${asked}: ${JSON.stringify(reply.faults)}`);
        continue;
      }
      const { answer } = reply;
      const held = heldAgainst(answer, modelOf(generated, question), solver);
      noVerdict += held.noVerdict;
      refusals += answer.refusal === null ? 0 : 1;
      const against = [
        ...held.differences,
        ...differences(answer, oracle(book, question)),
        ...(answer.refusal === null ? [] : checkProof(book, answer, 'what is listed')),
        ...audited(shelf, answer).findings.map((finding) => JSON.stringify(finding)),
      ];
      found.push(...against.map((one) => `${asked}: ${one}`));
    }
    watch.hear({ questions, noVerdict, refusals, differences: found });
  }
  return { questions, noVerdict, refusals, differences: found };
}

export const upFrom = (seed: number, count: number): readonly number[] =>
  Array.from({ length: count }, (_, at) => seed + at);

export const told = (what: string, { questions, noVerdict, refusals, differences: found }: Share): string =>
  `${what}: ${questions} questions, ${refusals} refused, ${found.length} differences, ${noVerdict} times no verdict`;
