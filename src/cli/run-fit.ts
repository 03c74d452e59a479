import { doesFit, uses } from '../plan/index.ts';
import { fitDocument } from '../report/fit-documents.ts';
import { fitText, usesText } from '../report/fit-texts.ts';
import { asJson } from '../report/json.ts';
import { pageWidth } from '../report/layout.ts';
import { en } from '../report/words/en.ts';
import { EXIT, type ExitCode, type Io } from './io.ts';
import { openWorld } from './open-world.ts';
import type { Given } from './read-options.ts';
import { sayFaults } from './say-faults.ts';

/** `legwork fit`: the verdict on one part and one chassis. */
export async function runFit(given: Given, io: Io): Promise<ExitCode> {
  const opened = await openWorld(given, io, 'fit', ['part', 'chassis']);
  if (!opened) return EXIT.fault;
  const one = (name: string): string | undefined => given.values.get(name)?.[0];
  const [serial, built] = [one('serial'), one('built')];
  const answer = doesFit(opened.world.catalog, {
    part: one('part') ?? '',
    chassis: one('chassis') ?? '',
    ...(serial === undefined ? {} : { serial }),
    ...(built === undefined ? {} : { built }),
  });
  if ('faults' in answer)
    return sayFaults(
      io,
      answer.faults.map((fault) => ({ list: 'faults', ...fault })),
    );
  const document = fitDocument(answer, en);
  io.out(
    opened.format === 'json'
      ? asJson(document)
      : fitText({ width: pageWidth(io.columns), paint: io.paintOut }, document),
  );
  switch (document.verdict) {
    case 'fits':
    case 'fits-if':
      return EXIT.yes;
    case 'no':
      return EXIT.no;
    case 'unknown':
      return EXIT.undecided;
  }
}

/** `legwork uses`: where a part goes. */
export async function runUses(given: Given, io: Io): Promise<ExitCode> {
  const opened = await openWorld(given, io, 'uses', ['part']);
  if (!opened) return EXIT.fault;
  const answer = uses(opened.world.catalog, given.values.get('part')?.[0] ?? '');
  if ('faults' in answer)
    return sayFaults(
      io,
      answer.faults.map((fault) => ({ list: 'faults', ...fault })),
    );
  io.out(
    opened.format === 'json' ? asJson(answer) : usesText({ width: pageWidth(io.columns), paint: io.paintOut }, answer),
  );
  return answer.fits.length + answer.bikes.length > 0 ? EXIT.yes : EXIT.no;
}
