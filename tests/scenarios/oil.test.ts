import { describe, expect, it } from 'vitest';
import { askDemo } from '../support/ask.ts';
import { amounts, bought, lines, money, onlyPlan, steps } from '../support/plan-views.ts';

const brastle = { chassis: 'brastle-622', travelNow: 130, wants: { renew: ['foot-seals'] } };
const quennet = { chassis: 'quennet-622', travelNow: 150, wants: { renew: ['foot-seals'] } };

describe('oil, for new foot seals alone', () => {
  // Bath oil 6 + 10 = 16 mL. Bottles: VH 120 mL 7.90, OS 120 mL 9.80, OS 250 mL 15.50: the first, 104 mL left.
  // look over 5, air 3, lowers off 7, lowers on 9, inflate 5, hand over 8: 37 min, 37 x 69.00 / 60 = 42.55.
  // Grease 1 g, alcohol 10 mL, towels 3, gloves 2: 7.90 + 8.50 + 2.90 + 1.60 + 0.60 = 21.50. Total 1.40 + 21.50 + 42.55.
  it('packs: the cheapest bottle is bought whole, and the answer says what is left', async () => {
    const plan = onlyPlan(await askDemo(brastle));
    expect(steps(plan)).toEqual([
      'brastle-look-over',
      'brastle-air-out',
      'brastle-lowers-off',
      'brastle-lowers-on',
      'brastle-inflate',
      'brastle-hand-over',
    ]);
    expect(amounts(plan, 'light-bath')).toEqual([
      'brastle-lowers-off: drain 6 mL left',
      'brastle-lowers-off: drain 10 mL right',
      'brastle-lowers-on: use 6 mL left',
      'brastle-lowers-on: use 10 mL right',
    ]);
    expect(bought(plan)).toContain('1 VH-BATH-L-120 x 7.90 = 7.90, 0 days, left 104 mL VH-BATH-L');
    expect(lines(plan, 'use')).toContain('16 mL VH-BATH-L from VH-BATH-L-120');
    expect(money(plan)).toEqual(['1.40', '21.50', '42.55', '65.45']);
    expect([plan.minutes, plan.readyInDays]).toEqual([37, 0]);
  });

  // From the drum: oil 16 mL x 42.00 per L = 0.672, grease 1 g x 9.50 per 100 g = 0.095, alcohol 10 mL x 14.00 per L =
  // 0.14; half up 0.67, 0.10, 0.14. Towels and gloves are not in bulk: 1.60 + 0.60. Supplies 3.11.
  it('bulk: what is used is charged, each product rounded once', async () => {
    const plan = onlyPlan(await askDemo({ ...brastle, supplies: 'bulk' }));
    expect(bought(plan)).toEqual([
      '2 BR-OR x 0.70 = 1.40, 0 days',
      '1 VH-GLOVE-2 x 0.60 = 0.60, 0 days',
      '1 VH-TOWEL-5 x 1.60 = 1.60, 0 days, left 2 VH-TOWEL',
    ]);
    expect([...lines(plan, 'use')].sort()).toEqual([
      '1 g VH-GREASE = 0.10',
      '10 mL VH-IPA = 0.14',
      '16 mL VH-BATH-L = 0.67',
      '2 VH-GLOVE from VH-GLOVE-2',
      '3 VH-TOWEL from VH-TOWEL-5',
    ]);
    expect(money(plan)).toEqual(['1.40', '3.11', '42.55', '47.06']);
  });

  // 8 + 14 = 22 mL and two washers. Washers 1.80 and a bottle 7.90 are 9.70; the opening kit has both for 9.60, with 8 mL
  // and a ring over. Minutes 5 + 3 + 1 + 8 + 9 + 1 + 5 + 8 = 40: 46.00. Threadlocker 6.90 joins: supplies 20.50.
  it('kit: a sachet with washers beats washers and a bottle by 0.10', async () => {
    const plan = onlyPlan(await askDemo(quennet));
    expect(bought(plan)[0]).toBe('1 QN-KIT-OPEN x 9.60 = 9.60, 0 days, left 8 mL OS-BATH and 1 QN-RING');
    expect(lines(plan, 'renew')).toEqual(['2 QN-CW from QN-KIT-OPEN']);
    expect(lines(plan, 'waste')).toEqual(['2 QN-CW', '22 mL light bath oil']);
    expect(money(plan)).toEqual(['9.60', '20.50', '46.00', '76.10']);
  });

  // From the drum 22 mL cost 0.924, so 0.92, and singles win: 1.80. Grease 0.10, alcohol 0.14, threadlocker 6.90,
  // towels 1.60, gloves 0.60: supplies 10.26.
  it('bulk: with oil from the drum the kit no longer pays', async () => {
    const plan = onlyPlan(await askDemo({ ...quennet, supplies: 'bulk' }));
    expect(bought(plan)[0]).toBe('2 QN-CW x 0.90 = 1.80, 0 days');
    expect(lines(plan, 'use')).toContain('22 mL VH-BATH-L = 0.92');
    expect(money(plan)).toEqual(['1.80', '10.26', '46.00', '58.06']);
  });
});
