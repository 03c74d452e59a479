import type { Answer, World } from '../plan/index.ts';
import { pageWidth } from '../report/layout.ts';
import { answerText } from '../report/text.ts';
import { en } from '../report/words/en.ts';
import { basisOf } from './basis-of.ts';
import type { Io } from './io.ts';
import type { Sources } from './load-world.ts';
import { PLAN_OPTIONS } from './plan-options.ts';
import { commandOf } from './question-args.ts';

/** The answer for people, as wide as the terminal. */
export const printText = (answer: Answer, world: World, sources: Sources, io: Io, also: readonly string[]): string =>
  answerText({
    page: { width: pageWidth(io.columns), paint: io.paintOut },
    language: en,
    catalog: world.catalog,
    answer,
    basis: basisOf(world, sources),
    command: (question) => commandOf(question, PLAN_OPTIONS, also),
  });
