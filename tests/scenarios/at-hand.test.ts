import { describe, expect, it } from 'vitest';
import type { QuestionInput } from '../../src/plan/index.ts';
import { askDemo } from '../support/ask.ts';
import { bought, flagParams, flags, lines, money, onlyPlan, planAt, taken } from '../support/plan-views.ts';

const withHave = (have: NonNullable<QuestionInput['have']>): QuestionInput => ({
  chassis: 'quennet-622',
  travelNow: 150,
  wants: { travel: 130 },
  have,
});

// Without anything at hand: 200.30 in five days or 203.40 today, see shorten-by-cartridge.
describe('parts at hand, quennet-622 from 150 to 130 mm', () => {
  // A used cartridge goes in (springs are not renewable), a used ring does not. Washers 2 at hand. Oil 25 mL: 8 at hand, 17
  // to buy; ring and 17 mL: opening kit 9.60 (13 mL and 2 washers over), ring 1.90 and a bottle of the same oil 9.80 are
  // 11.70, ring and 25 mL of the other oil 9.80. Spacers 7.20. 16.80 + 20.50 + 69.00 = 106.30, today.
  it('pieces and an amount: what is at hand is taken first, the used ring is not', async () => {
    const plan = onlyPlan(
      await askDemo(
        withHave([
          { sku: 'QN-AIR-192', quantity: 1, used: true },
          { sku: 'QN-RING', quantity: 1, used: true },
          { sku: 'QN-CW', quantity: 2 },
          { sku: 'OS-BATH', amount: { value: 8, unit: 'mL' } },
        ]),
      ),
    );
    expect([...taken(plan)].sort()).toEqual(['1 QN-AIR-192', '2 QN-CW', '8 mL OS-BATH']);
    expect(bought(plan).slice(0, 2)).toEqual([
      '1 QN-KIT-OPEN x 9.60 = 9.60, 0 days, left 13 mL OS-BATH and 2 QN-CW',
      '2 QN-VS x 3.60 = 7.20, 0 days',
    ]);
    expect(lines(plan, 'install')).toEqual(['1 QN-AIR-192 from QN-AIR-192', '2 QN-VS from QN-VS']);
    expect(lines(plan, 'renew')).toEqual(['1 QN-RING from QN-KIT-OPEN', '2 QN-CW from QN-CW']);
    expect(lines(plan, 'use').filter((line) => line.includes('OS-BATH'))).toEqual([
      '8 mL OS-BATH from OS-BATH',
      '17 mL OS-BATH from QN-KIT-OPEN',
    ]);
    expect(money(plan)).toEqual(['16.80', '20.50', '69.00', '106.30']);
    expect(plan.readyInDays).toBe(0);
    expect(flags(plan)).toEqual(['advice hazard', 'advice hazard', 'advice used-part']);
    expect(flagParams(plan, 'used-part')).toEqual([{ sku: 'QN-AIR-192' }]);
  });

  it('used pieces: washers and rings that were in a fork change nothing at all', async () => {
    const found = await askDemo(
      withHave([
        { sku: 'QN-CW', quantity: 4, used: true },
        { sku: 'QN-RING', quantity: 1, used: true },
      ]),
    );
    expect(found.plans.map((plan) => [plan.money.total, plan.readyInDays])).toEqual([
      ['200.30', 5],
      ['203.40', 0],
    ]);
    expect(found.plans.flatMap(taken)).toEqual([]);
  });

  // Two used spacers save 7.20: 193.10. Today's plan still buys the kit, whose three spacers are then over: 203.40.
  it('used pieces: volume spacers are not renewable, used ones go in', async () => {
    const found = await askDemo(withHave([{ sku: 'QN-VS', quantity: 2, used: true }]));
    expect(found.plans.map((plan) => [plan.money.total, plan.readyInDays])).toEqual([
      ['193.10', 5],
      ['203.40', 0],
    ]);
    expect(found.plans.map(taken)).toEqual([['2 QN-VS'], ['2 QN-VS']]);
    expect(bought(planAt(found, 1))[0]).toBe('1 QN-KIT-192 x 106.00 = 106.00, 0 days, left 3 QN-VS');
  });

  // The opening kit is free: 94.00 + 7.20 = 101.20, and 101.20 + 20.50 + 69.00 = 190.70 in five days. Today: 106.00 + 20.50 +
  // 69.00 = 195.50; washers and ring come from the kit at hand, so those in the cartridge kit are over.
  it('a kit: it is taken whole, and what the job does not need is left', async () => {
    const found = await askDemo(withHave([{ sku: 'QN-KIT-OPEN' }]));
    expect(found.plans.map((plan) => [money(plan), plan.readyInDays])).toEqual([
      [['101.20', '20.50', '69.00', '190.70'], 5],
      [['106.00', '20.50', '69.00', '195.50'], 0],
    ]);
    expect(taken(planAt(found, 0))).toEqual(['1 QN-KIT-OPEN, left 5 mL OS-BATH']);
    expect(bought(planAt(found, 1))[0]).toBe(
      '1 QN-KIT-192 x 106.00 = 106.00, 0 days, left 2 QN-CW and 1 QN-RING and 1 QN-VS',
    );
  });

  // A 5 mL bottle of threadlocker at hand saves 6.90: 193.40 and 196.50.
  it('a pack: it counts as the amount in it', async () => {
    const found = await askDemo(withHave([{ sku: 'VH-LOCK-5' }]));
    expect(found.plans.map((plan) => [plan.money.total, plan.readyInDays])).toEqual([
      ['193.40', 5],
      ['196.50', 0],
    ]);
    expect(found.plans.map(taken)).toEqual([['0.1 mL VH-LOCK'], ['0.1 mL VH-LOCK']]);
  });
});
