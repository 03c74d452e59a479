import { describe, expect, it } from 'vitest';
import { askDemo } from '../support/ask.ts';
import { amounts, bought, builtIn, changes, lines, money, onlyPlan, planAt, steps } from '../support/plan-views.ts';

const quennet = { chassis: 'quennet-622', travelNow: 150 };
const lowerLeg = { service: ['quennet-lower-leg-service'] };

describe('lower-leg service, quennet-622', () => {
  // 5 + 3 + 1 + 8 + 10 + 9 + 1 + 5 + 8 = 50 min, all of them listed: flat 49.00.
  // Oil 8 + 14 + 6 = 28 mL; grease 1 g; alcohol 15 + 10 = 25 mL; towels 4; gloves 2; threadlocker 0.1 mL.
  // Wipers, foam rings, washers: VH-KIT-33 21.00 and a bottle 7.90 = 28.90. Others: 2 x 6.90 + 2 x 3.20 + opening kit
  // 9.60 = 29.80; service kit 38.00 with oil and grease in it, 29.50 net. Foam VH-F-33 singly: one on hand, discontinued.
  // Supplies 7.90 + 0.60 + 8.50 + 2.90 + 6.90 + 1.60 = 28.40. Total 21.00 + 28.40 + 49.00 = 98.40.
  it('alone: labour is the flat price, wear parts are renewed, 98.40', async () => {
    const found = await askDemo({ ...quennet, wants: lowerLeg });
    const plan = onlyPlan(found);
    expect([found.status, plan.minutes, plan.readyInDays]).toEqual(['answered', 50, 0]);
    expect(steps(plan)).toEqual([
      'quennet-look-over',
      'quennet-air-out',
      'quennet-adjuster-off',
      'quennet-lowers-off',
      'quennet-wipers',
      'quennet-lowers-on',
      'quennet-adjuster-on',
      'quennet-inflate',
      'quennet-hand-over',
    ]);
    expect(bought(plan)).toEqual([
      '1 VH-BATH-L-120 x 7.90 = 7.90, 0 days, left 92 mL VH-BATH-L',
      '1 VH-GLOVE-2 x 0.60 = 0.60, 0 days',
      '1 VH-GREASE-30 x 8.50 = 8.50, 0 days, left 29 g VH-GREASE',
      '1 VH-IPA-50 x 2.90 = 2.90, 0 days, left 25 mL VH-IPA',
      '1 VH-KIT-33 x 21.00 = 21.00, 0 days',
      '1 VH-LOCK-5 x 6.90 = 6.90, 0 days, left 4.9 mL VH-LOCK',
      '1 VH-TOWEL-5 x 1.60 = 1.60, 0 days, left 1 VH-TOWEL',
    ]);
    expect(money(plan)).toEqual(['21.00', '28.40', '49.00', '98.40']);
    expect(plan.effects.travel).toEqual({ from: 150, to: 150, unit: 'mm' });
  });

  it('alone: only wear and single-use parts change, worn ones go back, spoiled ones are waste', async () => {
    const plan = onlyPlan(await askDemo({ ...quennet, wants: lowerLeg }));
    expect(changes(plan)).toEqual([
      'wipers: QN-W*2 -> VH-W-33*2',
      'foam-rings: QN-F*2 -> VH-F-33*2',
      'foot-seals: QN-CW*2 -> VH-CW-8*2',
    ]);
    expect(lines(plan, 'renew')).toEqual([
      '2 VH-W-33 from VH-KIT-33',
      '2 VH-F-33 from VH-KIT-33',
      '2 VH-CW-8 from VH-KIT-33',
    ]);
    expect(lines(plan, 'remove')).toEqual(['2 QN-W', '2 QN-F']);
    expect(lines(plan, 'waste')).toEqual(['2 QN-CW', '22 mL light bath oil']);
    expect(amounts(plan, 'light-bath')).toEqual([
      'quennet-lowers-off: drain 8 mL left',
      'quennet-lowers-off: drain 14 mL right',
      'quennet-wipers: use 6 mL',
      'quennet-lowers-on: use 8 mL left',
      'quennet-lowers-on: use 14 mL right',
    ]);
    // wipers 2 x (8 - 7) g lighter, the rest weighs the same
    expect(plan.effects.mass).toEqual({ from: 1819, to: 1817, unit: 'g' });
  });

  // The same SKUs again: service kit 38.00, oil and grease in it; 12.00 of supplies remain. 38.00 + 12.00 + 49.00 = 99.00.
  // Others: seal kit 25.50 + bottle 7.90 + grease 8.50 = 41.90.
  it('with the seals kept: the same numbers go in again, from the service kit, 99.00', async () => {
    const plan = onlyPlan(
      await askDemo({ ...quennet, wants: { ...lowerLeg, keep: ['wipers', 'foam-rings', 'foot-seals'] } }),
    );
    expect(changes(plan)).toEqual([]);
    expect(lines(plan, 'renew')).toEqual([
      '2 QN-W from QN-KIT-SERVICE',
      '2 QN-F from QN-KIT-SERVICE',
      '2 QN-CW from QN-KIT-SERVICE',
    ]);
    expect(bought(plan)[0]).toBe(
      '1 QN-KIT-SERVICE x 38.00 = 38.00, 0 days, left 2 mL OS-BATH and 1 QN-CAPRING and 1 QN-RING and 4 g VH-GREASE',
    );
    expect(money(plan)).toEqual(['38.00', '12.00', '49.00', '99.00']);
  });

  // Flat 49.00 for its steps; cap off 2, out 6, in 7, spacers 2, cap on 3 = 20 min by the hour: 23.00. Labour 72.00.
  // Oil 3 + 8 + 14 + 6 = 31 mL. In five days: 94.00 + 7.20 + VH-KIT-33 21.00 + ring 1.90 = 124.10, supplies 28.40: 224.50.
  // Today: cartridge kit 106.00 has washers, ring and spacers, so wipers 2 x 6.90 and foam rings 2 x 3.20 are cheaper than
  // VH-KIT-33 by 0.80: 126.20 + 28.40 + 72.00 = 226.60.
  it('with another travel: steps of the service stand in the flat price, the rest goes by the hour', async () => {
    const found = await askDemo({ ...quennet, wants: { ...lowerLeg, travel: 130 } });
    expect(found.plans.map((plan) => [money(plan), plan.minutes, plan.readyInDays])).toEqual([
      [['124.10', '28.40', '72.00', '224.50'], 70, 5],
      [['126.20', '28.40', '72.00', '226.60'], 70, 0],
    ]);
    expect(
      found.plans.map((plan) => [builtIn(plan, 'wipers'), builtIn(plan, 'foam-rings'), builtIn(plan, 'foot-seals')]),
    ).toEqual([
      ['VH-W-33*2', 'VH-F-33*2', 'VH-CW-8*2'],
      ['VH-W-33*2', 'QN-F*2', 'QN-CW*2'],
    ]);
    expect(steps(planAt(found, 0)).filter((id) => id === 'quennet-lowers-off').length).toBe(1);
  });
});
