import { describe, expect, it } from 'vitest';
import { askDemo } from '../../support/ask.ts';
import { bought, changes, flagParams, flags, lines, money, onlyPlan, steps } from '../../support/plan-views.ts';
import { QUESTIONS } from './questions.ts';
import { conflicts, members, refused, verdict, waysOut } from './refusals.ts';

describe('damper too short in stroke, velquin-622 from 150 to 160 mm', () => {
  // Cartridge C gives 160 mm at 622 with 0 volume spacers; the damper there has 155 mm of stroke, VQ-DMP-172 has 172 and is
  // 270 mm long closed, in 274 mm of room.
  // 5 + 3 + 8 + 2 + 6 + 4 (damper out) + 7 + 5 (damper in) + 2 + 3 + 9 + 5 + 8 = 67 min: 77.05.
  // 164.00 + 151.00 + ring 1.90 + washers 1.80 = 318.70; bottle 7.90 (8 + 13 + 4 = 25 mL), grease 8.50, alcohol 2.90, towels 1.60,
  // gloves 0.60: 21.50. Total 417.25.
  it('plan: the longer damper comes along with its price', async () => {
    const answer = await askDemo(QUESTIONS.strokeTooShort);
    const plan = onlyPlan(answer);
    expect([answer.status, answer.complete, flags(answer)]).toEqual(['answered', true, []]);
    expect(changes(plan)).toEqual([
      'spring: VQ-AIR-B -> VQ-AIR-C',
      'volume-spacers: FN-VS -> -',
      'damper: VQ-DMP-155 -> VQ-DMP-172',
    ]);
    expect(bought(plan)).toEqual([
      '2 FN-CW x 0.90 = 1.80, 0 days',
      '1 FN-RING-W x 1.90 = 1.90, 0 days',
      '1 VH-BATH-L-120 x 7.90 = 7.90, 0 days, left 95 mL VH-BATH-L',
      '1 VH-GLOVE-2 x 0.60 = 0.60, 0 days',
      '1 VH-GREASE-30 x 8.50 = 8.50, 0 days, left 26 g VH-GREASE',
      '1 VH-IPA-50 x 2.90 = 2.90, 0 days, left 30 mL VH-IPA',
      '1 VH-TOWEL-5 x 1.60 = 1.60, 0 days, left 1 VH-TOWEL',
      '1 VQ-AIR-C x 164.00 = 164.00, 0 days',
      '1 VQ-DMP-172 x 151.00 = 151.00, 0 days',
    ]);
    expect(steps(plan).filter((id) => id.includes('damper'))).toEqual(['fennock-damper-out', 'fennock-damper-in']);
    expect(lines(plan, 'remove')).toEqual(['1 VQ-AIR-B', '1 FN-VS', '1 VQ-DMP-155']);
    expect([money(plan), plan.minutes, plan.readyInDays]).toEqual([['318.70', '21.50', '77.05', '417.25'], 67, 0]);
    // 390 + 150 and 390 + 160. Cartridge +5 g, spacer -5 g, damper +12 g.
    expect(plan.effects.axleToCrown).toMatchObject({ from: 540, to: 550 });
    expect(plan.effects.mass).toEqual({ from: 1921, to: 1933, unit: 'g' });
    expect(flags(plan)).toEqual(['advice hazard', 'verify frame-limit']);
    expect(flagParams(plan, 'frame-limit')).toEqual([{ from: 150, to: 160 }]);
  });
});

describe('damper too long closed, velquin-584 from 150 to 160 mm', () => {
  // At 584 cartridge B gives 160 mm. The damper there has 155 mm of stroke; the longer one is 270 mm closed, the room 262 mm.
  it('impossible: one damper is too short, the other too long, and both numbers are shown', async () => {
    const answer = await askDemo(QUESTIONS.closedTooLong);
    expect(verdict(answer)).toEqual(refused('impossible'));
    expect(conflicts(answer)).toEqual([
      ['kept kept-trait', 'rule damper-stroke', 'rule dimension-of-part', 'want want-travel'],
    ]);
    expect(members(answer, 'dimension-of-part')[0]?.params).toMatchObject({
      sku: 'VQ-DMP-172',
      measure: 'closed-length',
      own: '270 mm',
      other: '262 mm',
      relation: 'at-most',
    });
    expect(members(answer, 'damper-stroke')[0]?.params).toMatchObject({ sku: 'VQ-DMP-155', stroke: 155 });
    expect(members(answer, 'kept-trait')[0]?.params).toEqual({ trait: 'wheel', value: '584' });
  });

  // On 622 wheels: 67 + 4 + 10 (lowers, wipers) = 81 min: 93.15. Lowers 219.00, cartridge C 164.00, damper 151.00, seal kit 25.00,
  // ring 1.90: 560.90; oil 8 + 13 + 4 + 6 = 31 mL in one bottle, alcohol 35 mL, 5 towels: 21.50. Total 675.55.
  // Another travel on 584 would be 150 mm, which is now: nothing to do, so no way out.
  it('instead: the same travel on larger wheels', async () => {
    const answer = await askDemo(QUESTIONS.closedTooLong);
    expect(waysOut(answer)).toEqual([[['kept-trait wheel'], '675.55', 81, 0]]);
    expect(answer.refusal?.instead[0]?.wants).toMatchObject({ travel: 160, wheel: 622 });
    const plan = onlyPlan(
      await askDemo({ chassis: 'velquin-584', travelNow: 150, wants: { travel: 160, wheel: 622 } }),
    );
    expect(changes(plan)).toEqual([
      'lowers: VQ-L-584 -> VQ-L-622',
      'spring: VQ-AIR-A -> VQ-AIR-C',
      'volume-spacers: FN-VS*2 -> -',
      'damper: VQ-DMP-155 -> VQ-DMP-172',
    ]);
    expect(bought(plan)).toContain('1 FN-KIT-SEALS x 25.00 = 25.00, 0 days');
    expect([money(plan), plan.minutes, plan.readyInDays]).toEqual([['560.90', '21.50', '93.15', '675.55'], 81, 0]);
  });
});
