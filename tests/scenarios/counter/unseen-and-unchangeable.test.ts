import { describe, expect, it } from 'vitest';
import { askDemo } from '../../support/ask.ts';
import { money, onlyPlan } from '../../support/plan-views.ts';
import { QUESTIONS } from './questions.ts';
import { conflicts, members, refused, verdict, waysOut } from './refusals.ts';

describe('a fork that cannot be changed, lommet-622 from 100 to 120 mm', () => {
  it('impossible: one spring, and the list is complete', async () => {
    const answer = await askDemo(QUESTIONS.oneSpring);
    expect(verdict(answer)).toEqual(refused('impossible'));
    expect(conflicts(answer)).toEqual([['listing spring-travel', 'want want-travel']]);
    expect(members(answer, 'spring-travel')[0]).toMatchObject({
      params: { springs: 1, family: 'Lommet' },
      source: { record: 'families/lommet' },
    });
    // Another travel there is only 100 mm, which is now.
    expect(waysOut(answer)).toEqual([]);
  });
});

describe('unknown spacers inside, brastle-622 at 130 mm, one, two or three, to 140 mm', () => {
  const answer = askDemo(QUESTIONS.spacersInside);

  // To 140 mm from 130 or 120: one or two spacers and the volume spacer come out. 5 + 3 + 7 + 2 + 5 + 4 + 6 + 2 + 3 + 9 + 5 + 8 = 59 min
  // 67.85; O-rings 1.40; 16 mL of oil 7.90, 8.50, 2.90, 1.60, 0.60: 21.50. Total 90.75. With one spacer it has 140 mm already.
  it('rows: the same job in two cases, none in the third', async () => {
    const { plans, cases, status } = await answer;
    expect([status, money(onlyPlan(await answer)), plans[0]?.minutes]).toEqual([
      'answered',
      ['1.40', '21.50', '67.85', '90.75'],
      59,
    ]);
    expect(
      cases?.rows.map(({ contents, travelNow, status: found, plan }) => [
        contents['travel-spacers']?.quantity,
        travelNow,
        found,
        plan?.money ?? null,
        plan?.minutes ?? null,
        plan?.days ?? null,
      ]),
    ).toEqual([
      [2, 130, 'answered', '90.75', 59, 0],
      [1, 140, 'nothing-to-do', null, null, null],
      [3, 120, 'answered', '90.75', 59, 0],
    ]);
    expect(cases?.sameInAll).toBe(false);
  });

  // Straight to the axle, 42 mm of offset, 380 mm at the bottom: along the steerer sqrt(380² - 42²) = 377.672.
  // sqrt((377.672 + t)² + 42²) for 130, 140, 120: 509.4, 519.4, 499.4.
  it('decides: axle-to-crown tells all three apart, before anything is opened', async () => {
    const { cases } = await answer;
    expect(cases?.rows.map(({ axleToCrownNow }) => axleToCrownNow)).toEqual([509.4, 519.4, 499.4]);
    expect(cases?.decides).toEqual([
      { code: 'measure-axle-to-crown', slot: null, values: ['509.4 mm', '519.4 mm', '499.4 mm'] },
      { code: 'look-into-slot', slot: 'travel-spacers', values: ['BR-TS-10*2', 'BR-TS-10*1', 'BR-TS-10*3'] },
    ]);
  });

  it('covers: what to have in hand for every case', async () => {
    expect((await answer).cases?.covers.map(({ sku, packs }) => `${packs} ${sku}`)).toEqual([
      '2 BR-OR',
      '1 VH-BATH-L-120',
      '1 VH-GLOVE-2',
      '1 VH-GREASE-30',
      '1 VH-IPA-50',
      '1 VH-TOWEL-5',
    ]);
  });

  it('each row is the answer to the question with that content', async () => {
    for (const quantity of [1, 3]) {
      const travelNow = 150 - 10 * quantity;
      const alone = await askDemo({
        chassis: 'brastle-622',
        travelNow,
        with: { 'travel-spacers': { sku: 'BR-TS-10', quantity }, 'volume-spacers': { sku: 'BR-VS', quantity: 1 } },
        wants: { travel: 140 },
      });
      const row = (await answer).cases?.rows.find(({ travelNow: at }) => at === travelNow);
      expect([row?.status, row?.plan?.money]).toEqual([alone.status, alone.plans[0]?.money.total]);
    }
  });
});
