import { describe, expect, it } from 'vitest';
import type { QuestionInput } from '../../src/plan/index.ts';
import { askDemo } from '../support/ask.ts';
import { bought, changes, flagParams, flags, lines, money, onlyPlan, planAt, steps } from '../support/plan-views.ts';

const quennet = { chassis: 'quennet-622', travelNow: 150 };
const askFor = (wants: QuestionInput['wants']) => askDemo({ ...quennet, wants });

describe('keep, quennet-622', () => {
  // Without spacers in or out: 58 min, 58 x 69.00 / 60 = 66.70; cap off and on stay, the cartridge asks for them.
  // 94.00 + 9.60 = 103.60; + 20.50 + 66.70 = 190.80 in five days. Today: 106.00 + 28.40 + 66.70 = 201.10, 3 spacers over.
  it('volume spacers: the count stays against the standard, and that is said', async () => {
    const found = await askFor({ travel: 130, keep: ['volume-spacers'] });
    expect(found.plans.map((plan) => [money(plan), plan.minutes, plan.readyInDays])).toEqual([
      [['103.60', '20.50', '66.70', '190.80'], 58, 5],
      [['106.00', '28.40', '66.70', '201.10'], 58, 0],
    ]);
    for (const plan of found.plans) {
      expect(changes(plan)).toEqual(['spring: QN-AIR-212 -> QN-AIR-192']);
      expect(steps(plan)).not.toContain('quennet-volume-spacers');
      expect(steps(plan)).toContain('quennet-cap-off');
      expect(flagParams(plan, 'spacers-off-standard')).toEqual([{ count: 1, standard: 3, greatest: 5, travel: 130 }]);
    }
    expect(bought(planAt(found, 1))[0]).toBe('1 QN-KIT-192 x 106.00 = 106.00, 0 days, left 3 QN-VS');
  });

  it('spring: with another travel it is impossible, and the two wishes are the ones that clash', async () => {
    const { status, refusal } = await askFor({ travel: 130, keep: ['spring'] });
    expect(status).toBe('impossible');
    expect(
      refusal?.conflicts
        .flat()
        .filter(({ kind }) => kind === 'want')
        .map(({ code, params }) => ({ code, params })),
    ).toEqual([
      { code: 'want-travel', params: { travel: 130 } },
      { code: 'want-keep', params: { slot: 'spring' } },
    ]);
    const without = refusal?.instead.find(({ drop }) => drop.length === 1 && drop[0]?.code === 'want-keep');
    expect(without).toMatchObject({ wants: { travel: 130, keep: [] }, money: '200.30', minutes: 60, days: 5 });
  });
});

