import type { Answer, World } from '../plan/index.ts';
import { worksheet } from '../report/markdown.ts';
import { noPaint } from '../report/paint.ts';
import { en } from '../report/words/en.ts';
import { basisOf } from './basis-of.ts';
import type { Sources } from './load-world.ts';
import { PLAN_OPTIONS } from './plan-options.ts';
import { commandOf } from './question-args.ts';

/** The answer as a worksheet. */
export const printMarkdown = (answer: Answer, world: World, sources: Sources, also: readonly string[]): string =>
  worksheet({
    page: { width: 80, paint: noPaint },
    language: en,
    catalog: world.catalog,
    answer,
    basis: basisOf(world, sources),
    command: (question) => commandOf(question, PLAN_OPTIONS, also),
  });
