import { describe, expect, it } from 'vitest';
import { senseProblems } from '../../src/check/index.ts';
import { workedText, worldOf } from '../scenarios/worked-fork.ts';

const codes = (text: string): readonly object[] =>
  senseProblems(worldOf(text).catalog)
    .filter(({ code }) => code.startsWith('sp'))
    .map(({ code, params }) => ({ code, ...params }));

describe('springs against physics', () => {
  it('the worked spring: nothing is said', () => {
    expect(codes(workedText)).toEqual([]);
  });

  // W-T: 240.528 - 5 x 14 = 170.528 mL less 125.075 leave 45.45; at 140 psi, 10.666 bar absolute, there are 40.02 bar: 3753 N out and 233 N
  // in are 3520 N at the end. W-S: 212.528 mL less 153.938 leave 58.59, 38.69 bar, 3625 N less 191 N. Both are more than 2800 N.
  it('so strong at its least pressure that the clearance test does not press it to the end: said, with how far', () => {
    const strong = workedText.replaceAll('least: 40 psi', 'least: 140 psi').replace('volume: 9 mL', 'volume: 14 mL');
    expect(codes(strong)).toMatchObject([
      { code: 'spring-cannot-give-travel', sku: 'W-S', spacers: 2, left: null },
      { code: 'spring-cannot-give-travel', sku: 'W-T', spacers: 5, left: null },
    ]);
  });

  // The long one has none; 4.38 keep its end of the stroke in the short one.
  it('counts: on the way from the old one to the keeping one they are left alone, and beside it they are not', () => {
    const withStandard = (count: number): string =>
      workedText.replace('{ standard: 3, greatest: 5 }', `{ standard: ${count}, greatest: 5 }`);
    for (const count of [1, 2, 3, 4, 5]) expect(codes(withStandard(count)), `${count}`).toEqual([]);
    expect(codes(withStandard(0))).toMatchObject([
      { code: 'spacers-contradicted', sku: 'W-T', standard: 0, nearest: 4, other: 'W-S', otherStandard: 0 },
    ]);
  });
});
