import { describe, expect, it } from 'vitest';
import type { QuestionInput } from '../../src/plan/index.ts';
import { askDemo } from '../support/ask.ts';
import { flags } from '../support/plan-views.ts';

const cases: readonly (readonly [string, QuestionInput['wants']])[] = [
  ['nothing wanted', {}],
  ['the travel that it has', { travel: 150 }],
  ['the wheel that it has', { wheel: 622 }],
  // quennet-622 `takes` 584 with its maker's leave, and travel does not change by that
  ['a wheel that it takes', { wheel: 584 }],
  ['the count of volume spacers that it has', { spacers: 1 }],
  ['only that something stays', { keep: ['spring', 'damper'] }],
  ['a part that is in it', { use: ['QN-AIR-212'] }],
  ['all of that together', { travel: 150, wheel: 622, spacers: 1, keep: ['spring'], use: ['QN-AIR-212'] }],
];

describe('nothing to do, quennet-622 at 150 mm', () => {
  for (const [name, wants] of cases) {
    it(`${name}: there is nothing to do, and no plan`, async () => {
      const answer = await askDemo({ chassis: 'quennet-622', travelNow: 150, wants });
      expect([answer.status, answer.complete, answer.plans.length, answer.offers.length]).toEqual([
        'nothing-to-do',
        true,
        0,
        0,
      ]);
      expect(answer.refusal).toBeNull();
      expect(answer.now).toMatchObject({ chassis: 'quennet-622', travel: 150 });
      expect(answer.now.build).toMatchObject({
        spring: { sku: 'QN-AIR-212', quantity: 1 },
        'volume-spacers': { sku: 'QN-VS', quantity: 1 },
        damper: { sku: 'QN-DMP-155', quantity: 1 },
      });
      expect(flags(answer)).toEqual(['verify now-assumed']);
    });
  }
});
