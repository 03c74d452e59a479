import { describe, expect, it } from 'vitest';
import { askDemo } from '../support/ask.ts';
import { bought, changes, flagParams, flags, lines, money, onlyPlan, steps } from '../support/plan-views.ts';

describe('what a part needs beside it', () => {
  // QN-AIR-232 needs the hollow cap. No volume spacers before or after: 60 - 2 = 58 min, 66.70.
  // 112.00 + 22.00 + opening kit 9.60 (3 + 10 + 15 = 28 of its 30 mL) = 143.60; + 20.50 + 66.70 = 230.80; cartridge 8 days.
  it('another slot: the longest cartridge brings the hollow cap', async () => {
    const plan = onlyPlan(await askDemo({ chassis: 'quennet-584-20x110', travelNow: 170, wants: { travel: 180 } }));
    expect(changes(plan)).toEqual(['spring: QN-AIR-222 -> QN-AIR-232', 'top-cap: QN-CAP -> QN-CAP-DEEP']);
    expect(steps(plan).filter((id) => id.startsWith('quennet-cap'))).toEqual(['quennet-cap-off', 'quennet-cap-on']);
    expect(bought(plan).slice(0, 3)).toEqual([
      '1 QN-AIR-232 x 112.00 = 112.00, 8 days',
      '1 QN-CAP-DEEP x 22.00 = 22.00, 0 days',
      '1 QN-KIT-OPEN x 9.60 = 9.60, 0 days, left 2 mL OS-BATH',
    ]);
    expect(lines(plan, 'remove')).toEqual(['1 QN-AIR-222', '1 QN-CAP']);
    expect([money(plan), plan.minutes, plan.readyInDays]).toEqual([['143.60', '20.50', '66.70', '230.80'], 58, 8]);
    expect(plan.effects.axleToCrown).toMatchObject({ from: 547, to: 557 });
  });

  // The remote damper costs 112.00 by the stock file, 118.00 by the catalogue. The lever has no stock row: date unknown.
  // 5 + 3 + 7 + 4 + 6 + 9 + 5 + 8 = 47 min: 54.05. 112.00 + 34.00 + 1.40 = 147.40; oil 16 mL, grease 1.5 g, alcohol 10 mL,
  // towels 3: 21.50. Total 222.95.
  it('no slot: the remote damper brings lever and cable, and nobody knows when they come', async () => {
    const plan = onlyPlan(await askDemo({ chassis: 'brastle-622', travelNow: 130, wants: { use: ['BR-DMP-R'] } }));
    expect(changes(plan)).toEqual(['damper: BR-DMP-C -> BR-DMP-R']);
    expect(bought(plan).slice(0, 3)).toEqual([
      '1 BR-DMP-R x 112.00 = 112.00, 0 days',
      '1 BR-LEVER x 34.00 = 34.00, ? days',
      '2 BR-OR x 0.70 = 1.40, 0 days',
    ]);
    expect(lines(plan, 'install')).toEqual(['1 BR-DMP-R from BR-DMP-R', '1 BR-LEVER from BR-LEVER']);
    expect([money(plan), plan.minutes, plan.readyInDays]).toEqual([['147.40', '21.50', '54.05', '222.95'], 47, null]);
    expect(flags(plan)).toEqual(['advice hazard', 'verify date-not-known']);
    expect(flagParams(plan, 'date-not-known')).toEqual([{ sku: 'BR-LEVER' }]);
  });
});
