import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { columnsOf, pageWidth, table, wrapped } from '../../src/report/layout.ts';
import { noPaint } from '../../src/report/paint.ts';

const page = (width: number) => ({ width, paint: noPaint });

describe('layout', () => {
  it('width: at least 40, at most 100, 80 where nobody knows', () => {
    expect([undefined, 0, 20, 72, 300].map(pageWidth)).toEqual([80, 80, 40, 72, 100]);
  });

  it('wrapping: no line is wider than the page, and no word is lost', () => {
    const word = fc.stringMatching(/^[a-z]{1,12}$/);
    fc.assert(
      fc.property(
        fc.array(word, { minLength: 1, maxLength: 60 }),
        fc.integer({ min: 40, max: 100 }),
        (words, width) => {
          const lines = wrapped(page(width), words.join(' '), '  ABC: ', '    ');
          expect(Math.max(...lines.map(columnsOf))).toBeLessThanOrEqual(width);
          expect(lines.join(' ').replace('ABC:', '').trim().split(/\s+/)).toEqual(words);
        },
      ),
    );
  });

  it('wrapping: a number stays with its unit', () => {
    for (let width = 40; width < 60; width++) {
      const lines = wrapped(
        page(width),
        'one two three four five six seven 150 mm of travel and 2 x QN-VS in the fork',
      );
      expect(lines.join('|')).toMatch(/150 mm.*2 x QN-VS/);
    }
  });

  it('table: columns stand under each other, and the one that gives way wraps', () => {
    const rows = [
      ['1 x', 'a long name that has to be wrapped somewhere', '94.00'],
      ['12 x', 'short', '7.20'],
    ];
    const lines = table(page(40), [{ align: 'right' }, { align: 'left', gives: true }, { align: 'right' }], rows);
    expect(lines).toEqual([
      '   1 x  a long name that has to    94.00',
      '        be wrapped somewhere',
      '  12 x  short                       7.20',
    ]);
  });
});
