import { describe, expect, it } from 'vitest';
import { questionSchema, readAsked, setUpQuestionSchema } from '../../src/plan/index.ts';

const wrong = (input: unknown): string[] => {
  const asked = readAsked(questionSchema, input);
  return asked.ok ? [] : asked.wrong.map(({ path, reason }) => `${path.join('.')}: ${reason}`);
};

describe('a question of the wrong form', () => {
  it.each([
    ['an unknown key', { chasis: 'a' }, 'chasis: there is no such key; near it: chassis'],
    ['an unknown key inside', { wants: { trvel: 130 } }, 'wants.trvel: there is no such key; near it: travel, wheel'],
    [
      'an unknown key in a list, like none there is',
      { have: [{ sku: 'A', colourful: 1 }] },
      'have.0.colourful: there is no such key; keys here: sku, quantity, amount, used',
    ],
    [
      'an unknown key of what a slot holds',
      { with: { spring: { sku: 'A', quantity: 1, quantitiy: 1 } } },
      'with.spring.quantitiy: there is no such key; near it: quantity',
    ],
    ['a text for a number', { travelNow: '150' }, 'travelNow: it must be a number, and is a text'],
    ['a missing value', { have: [{}] }, 'have.0.sku: it is missing'],
    ['a length below nothing', { wants: { travel: -5 } }, 'wants.travel: it must be at least 0 mm'],
    ['a rate of nothing', { wants: { coilRate: 0 } }, 'wants.coilRate: it must be above 0'],
    ['too long a name', { chassis: 'a'.repeat(101) }, 'chassis: its length must be at most 100'],
    [
      'half a spacer',
      { wants: { spacers: 1.5 } },
      'wants.spacers: it must be a whole number, and is 1.5, which is not whole',
    ],
    ['none of a few words', { prefer: 'speed' }, 'prefer: it must be one of money, time, wait'],
    ['another way to write a day', { date: '1.2.2025' }, 'date: it must be a day written as YYYY-MM-DD'],
    ['a list for an object', { wants: [] }, 'wants: it must be an object with keys, and is a list'],
    [
      'a wheel in inches',
      { wants: { wheel: 29 } },
      'wants.wheel: a wheel is named by its bead-seat diameter in mm, from 100 to 800: 622 is 29 in, 584 is 27.5 in, 559 is 26 in',
    ],
  ])('%s', (_name, input, said) => {
    expect(wrong(input)).toEqual([said]);
  });

  it('several: each is said', () => {
    expect(wrong({ chassis: '', have: [{ sku: '?' }] })).toEqual([
      'chassis: its length must be at least 1',
      'have.0.sku: not an SKU',
    ]);
  });

  it('another schema: its own keys', () => {
    const asked = readAsked(setUpQuestionSchema, { rider: { mass: 80 }, filledat: 20 });
    expect(asked.ok ? [] : asked.wrong.map(({ reason }) => reason)).toEqual([
      'there is no such key; near it: filledAt',
    ]);
  });
});
