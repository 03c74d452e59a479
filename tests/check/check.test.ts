import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { readCatalog } from '../../src/catalog/index.ts';
import { loadFiles } from '../../src/catalog/read.ts';
import { senseProblems } from '../../src/check/index.ts';
import { en } from '../../src/report/words/en.ts';
import { say } from '../../src/report/words/say.ts';
import { problemsOf } from './broken-demo.ts';
import { BROKEN_FORKS } from './broken-forks.ts';
import { BROKEN_PARTS } from './broken-parts.ts';
import { BROKEN_WORK } from './broken-work.ts';

const here = (path: string): string => fileURLToPath(new URL(path, import.meta.url));
const ALL = [...BROKEN_FORKS, ...BROKEN_PARTS, ...BROKEN_WORK];

/** Every code of a catalogue's problems that stands in the sources of the check. */
function codesRaised(): string[] {
  const folder = here('../../src/check');
  const text = readdirSync(folder)
    .map((name) => readFileSync(join(folder, name), 'utf8'))
    .join('\n');
  const quoted = [...text.matchAll(/'([a-z]+(?:-[a-z]+)+)'/g)].map((match) => match[1] ?? '');
  return [...new Set(quoted)].filter((code) => Object.hasOwn(en.codes.problems, code)).sort();
}

describe('sense of a catalogue', () => {
  it('the demo catalogue: makes sense', async () => {
    expect((await problemsOf(null)).problems).toEqual([]);
  });

  it.each(['../second/catalog', '../worked/paper'])('%s: makes sense', async (folder) => {
    const { files } = await loadFiles(here(folder));
    const { value } = readCatalog(files, folder);
    if (!value) throw new Error('it cannot be read');
    expect(senseProblems(value)).toEqual([]);
  });

  it('codes: each that the check raises has a broken copy of the demo catalogue', () => {
    const raised = codesRaised();
    expect(raised.length).toBeGreaterThan(30);
    expect(raised.filter((code) => !ALL.some((broken) => broken.code === code))).toEqual([]);
  });

  it.each(ALL)('$code: $what', async (broken) => {
    const { problems, expectedAt } = await problemsOf(broken);
    const own = problems.filter(({ code }) => code === broken.code);
    expect(own.map(({ place }) => (place ? `${place.file}:${place.line}` : 'nowhere'))).toContain(expectedAt);
    const allowed = [broken.code, ...(broken.follows ?? [])];
    expect(problems.filter(({ code }) => !allowed.includes(code))).toEqual([]);
    for (const problem of problems)
      expect(say(en, 'problems', problem)).not.toMatch(/undefined|\bnull\b|NaN|\[object|Infinity/);
  });

  it('a contradiction: bars the use of the catalogue, and a doubt does not', async () => {
    const severityOf = async (wanted: string): Promise<string | undefined> => {
      const broken = ALL.find(({ code }) => code === wanted) ?? null;
      return (await problemsOf(broken)).problems.find(({ code }) => code === wanted)?.severity;
    };
    expect(await severityOf('clause-contradicts')).toBe('error');
    expect(await severityOf('trait-not-stated')).toBe('warning');
  });
});
