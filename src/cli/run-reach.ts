import { badQuestion, questionSchema, reach, readAsked } from '../plan/index.ts';
import { reachDocument } from '../report/fit-documents.ts';
import { reachText } from '../report/fit-texts.ts';
import { asJson } from '../report/json.ts';
import { pageWidth } from '../report/layout.ts';
import { en } from '../report/words/en.ts';
import { REACH_OPTIONS } from './fit-options.ts';
import { EXIT, type ExitCode, type Io } from './io.ts';
import { listedFault } from './listed-fault.ts';
import { openWorld } from './open-world.ts';
import { questionOf } from './question-of.ts';
import type { Given } from './read-options.ts';
import { sayFaults } from './say-faults.ts';

/** `legwork reach`: every travel and wheel that the fork in front of you can become. */
export async function runReach(given: Given, io: Io): Promise<ExitCode> {
  const asked = await questionOf(given, REACH_OPTIONS);
  const opened = await openWorld(
    given,
    io,
    'reach',
    [],
    asked.faults.map((fault) => ({ list: 'usage', ...fault })),
  );
  if (!opened) return EXIT.fault;
  const read = readAsked(questionSchema, asked.question(opened.world.catalog));
  const answer = read.ok ? reach(opened.world, read.value) : { faults: badQuestion(read.wrong) };
  if ('faults' in answer)
    return sayFaults(
      io,
      answer.faults.map((fault) => listedFault(fault, REACH_OPTIONS)),
    );
  const document = reachDocument(answer, en);
  io.out(
    opened.format === 'json'
      ? asJson(document)
      : reachText({ width: pageWidth(io.columns), paint: io.paintOut }, document),
  );
  return document.rows.some(({ cells }) => cells.some(({ plan }) => plan !== null)) ? EXIT.yes : EXIT.no;
}
