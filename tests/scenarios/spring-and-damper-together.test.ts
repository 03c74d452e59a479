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

// 160 mm: QN-AIR-222 without volume spacers. The damper in the fork has a stroke of 155 mm, so it must go as well; the
// lockout at the crown is kept, which leaves QN-DMP-175 (QN-DMP-185 has none).
const answer = askDemo({ chassis: 'quennet-622', travelNow: 150, wants: { travel: 160 } });

describe('spring and damper together, quennet-622 from 150 to 160 mm', () => {
  it('build: the longer travel asks for a damper with the stroke for it, with the lockout kept', async () => {
    const found = await answer;
    expect([found.status, found.complete]).toEqual(['answered', true]);
    expect(changes(onlyPlan(found))).toEqual([
      'spring: QN-AIR-212 -> QN-AIR-222',
      'volume-spacers: QN-VS -> -',
      'damper: QN-DMP-155 -> QN-DMP-175',
    ]);
  });

  // The 60 min of another cartridge, and only damper out 4 and in 5 on top: 69.
  it('steps: the lowers come off once for both, every operation is done once, 69 minutes', async () => {
    const plan = onlyPlan(await answer);
    expect(steps(plan)).toEqual([
      'quennet-look-over',
      'quennet-air-out',
      'quennet-adjuster-off',
      'quennet-lowers-off',
      'quennet-cap-off',
      'quennet-spring-out',
      'quennet-damper-out',
      'quennet-spring-in',
      'quennet-damper-in',
      'quennet-volume-spacers',
      'quennet-cap-on',
      'quennet-lowers-on',
      'quennet-adjuster-on',
      'quennet-inflate',
      'quennet-hand-over',
    ]);
    expect(new Set(steps(plan)).size).toBe(plan.steps.length);
    expect(plan.minutes).toBe(69);
    expect(torques(plan)).toEqual([
      'quennet-damper-in: damper cap right (damper) 19 N·m greased',
      'quennet-cap-on: top cap left (spring) 22 N·m greased',
      'quennet-lowers-on: foot bolt left (spring) 6.5 N·m dry',
      'quennet-lowers-on: foot bolt right (damper) 8 N·m dry',
      'quennet-adjuster-on: dial screw right (damper) 1.2 N·m threadlocked',
      'quennet-hand-over: wheel axle null (null) 13 N·m greased',
      'quennet-hand-over: calliper bolt null (null) 8 N·m greased',
    ]);
  });

  // Parts 98.00 + 168.00 + opening kit 9.60 = 275.60. Grease 2 + 0.5 + 0.5 + 1 = 4 g, oil 25 mL: supplies 20.50.
  // Labour 69 x 69.00 / 60 = 79.35. Total 375.45. The damper takes 5 days.
  it('money: oil, washers and ring are bought once for both, 375.45 in five days', async () => {
    const plan = onlyPlan(await answer);
    expect(bought(plan)).toEqual([
      '1 QN-AIR-222 x 98.00 = 98.00, 0 days',
      '1 QN-DMP-175 x 168.00 = 168.00, 5 days',
      '1 QN-KIT-OPEN x 9.60 = 9.60, 0 days, left 5 mL OS-BATH',
      '1 VH-GLOVE-2 x 0.60 = 0.60, 0 days',
      '1 VH-GREASE-30 x 8.50 = 8.50, 0 days, left 26 g VH-GREASE',
      '1 VH-IPA-50 x 2.90 = 2.90, 0 days, left 30 mL VH-IPA',
      '1 VH-LOCK-5 x 6.90 = 6.90, 0 days, left 4.9 mL VH-LOCK',
      '1 VH-TOWEL-5 x 1.60 = 1.60, 0 days, left 1 VH-TOWEL',
    ]);
    expect(amounts(plan, 'seal-grease')).toEqual([
      'quennet-spring-in: use 2 g',
      'quennet-damper-in: use 0.5 g',
      'quennet-cap-on: use 0.5 g',
      'quennet-lowers-on: use 1 g',
    ]);
    expect(lines(plan, 'remove')).toEqual(['1 QN-AIR-212', '1 QN-VS', '1 QN-DMP-155']);
    expect(lines(plan, 'waste')).toEqual(['1 QN-RING', '2 QN-CW', '25 mL light bath oil']);
    expect(money(plan)).toEqual(['275.60', '20.50', '79.35', '375.45']);
    expect(plan.readyInDays).toBe(5);
  });

  // 388 + 160 = 548 mm. 1819 + (192 - 188) - 5 + (222 - 214) = 1826 g.
  it('effects and flags: 10 mm longer and 7 g heavier, the frame must allow it', async () => {
    const plan = onlyPlan(await answer);
    expect(plan.effects.axleToCrown).toEqual({ from: 538, to: 548, unit: 'mm', measured: 'along-steerer' });
    expect(plan.effects.mass).toEqual({ from: 1819, to: 1826, unit: 'g' });
    expect(flags(plan)).toEqual(['advice hazard', 'advice hazard', 'advice waiting', 'verify frame-limit']);
    expect(flagParams(plan, 'waiting')).toEqual([{ sku: 'QN-DMP-175', days: 5, onShelf: 0, packs: 1 }]);
  });
});
