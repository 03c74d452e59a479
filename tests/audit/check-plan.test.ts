import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { checkPlan } from '../../src/audit/index.ts';
import { answerSchema } from '../../src/plan/answer.ts';
import { swapped, withMore } from './change.ts';
import { both, caught, codes, type Edit, edited, P, right, service } from './input.ts';
import { serviceAnswer, shorterAnswer } from './tiny-answer.ts';

describe('a right answer', () => {
  it('right answer: keeps to the contract of answers', () => {
    expect(answerSchema.safeParse(shorterAnswer).error).toBeUndefined();
    expect(answerSchema.safeParse(serviceAnswer).error).toBeUndefined();
  });
  it('right answer: two plans to another travel pass without a finding', () => {
    expect(checkPlan(right)).toEqual([]);
  });
  it('right answer: a service from a kit at a flat price passes without a finding', () => {
    expect(checkPlan(service)).toEqual([]);
  });
  it('right answer: --with that repeats what is there changes nothing', () => {
    expect(codes(edited(right, [['answer.question.with', { damper: { sku: 'QN-D', quantity: 1 } }]]))).toEqual([]);
  });
});

describe('other right answers', () => {
  it.each([
    [
      'axle-to-crown straight to the axle',
      [
        ['catalog.chassis.quarnel-622.axle-to-crown.measured', 'straight'],
        ...both('effects.axleToCrown', { from: 535.3, to: 515.4, unit: 'mm', measured: 'straight' }),
      ],
    ],
    [
      'tax to be added',
      [
        ['shop.tax.included', false],
        ...both(
          'money.tax',
          { rate: 20, included: false, amount: '32.80' },
          { rate: 20, included: false, amount: '35.60' },
        ),
      ],
    ],
    [
      'an unknown fit where unknowns are allowed',
      [['catalog.parts.QN-V.fits', []], ['answer.question.allowUnknown', true], ...both('unknowns', 1)],
    ],
    [
      'a part without a price',
      [
        ['stock.QN-C.price', ''],
        ['catalog.parts.QN-C.price', undefined],
        ...both('lines.2.unitPrice', null),
        ...both('lines.2.total', null),
        ...both('money.unpriced', 1),
        ...both('money.atLeast', true),
        ...both('money.parts', '105.00', '119.00'),
        ...both('money.total', '160.82', '174.82'),
        ...both('money.tax.amount', '26.80', '29.14'),
        ...both('label', ['recommended', 'quickest'], ['soonest']),
      ],
    ],
    [
      'volume spacers by a list of travels',
      [
        [
          'catalog.parts.QN-S-130.fits.0.volume-spacers',
          [
            { travel: '130 mm', standard: 3 },
            { travel: '120 mm', standard: 4 },
          ],
        ],
      ],
    ],
    [
      'other wheels that a chassis takes',
      [
        ['catalog.chassis.quarnel-622.takes', [584]],
        ['answer.question.wants.wheel', 584],
      ],
    ],
    [
      'volume spacers that were told',
      [
        ['answer.question.wants.spacers', 3],
        ['catalog.parts.QN-S-130.fits.0.volume-spacers.standard', 2],
        ['catalog.parts.QN-S-130F.fits.0.volume-spacers.standard', 2],
        ...both('flags', [{ code: 'spacers-off-standard' }]),
      ],
    ],
    ['masses that are not all known', [['catalog.parts.QN-D.mass', undefined], ...both('effects.mass', null)]],
  ] satisfies readonly (readonly [string, readonly Edit[]])[])(
    'right answer: %s passes without a finding',
    (_, edits) => {
      expect(checkPlan(edited(right, edits))).toEqual([]);
    },
  );
});

describe('the answer as a whole', () => {
  it.each([
    caught('answer-shape', ['answer.plans', null]),
    caught('answer-shape', ['answer.plans.1', null]),
    caught('status', ['answer.status', 'impossible']),
    caught('status', ['answer.plans', []]),
    caught('now', ['answer.now.build.volume-spacers', null]),
    caught('now', ['answer.question.travelNow', 145]),
    caught('now-travel', ['answer.now.travel', 140]),
    caught('now-travel', ['answer.question.with', { spring: { sku: 'QN-S-130', quantity: 1 } }]),
    caught(
      'flag',
      ['catalog.chassis.quarnel-622.builds', withMore({ travel: '150 mm', slots: {} })],
      ['catalog.chassis.quarnel-622.builds.0.usual', true],
    ),
    caught('beaten', ['answer.plans', ([first]: readonly unknown[]) => [first, first]]),
    caught('beaten', ['answer.plans.1.readyInDays', 5]),
    caught('not-sorted', ['answer.plans', swapped(0, 1)]),
    caught('not-sorted', ['answer.question.prefer', 'wait']),
    caught('label', [`${P}.label`, ['recommended', 'quickest']]),
    caught('label', ['answer.plans.1.label', []]),
  ])('answer: a fault is caught as %s', (code, edits) => {
    expect(codes(edited(right, edits))).toContain(code);
  });
});

describe('odd input', () => {
  it('odd input: is reported and never thrown', () => {
    const paths = fc.constantFrom(
      ...['catalog', 'shop', 'answer', 'answer.question', 'answer.plans', P, `${P}.lines`, `${P}.steps`, `${P}.money`],
      ...[
        'answer.now',
        `${P}.build`,
        `${P}.lines.0.quantity`,
        `${P}.lines.0.packs`,
        'answer.question.have',
        'shop.tax',
      ],
      ...['catalog.parts', 'catalog.parts.0', 'catalog.operations', 'catalog.families.0.slots', 'catalog.chassis.0'],
    );
    const run = (path: string, value: unknown) => Array.isArray(checkPlan(edited(right, [[path, value]])));
    fc.assert(fc.property(paths, fc.jsonValue(), run), { numRuns: 500, seed: 7 });
  });
});
