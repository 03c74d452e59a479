import { setUp, setUpPicture } from '../plan/index.ts';
import { asJson } from '../report/json.ts';
import { pageWidth } from '../report/layout.ts';
import { setUpDocument, setUpText } from '../report/set-up.ts';
import { en } from '../report/words/en.ts';
import { EXIT, type ExitCode, type Io } from './io.ts';
import { listedFault } from './listed-fault.ts';
import { openWorld } from './open-world.ts';
import { questionOf } from './question-of.ts';
import type { Given } from './read-options.ts';
import { sayFaults } from './say-faults.ts';
import { SETUP_OPTIONS } from './setup-options.ts';

/** `legwork setup`: a starting pressure or coil for a rider. */
export async function runSetup(given: Given, io: Io): Promise<ExitCode> {
  const asked = await questionOf(given, SETUP_OPTIONS);
  const opened = await openWorld(
    given,
    io,
    'setup',
    ['rider-mass'],
    asked.faults.map((fault) => ({ list: 'usage', ...fault })),
  );
  if (!opened) return EXIT.fault;
  const { wants: _, ...question } = asked.question(opened.world.catalog);
  const { maybe: __, ...about } = question;
  const reply = setUp(opened.world, about);
  if (reply.kind === 'faults')
    return sayFaults(
      io,
      reply.faults.map((fault) => listedFault(fault, SETUP_OPTIONS)),
    );
  const { answer } = reply;
  const picture = given.values.get('picture')?.[0];
  if (picture !== undefined) {
    const { drawInto } = await import('./draw.ts');
    const fault = drawInto(picture, setUpPicture(opened.world, answer), io);
    if (fault) return sayFaults(io, [fault]);
  }
  const page = { width: pageWidth(io.columns), paint: io.paintOut };
  io.out(
    opened.format === 'json'
      ? asJson(setUpDocument(answer, en))
      : setUpText({ page, language: en, catalog: opened.world.catalog }, answer),
  );
  switch (answer.status) {
    case 'answered':
      return EXIT.yes;
    case 'beyond':
      return EXIT.no;
    case 'not-known':
      return EXIT.undecided;
  }
}
