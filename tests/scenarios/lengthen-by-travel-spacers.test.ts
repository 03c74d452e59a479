import { describe, expect, it } from 'vitest';
import { askDemo } from '../support/ask.ts';
import {
  amounts,
  bought,
  changes,
  flagParams,
  flags,
  lines,
  money,
  onlyPlan,
  steps,
  torques,
} from '../support/plan-views.ts';

const answer = askDemo({ chassis: 'brastle-622', travelNow: 130, wants: { travel: 150 } });

describe('lengthen by travel spacers, brastle-622 from 130 to 150 mm', () => {
  // 150 mm without travel spacers. At 150 mm the standard is no volume spacer.
  it('build: both travel spacers and the volume spacer come out, the cartridge stays', async () => {
    const found = await answer;
    const plan = onlyPlan(found);
    expect([found.status, found.complete]).toEqual(['answered', true]);
    expect(changes(plan)).toEqual(['travel-spacers: BR-TS-10*2 -> -', 'volume-spacers: BR-VS -> -']);
    expect(lines(plan, 'remove')).toEqual(['2 BR-TS-10', '1 BR-VS']);
    expect(lines(plan, 'install')).toEqual([]);
    expect(lines(plan, 'reuse')).toEqual([]);
  });

  // look over 5, air 3, lowers off 7, cap off 2, out 5, travel spacers 4, in 6, volume spacers 2, cap on 3, lowers on 9,
  // inflate 5, hand over 8: 59 min.
  it('steps: the cartridge comes out for its spacers and goes back, in 59 minutes', async () => {
    const plan = onlyPlan(await answer);
    expect(steps(plan)).toEqual([
      'brastle-look-over',
      'brastle-air-out',
      'brastle-lowers-off',
      'brastle-cap-off',
      'brastle-spring-out',
      'brastle-travel-spacers',
      'brastle-spring-in',
      'brastle-volume-spacers',
      'brastle-cap-on',
      'brastle-lowers-on',
      'brastle-inflate',
      'brastle-hand-over',
    ]);
    expect(plan.minutes).toBe(59);
    expect(torques(plan)).toEqual([
      'brastle-spring-in: seal head left (spring) 14 N·m greased',
      'brastle-cap-on: top cap left (spring) 18 N·m greased',
      'brastle-lowers-on: foot bolt left (spring) 5 N·m dry',
      'brastle-lowers-on: foot bolt right (damper) 6 N·m dry',
      'brastle-hand-over: wheel axle null (null) 11 N·m greased',
      'brastle-hand-over: calliper bolt null (null) 8 N·m greased',
    ]);
    expect(plan.steps.find(({ id }) => id === 'brastle-lowers-on')?.fasteners.map(({ position }) => position)).toEqual([
      'fully compressed',
      'fully compressed',
    ]);
  });

  // Spring: nothing. O-rings 2 x 0.70 = 1.40 (a bag of ten 3.90, the seal kit 21.50). Bath 6 + 10 = 16 mL of 120: 7.90.
  // Grease 2 + 0.5 + 1 = 3.5 g 8.50; alcohol 20 mL 2.90; towels 4 1.60; gloves 0.60: supplies 21.50.
  // Labour 59 x 69.00 / 60 = 67.85. Total 1.40 + 21.50 + 67.85 = 90.75.
  it('money: no spring is bought, yet seals, oil and time cost 90.75', async () => {
    const plan = onlyPlan(await answer);
    expect(bought(plan)).toEqual([
      '2 BR-OR x 0.70 = 1.40, 0 days',
      '1 VH-BATH-L-120 x 7.90 = 7.90, 0 days, left 104 mL VH-BATH-L',
      '1 VH-GLOVE-2 x 0.60 = 0.60, 0 days',
      '1 VH-GREASE-30 x 8.50 = 8.50, 0 days, left 26.5 g VH-GREASE',
      '1 VH-IPA-50 x 2.90 = 2.90, 0 days, left 30 mL VH-IPA',
      '1 VH-TOWEL-5 x 1.60 = 1.60, 0 days, left 1 VH-TOWEL',
    ]);
    expect(lines(plan, 'renew')).toEqual(['2 BR-OR from BR-OR']);
    expect(amounts(plan, 'light-bath')).toEqual([
      'brastle-lowers-off: drain 6 mL left',
      'brastle-lowers-off: drain 10 mL right',
      'brastle-lowers-on: use 6 mL left',
      'brastle-lowers-on: use 10 mL right',
    ]);
    expect(lines(plan, 'waste')).toEqual(['2 BR-OR', '16 mL light bath oil']);
    expect(money(plan)).toEqual(['1.40', '21.50', '67.85', '90.75']);
    expect(plan.readyInDays).toBe(0);
    expect(plan.label).toEqual(['recommended', 'cheapest', 'quickest', 'soonest']);
  });

  // Straight to the axle, c = 380, o = 42: sqrt(380^2 - 42^2) = 377.672. With 130: sqrt(507.672^2 + 42^2) = 509.406;
  // with 150: sqrt(527.672^2 + 42^2) = 529.341. Less than 20 mm apart, because it is measured aslant.
  // Mass: 690 + 548 + 168 + 8 + 5 + 19 + 198 + 14 + 4 + 2 = 1656 g, less 2 x 4 and 5: 1643 g.
  it('effects: axle-to-crown is measured straight, the fork gets lighter', async () => {
    const { effects } = onlyPlan(await answer);
    expect(effects.travel).toEqual({ from: 130, to: 150, unit: 'mm' });
    expect(effects.axleToCrown).toEqual({ from: 509.4, to: 529.3, unit: 'mm', measured: 'straight' });
    expect(effects.mass).toEqual({ from: 1656, to: 1643, unit: 'g' });
  });

  it('flags: the frame must allow the longer fork, the damper is assumed, alcohol is a hazard', async () => {
    const found = await answer;
    expect(flags(found)).toEqual(['verify now-assumed']);
    expect(flags(onlyPlan(found))).toEqual(['advice hazard', 'verify frame-limit']);
    expect(flagParams(onlyPlan(found), 'frame-limit')).toEqual([{ from: 130, to: 150 }]);
  });
});
