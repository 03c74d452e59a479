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

  // The long one has none; 4.38 keep its end of the stroke in the short one, so 4 is the nearest whole count.
  it('counts: within one of the keeping one nothing is said; further off it is, also where they move the right way', () => {
    const withStandard = (count: number): readonly object[] =>
      codes(workedText.replace('{ standard: 3, greatest: 5 }', `{ standard: ${count}, greatest: 5 }`));
    for (const count of [3, 4, 5]) expect(withStandard(count), `${count}`).toEqual([]);
    for (const count of [0, 1, 2])
      expect(withStandard(count)).toMatchObject([
        { code: 'spacers-contradicted', sku: 'W-T', standard: count, nearest: 4, other: 'W-S', otherStandard: 0 },
      ]);
  });

  it('counts past the keeping one: more than one too many is said too', () => {
    const wide = workedText.replace('volume-spacers: { most: 5 }', 'volume-spacers: { most: 6 }');
    expect(codes(wide.replace('{ standard: 3, greatest: 5 }', '{ standard: 6, greatest: 6 }'))).toMatchObject([
      { code: 'spacers-contradicted', sku: 'W-T', standard: 6, nearest: 4 },
    ]);
  });

  it("the maker's greatest hides nothing: the keeping count lies beyond it", () => {
    const few = workedText.replace('{ standard: 3, greatest: 5 }', '{ standard: 2, greatest: 3 }');
    expect(codes(few)).toMatchObject([{ code: 'spacers-contradicted', standard: 2, nearest: 4 }]);
  });

  // A third spring between the two, 9 mL a spacer: each step of one is within one of its neighbour, and both together are not.
  it('small steps that add up: the shortest is held against the longest', () => {
    const middle = workedText.replace(
      '  - sku: W-T\n',
      `  - sku: W-M
    maker: orlen
    name: Middle spring
    role: spring
    dimensions: { bore: 35 mm, shaft: 12 mm }
    interfaces: { spacer-seat: snap }
    air:
      positive-volume: 240.528 mL
      negative-volume: 60 mL
      equalises-at: 0 mm
      pressure: { least: 40 psi, greatest: 150 psi }
      chart: [{ from: 60 kg, to: 110 kg, least: 50 psi, greatest: 84 psi }]
    fits: [{ family: wend, travel: 145 mm, volume-spacers: { standard: 1, greatest: 4 } }]
    price: "40.00"
  - sku: W-T
`,
    );
    const found = codes(middle.replace('{ standard: 3, greatest: 5 }', '{ standard: 2, greatest: 5 }'));
    expect(found).toMatchObject([{ code: 'spacers-contradicted', sku: 'W-T', standard: 2, other: 'W-S' }]);
  });
});