describe('use, quennet-622', () => {
  // QN-DMP-185 has no lockout; named, the lockout is not kept. Stroke 185, closed 276 of 282 mm.
  // 5 + 3 + 1 + 8 + 4 + 5 + 9 + 1 + 5 + 8 = 49 min: 56.35. 219.00 + opening kit 9.60 (22 mL, washers; against 9.70) = 228.60.
  // Grease 0.5 + 1 = 1.5 g, alcohol 10 mL, towels 3: supplies 20.50. Total 305.45. None on hand, lead time unknown.
  it('part: a damper named goes in though it drops the lockout; nobody knows when it comes', async () => {
    const plan = onlyPlan(await askFor({ use: ['QN-DMP-185'] }));
    expect(changes(plan)).toEqual(['damper: QN-DMP-155 -> QN-DMP-185']);
    expect(steps(plan)).toEqual([
      'quennet-look-over',
      'quennet-air-out',
      'quennet-adjuster-off',
      'quennet-lowers-off',
      'quennet-damper-out',
      'quennet-damper-in',
      'quennet-lowers-on',
      'quennet-adjuster-on',
      'quennet-inflate',
      'quennet-hand-over',
    ]);
    expect(bought(plan).slice(0, 2)).toEqual([
      '1 QN-DMP-185 x 219.00 = 219.00, ? days',
      '1 QN-KIT-OPEN x 9.60 = 9.60, 0 days, left 8 mL OS-BATH and 1 QN-RING',
    ]);
    expect([money(plan), plan.minutes, plan.readyInDays]).toEqual([['228.60', '20.50', '56.35', '305.45'], 49, null]);
    expect(flags(plan)).toEqual(['advice hazard', 'advice hazard', 'verify date-not-known']);
    expect(flagParams(plan, 'date-not-known')).toEqual([{ sku: 'QN-DMP-185' }]);
    // 1819 + 236 - 214
    expect(plan.effects.mass).toEqual({ from: 1819, to: 1841, unit: 'g' });
  });

  it('kit: the cartridge kit named is bought, and only that plan is left', async () => {
    const plan = onlyPlan(await askFor({ travel: 130, use: ['QN-KIT-192'] }));
    expect(bought(plan).slice(0, 2)).toEqual([
      '1 QN-KIT-192 x 106.00 = 106.00, 0 days, left 1 QN-VS',
      '1 VH-BATH-L-120 x 7.90 = 7.90, 0 days, left 95 mL VH-BATH-L',
    ]);
    expect([money(plan), plan.readyInDays]).toEqual([['106.00', '28.40', '69.00', '203.40'], 0]);
  });

  // The sachet in the opening kit is OS-BATH. Today's plan needs 25 mL of it: opening kit 9.60 is cheaper than OS 120 mL 9.80,
  // though its washers and ring are then over: 106.00 + 9.60 = 115.60; + 20.50 + 69.00 = 205.10.
  it('supply: the oil named is used, whichever way is cheapest to get it', async () => {
    const found = await askFor({ travel: 130, use: ['OS-BATH'] });
    expect(found.plans.map((plan) => [money(plan), plan.readyInDays])).toEqual([
      [['110.80', '20.50', '69.00', '200.30'], 5],
      [['115.60', '20.50', '69.00', '205.10'], 0],
    ]);
    expect(found.plans.map((plan) => lines(plan, 'use').filter((line) => line.includes('BATH')))).toEqual([
      ['25 mL OS-BATH from QN-KIT-OPEN'],
      ['25 mL OS-BATH from QN-KIT-OPEN'],
    ]);
    expect(bought(planAt(found, 1))).toContain(
      '1 QN-KIT-OPEN x 9.60 = 9.60, 0 days, left 5 mL OS-BATH and 2 QN-CW and 1 QN-RING',
    );
  });

  // The 250 mL bottle 15.50 makes the opening kit useless: 94.00 + 7.20 + 1.80 + 1.90 = 104.90; supplies 15.50 + 20.50 =
  // 36.00; 209.90. Today: 106.00 + 36.00 + 69.00 = 211.00.
  it('pack: the bottle named is bought, and 225 mL are left', async () => {
    const found = await askFor({ travel: 130, use: ['OS-BATH-250'] });
    expect(found.plans.map((plan) => [money(plan), plan.readyInDays])).toEqual([
      [['104.90', '36.00', '69.00', '209.90'], 5],
      [['106.00', '36.00', '69.00', '211.00'], 0],
    ]);
    for (const plan of found.plans)
      expect(bought(plan)[0]).toBe('1 OS-BATH-250 x 15.50 = 15.50, 0 days, left 225 mL OS-BATH');
  });
});

describe('renew, quennet-622', () => {
  // Cap off and on with 5 + 3 + 5 + 8 around: 26 min, 29.90. O-ring 1.20, grease 0.5 g 8.50, towel 1.60, gloves 0.60.
  it('cap ring: the cap comes off for it, and the worn ring goes to the customer', async () => {
    const plan = onlyPlan(await askFor({ renew: ['cap-ring'] }));
    expect(steps(plan)).toEqual([
      'quennet-look-over',
      'quennet-air-out',
      'quennet-cap-off',
      'quennet-cap-on',
      'quennet-inflate',
      'quennet-hand-over',
    ]);
    expect(changes(plan)).toEqual([]);
    expect(lines(plan, 'renew')).toEqual(['1 QN-CAPRING from QN-CAPRING']);
    expect(lines(plan, 'remove')).toEqual(['1 QN-CAPRING']);
    expect([money(plan), plan.minutes, plan.readyInDays]).toEqual([['1.20', '10.70', '29.90', '41.80'], 26, 0]);
    expect(flags(plan)).toEqual([]);
  });

  // The steps of the lower-leg service by the hour: 50 min, 57.50. Parts and supplies as there: 21.00 + 28.40.
  it('wipers: foam rings and washers come along, by the hour and not flat', async () => {
    const plan = onlyPlan(await askFor({ renew: ['wipers'] }));
    expect(lines(plan, 'renew')).toEqual([
      '2 VH-W-33 from VH-KIT-33',
      '2 VH-F-33 from VH-KIT-33',
      '2 VH-CW-8 from VH-KIT-33',
    ]);
    expect([money(plan), plan.minutes, plan.readyInDays]).toEqual([['21.00', '28.40', '57.50', '106.90'], 50, 0]);
  });

  it('twice the same: it is once', async () => {
    const twice = onlyPlan(await askFor({ renew: ['cap-ring', 'cap-ring'] }));
    expect(money(twice)).toEqual(['1.20', '10.70', '29.90', '41.80']);
  });
});
