import { describe, expect, it } from 'vitest';
import type { QuestionInput } from '../../src/plan/index.ts';
import { askDemo } from '../support/ask.ts';
import { bought, changes, lines, money, planAt, steps } from '../support/plan-views.ts';

const question = { chassis: 'quennet-622', travelNow: 150, wants: { travel: 170 } } as const satisfies QuestionInput;
const answer = askDemo(question);

describe('beyond the chassis, quennet-622 from 150 to 170 mm', () => {
  it('verdict: impossible, proved, with no plan', async () => {
    const { status, complete, plans } = await answer;
    expect([status, complete, plans.length]).toEqual(['impossible', true, 0]);
  });

  // 170 mm exists in the family (584 wheels), so the wheel that was not named stands in the way; for 622 the maker's
  // greatest is 160 mm (page 9 of the manual).
  it('conflict: the wish, the wheel that stays, and the range of the chassis with its page', async () => {
    const { refusal } = await answer;
    expect(refusal?.smallest).toBe(true);
    expect(
      refusal?.conflicts.map((members) => members.map(({ kind, code, params }) => ({ kind, code, params }))),
    ).toEqual([
      [
        { kind: 'want', code: 'want-travel', params: { travel: 170 } },
        { kind: 'kept', code: 'kept-trait', params: { trait: 'wheel', value: '622' } },
        {
          kind: 'rule',
          code: 'travel-range',
          params: { chassis: 'Quennet for 622 wheels', least: 120, greatest: 160 },
        },
      ],
    ]);
    expect(refusal?.conflicts[0]?.[2]?.source).toEqual({
      document: 'ostrell-quennet-service',
      page: '9',
      record: 'chassis/quennet-622',
    });
  });

  // Below 170: 160 mm, worked out in spring-and-damper-together (375.45, 69 min, 5 days); above there is none with a 622
  // wheel. Without the wheel: quennet-584, see below (620.45, 83 min, 9 days).
  it('ways out: less travel or another wheel, each with its price, minutes and days', async () => {
    const { refusal } = await answer;
    expect(refusal?.complete).toBe(true);
    expect(
      refusal?.instead.map(({ drop, wants, money: price, minutes, days }) => ({
        drop: drop.map(({ code }) => code),
        wants: { travel: wants.travel, wheel: wants.wheel },
        price,
        minutes,
        days,
      })),
    ).toEqual([
      { drop: ['want-travel'], wants: { travel: 160, wheel: undefined }, price: '375.45', minutes: 69, days: 5 },
      { drop: ['kept-trait'], wants: { travel: 170, wheel: 584 }, price: '620.45', minutes: 83, days: 9 },
    ]);
  });

  it('ways out: asked again, each gives a plan with that very price, minutes and days', async () => {
    const instead = (await answer).refusal?.instead ?? [];
    expect(instead.length).toBe(2);
    for (const { wants, money: price, minutes, days } of instead) {
      const again = planAt(await askDemo({ ...question, wants }), 0);
      expect([again.money.total, again.minutes, again.readyInDays]).toEqual([price, minutes, days]);
    }
  });

  // 584 wheel at 170 mm: QN-AIR-222, no spacer; stroke 170 asks for QN-DMP-175 (closed 266 mm, room 272 mm); other lowers.
  // New lowers are closed by new wipers: 69 + lowers 4 + wipers 10 = 83 min, 83 x 69.00 / 60 = 95.45.
  // Oil 3 + 7 + 12 + 6 = 28 mL, grease 4 g, alcohol 10 + 15 + 10 = 35 mL, towels 5. Wipers, foam rings, washers, ring, oil and
  // grease: service kit 38.00; without it the best is 2 x 6.90 + 2 x 3.20 + opening kit 9.60 + grease 8.50 = 38.30.
  // Parts 209.00 + 98.00 + 168.00 + 38.00 = 513.00; supplies 0.60 + 2.90 + 6.90 + 1.60 = 12.00; total 620.45.
  // Lowers: 1 on hand, 1 reserved: 9 days.
  it('other wheel: new lowers bring new wipers, and the service kit beats singles by 0.30', async () => {
    const plan = planAt(await askDemo({ ...question, wants: { travel: 170, wheel: 584 } }), 0);
    expect(plan.chassis).toBe('quennet-584');
    expect(changes(plan)).toEqual([
      'lowers: QN-L-622 -> QN-L-584',
      'spring: QN-AIR-212 -> QN-AIR-222',
      'volume-spacers: QN-VS -> -',
      'damper: QN-DMP-155 -> QN-DMP-175',
    ]);
    expect(bought(plan)).toEqual([
      '1 QN-AIR-222 x 98.00 = 98.00, 0 days',
      '1 QN-DMP-175 x 168.00 = 168.00, 5 days',
      '1 QN-KIT-SERVICE x 38.00 = 38.00, 0 days, left 2 mL OS-BATH and 1 QN-CAPRING and 1 g VH-GREASE',
      '1 QN-L-584 x 209.00 = 209.00, 9 days',
      '1 VH-GLOVE-2 x 0.60 = 0.60, 0 days',
      '1 VH-IPA-50 x 2.90 = 2.90, 0 days, left 15 mL VH-IPA',
      '1 VH-LOCK-5 x 6.90 = 6.90, 0 days, left 4.9 mL VH-LOCK',
      '1 VH-TOWEL-5 x 1.60 = 1.60, 0 days',
    ]);
    expect(money(plan)).toEqual(['513.00', '12.00', '95.45', '620.45']);
    const at = (slot: string): string | undefined => plan.steps.find(({ fills }) => fills.includes(slot))?.id;
    // what only closes is where a part goes in; new lowers are closed by the wipers, which are a step of their own
    expect([at('spring'), at('lowers'), at('wipers'), at('foot-seals')]).toEqual([
      'quennet-spring-in',
      'quennet-lowers-swap',
      'quennet-wipers',
      'quennet-lowers-on',
    ]);
    // lowers-swap stands at 100, wipers at 110: after the cap (90), before the lowers go on (120)
    expect(steps(plan).slice(-6)).toEqual([
      'quennet-lowers-swap',
      'quennet-wipers',
      'quennet-lowers-on',
      'quennet-adjuster-on',
      'quennet-inflate',
      'quennet-hand-over',
    ]);
    // what runs out is the old chassis' dose, 8 + 14 + 3
    expect(lines(plan, 'waste')).toEqual(['1 QN-RING', '2 QN-CW', '25 mL light bath oil']);
    // 374 + 170 = 544
    expect(plan.effects.axleToCrown).toEqual({ from: 538, to: 544, unit: 'mm', measured: 'along-steerer' });
  });
});
