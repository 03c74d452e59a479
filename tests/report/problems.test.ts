import { describe, expect, it } from 'vitest';
import { type Problem, readCatalog } from '../../src/catalog/index.ts';
import { noPaint } from '../../src/report/paint.ts';
import { problemLines } from '../../src/report/problems.ts';
import { en } from '../../src/report/words/en.ts';

const page = { width: 80, paint: noPaint };
const check = (text: string): string =>
  problemLines(page, en, readCatalog([{ name: 'a.yaml', text }], 'folder').problems, 'folder').join('\n');

describe('problems', () => {
  it('one problem: headline, excerpt with the caret below the place, the rule, the way out, the count', () => {
    const excerpt = '  offset: 44 g';
    const problem: Problem = {
      severity: 'error',
      code: 'bad-quantity',
      params: { found: '44 g', dimension: 'length', fault: 'wrong-dimension', units: 'mm, in' },
      place: { file: 'a.yaml', line: 7, column: 11, excerpt },
    };
    expect(problemLines(page, en, [problem], 'folder')).toEqual([
      'a.yaml:7:11: error bad-quantity',
      '  7 |   offset: 44 g',
      '                ^',
      '  44 g is no length.',
      '  Write a number, a blank and one of mm, in.',
      '',
      '1 error and 0 warnings in folder',
    ]);
  });

  it('several problems: are sorted by place and counted', () => {
    const text = check('catalog: { name: A, currency: EUR }\nmakers:\n  - { id: b, nme: B }\n  - { id: a }\n');
    const lines = [...text.matchAll(/a\.yaml:([0-9]+):/g)].map((match) => Number(match[1]));
    expect(lines.length).toBeGreaterThan(1);
    expect(lines).toEqual([...lines].sort((a, b) => a - b));
    expect(text).toMatch(/[0-9]+ errors and 0 warnings in folder$/);
  });

  it('a long line: is cut around the place, so that the caret still points at it', () => {
    const excerpt = `${'x'.repeat(200)}HERE${'y'.repeat(200)}`;
    const place = { file: 'a.yaml', line: 1, column: 201, excerpt };
    const lines = problemLines(page, en, [{ severity: 'error', code: 'head-missing', params: {}, place }], 'folder');
    expect(lines[1]?.slice(lines[2]?.indexOf('^'))).toMatch(/^HERE/);
    expect(Math.max(...lines.map((line) => line.length))).toBeLessThanOrEqual(80);
  });
});
