import { cpSync, readdirSync, renameSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { type AnswerDocument, ask, makeWorld, type QuestionInput } from '../../../src/plan/index.ts';
import { answerDocument } from '../../../src/report/document.ts';
import { en } from '../../../src/report/words/en.ts';
import { demo, emptyFolder, legwork } from '../../cli/run.ts';
import { demoFolder, loadCatalogFolder } from '../../support/demo.ts';
import { QUESTIONS } from './questions.ts';

const { world } = await loadCatalogFolder(demoFolder);
const all: readonly (readonly [string, QuestionInput])[] = Object.entries(QUESTIONS);

function documentOf(question: QuestionInput, at = world): AnswerDocument {
  const reply = ask(at, question);
  if (reply.kind === 'faults') throw new Error(JSON.stringify(reply.faults));
  return answerDocument(reply.answer, en, at.catalog, 'without-places');
}

/** What is said, without the question that it repeats. */
const said = ({ question: _question, ...answer }: AnswerDocument): Omit<AnswerDocument, 'question'> => answer;

describe('step limits', () => {
  it.each(all)('%s: with few steps the same answer, or one that says it is not whole', (_name, question) => {
    const whole = said(documentOf(question));
    for (const stepLimit of [1, 10, 100]) {
      const short = said(documentOf({ ...question, stepLimit }));
      if (short.status === 'stopped') {
        expect([short.complete, short.plans, short.refusal]).toEqual([false, [], null]);
        continue;
      }
      expect([stepLimit, short.status]).toEqual([stepLimit, whole.status]);
      if (!short.complete) {
        // Plans of the whole answer, and some of them may be missing.
        const known = whole.plans.map(({ build, money, minutes }) => JSON.stringify([build, money, minutes]));
        for (const { build, money, minutes } of short.plans)
          expect(known).toContain(JSON.stringify([build, money, minutes]));
      } else if (short.refusal && !short.refusal.complete) {
        // A conflict that holds all the same, and ways out that may not be all of them.
        expect(short.refusal.conflicts.length).toBeGreaterThan(0);
        for (const way of short.refusal.instead) expect(whole.refusal?.instead).toContainEqual(way);
      } else expect(short).toEqual(whole);
    }
  });
});

describe('bytes', () => {
  it.each(all)('%s: asked twice, in this world and in a fresh one, gives the same JSON', (_name, question) => {
    const first = JSON.stringify(documentOf(question));
    expect(JSON.stringify(documentOf(question))).toBe(first);
    expect(JSON.stringify(documentOf(question, makeWorld(world.catalog, world.stock, world.shop)))).toBe(first);
  });

  it.each(all)('%s: what an answer cites is a record, never a file', (_name, question) => {
    const cited = JSON.stringify(documentOf(question));
    expect(cited).not.toMatch(/\.ya?ml|\.csv/);
    for (const [, record] of cited.matchAll(/"record":"([^"]*)"/g)) expect(record).toMatch(/^[a-z]+\/[^/]+$/);
  });

  const asked: readonly string[] = [
    '--chassis quennet-622 --travel-now 150 --travel 130 --why',
    '--chassis fennock-622 --travel-now 160 --travel 140 --allow-unknown',
    '--chassis quennet-622 --travel-now 150 --onto dallowick-morrin',
  ];
  const run = (
    args: string,
    format: string,
    folder: string,
    env: Readonly<Record<string, string>>,
  ): readonly unknown[] => {
    const { code, out, err } = legwork(['plan', ...args.split(' '), '--catalog', folder, '--format', format], env);
    return [code, out, err];
  };
  const plain = { TZ: 'UTC', LANG: 'C', LC_ALL: 'C' };
  const far = { TZ: 'Asia/Tokyo', LANG: 'tr_TR.UTF-8', LC_ALL: 'tr_TR.UTF-8' };

  it.each(asked)('the command under another clock and language: %s', (args) => {
    for (const format of ['json', 'text', 'csv', 'md'])
      expect(run(args, format, demo, far)).toEqual(run(args, format, demo, plain));
  });

  it('the command prints the JSON that the library gives', () => {
    const [, out] = run('--chassis quennet-622 --travel-now 150 --onto dallowick-morrin', 'json', demo, plain);
    expect(JSON.parse(String(out))).toEqual(JSON.parse(JSON.stringify(documentOf(QUESTIONS.axleToCrownTooLong))));
  });

  // Text for people names file and line; what programs read does not.
  it('the catalogue in files of other names, read in another order: the same bytes', () => {
    const folder = join(emptyFolder(), 'elsewhere');
    cpSync(demo, folder, { recursive: true });
    const files = readdirSync(folder)
      .filter((name) => name.endsWith('.yaml') && name !== 'shop.yaml')
      .sort();
    files.forEach((name, at) => {
      renameSync(join(folder, name), join(folder, `${String(files.length - at).padStart(3, '0')}-anders.yaml`));
    });
    for (const args of asked)
      for (const format of ['json', 'csv'])
        expect(run(args, format, folder, plain)).toEqual(run(args, format, demo, plain));
  });
});
