import { describe, expect, it } from 'vitest';
import type { ProblemCode } from '../../src/catalog/index.ts';
import { senseProblems } from '../../src/check/index.ts';
import { type Change, changed, marked, oneFile, SOUND, sound } from './sound.ts';

const otherFamily = `  - id: other
    maker: orlen
    name: Other
    legs: { left: spring, right: damper }
    travel-set-by: cartridge
    travel-end: extended
    slots: { upper: {}, lowers: {} }
chassis:
`;

/** Each code with a change to the sound catalogue that every record survives, and the line at which it is said. */
const CASES: readonly (readonly [ProblemCode, string, Change])[] = [
  [
    'build-travel',
    'a build at a travel that its spring does not give',
    ['- { travel: 120 mm, slots', '- ⟦{ travel: 130 mm, slots'],
  ],
  [
    'build-breaks-rule',
    'a build below the least travel',
    ['travel: { least: 100 mm, greatest: 140 mm }', 'travel: { least: 125 mm, greatest: 140 mm }'],
  ],
  [
    'clause-contradicts',
    'a wiper for another stanchion',
    [
      'role: wipers, fits: [{ family: wend }]',
      'role: wipers, dimensions: { stanchion: 31 mm }, fits: [⟦{ family: wend }]',
    ],
  ],
  [
    'travel-spacer-length',
    'a travel spacer without a length',
    [
      '  - { sku: W-C, maker',
      '  - ⟦{ sku: W-T, maker: orlen, name: T, role: travel-spacers, fits: [{ family: wend }] }\n  - { sku: W-C, maker',
    ],
  ],
  ['straight-without-offset', 'measured straight without an offset', ['measured: along-steerer', 'measured: straight']],
  [
    'opener-without-closer',
    'an operation that nothing asks for',
    ['  - { id: wipe', '  - ⟦{ id: idle, families: [wend], order: 30, title: Idle, minutes: 1 min }\n  - { id: wipe'],
  ],
  ['unknown-trait', 'a kept trait that no damper states', ['keeps: []', 'keeps: [lockout]']],
  [
    'slot-out-of-reach',
    'two uppers and no operation that changes one',
    [
      '  - { sku: W-C, maker',
      '  - { sku: W-X, maker: orlen, name: X, role: upper, fits: [{ family: wend }] }\n  - { sku: W-C, maker',
    ],
  ],
  ['operation-of-other-family', 'an operation that requires one of another family', ['chassis:\n', otherFamily]],
];

describe('catalogue sense', () => {
  it('sound: the catalogue that the others are made from makes sense', () => {
    expect(senseProblems(sound(oneFile(SOUND)))).toEqual([]);
  });

  it.each(CASES)('%s: %s', (code, _name, change) => {
    const { text, at } = marked(changed(change));
    const whole =
      code === 'operation-of-other-family'
        ? text.replace('families: [wend], order: 15', 'families: [wend, other], order: 15')
        : text;
    const problems = senseProblems(sound(oneFile(whole)));
    expect(problems.map((problem) => problem.code)).toContain(code);
    if (change[1].includes('⟦')) expect(problems.find((problem) => problem.code === code)?.place?.line).toBe(at.line);
    for (const { place } of problems) expect(place).toMatchObject({ file: 'one.yaml' });
  });
});
