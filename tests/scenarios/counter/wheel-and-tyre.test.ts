import { describe, expect, it } from 'vitest';
import { askDemo } from '../../support/ask.ts';
import { bought, changes, flags, lines, money, onlyPlan, steps } from '../../support/plan-views.ts';
import { QUESTIONS } from './questions.ts';
import { conflicts, members, verdict, waysOut } from './refusals.ts';

describe('wheel 584 to 622 by lowers, quennet-584 at 160 mm', () => {
  // QN-AIR-212 gives 160 mm at 584 and 150 mm at 622: the cartridge stays. The bike has a rotor of 203 mm: 180 + 23.
  // 5 + 3 + 1 + 8 + 4 (lowers) + 10 (wipers) + 9 + 1 + 5 + 9 (adaptor) + 8 = 63 min: 72.45.
  // Lowers 214.00, adaptor 13.90, wipers, foam rings and washers in VH-KIT-33 21.00: 248.90. Oil 8 + 14 + 6 = 28 mL 7.90, grease
  // 1 g 8.50, alcohol 25 mL 2.90, threadlocker 6.90, four towels 1.60, gloves 0.60: 28.40. Total 349.75.
  it('onto dallowick-hullock: lowers, new seals and the adaptor for its rotor', async () => {
    const answer = await askDemo(QUESTIONS.wheelOntoHullock);
    const plan = onlyPlan(answer);
    expect([answer.status, answer.now.bike, plan.chassis]).toEqual(['answered', 'dallowick-hullock', 'quennet-622']);
    expect(changes(plan)).toEqual([
      'lowers: QN-L-584 -> QN-L-622',
      'wipers: QN-W*2 -> VH-W-33*2',
      'foam-rings: QN-F*2 -> VH-F-33*2',
      'foot-seals: QN-CW*2 -> VH-CW-8*2',
      'adaptor: - -> ST-AD-23',
    ]);
    expect(bought(plan).filter((line) => !line.includes(' VH-') || line.includes('KIT'))).toEqual([
      '1 QN-L-622 x 214.00 = 214.00, 0 days',
      '1 ST-AD-23 x 13.90 = 13.90, 0 days',
      '1 VH-KIT-33 x 21.00 = 21.00, 0 days',
    ]);
    expect(steps(plan)).toEqual([
      'quennet-look-over',
      'quennet-air-out',
      'quennet-adjuster-off',
      'quennet-lowers-off',
      'quennet-lowers-swap',
      'quennet-wipers',
      'quennet-lowers-on',
      'quennet-adjuster-on',
      'quennet-inflate',
      'bike-adaptor',
      'quennet-hand-over',
    ]);
    // What runs out is what the smaller fork held: 7 + 12 mL.
    expect(lines(plan, 'waste')).toEqual(['2 QN-CW', '19 mL light bath oil']);
    expect([money(plan), plan.minutes, plan.readyInDays]).toEqual([['248.90', '28.40', '72.45', '349.75'], 63, 0]);
    // 374 + 160 and 388 + 150; lowers +16 g, wipers -2 g.
    expect(plan.effects).toMatchObject({
      travel: { from: 160, to: 150 },
      axleToCrown: { from: 534, to: 538 },
      mass: { from: 1811, to: 1825 },
    });
    expect(flags(plan)).toEqual(['advice hazard', 'advice hazard']);
  });

  // 622 / 2 + 70 = 381 mm, 374 mm at the crown. Without the bike the lowers alone: 349.75 - 13.90 - 9 x 1.15 = 325.50, 54 min.
  it('onto dallowick-stobbart: its tyre meets the crown', async () => {
    const answer = await askDemo(QUESTIONS.wheelOntoStobbart);
    // the wheel given up is the bike's again: no question asks for that and another wheel, so the list may not be whole
    expect(verdict(answer)).toEqual(['impossible', true, 0, true, false]);
    expect(conflicts(answer)).toEqual([['rule tyre-room', 'want want-onto', 'want want-wheel']]);
    expect(members(answer, 'tyre-room')[0]).toMatchObject({
      params: { tyre: '70-622', place: 'crown', size: 381, room: 374 },
      source: { document: 'ostrell-quennet-service', record: 'chassis/quennet-622' },
    });
    expect(waysOut(answer)).toEqual([[['want-onto Dallowick Stobbart'], '325.50', 54, 0]]);
  });

  // 311 + 63 = 374 mm: just clears the crown (374 mm), not the arch (372 mm).
  it('onto dallowick-hullock with a tyre of 63-622: it clears the crown and meets the arch', async () => {
    const answer = await askDemo(QUESTIONS.tyreAtTheArch);
    // the wheel given up is the bike's again: no question asks for that and another wheel, so the list may not be whole
    expect(verdict(answer)).toEqual(['impossible', true, 0, true, false]);
    expect(members(answer, 'tyre-room').map(({ params }) => params)).toMatchObject([
      { tyre: '63-622', place: 'arch', size: 374, room: 372 },
    ]);
    expect(waysOut(answer)).toEqual([[['want-onto Dallowick Hullock'], '325.50', 54, 0]]);
  });
});

describe('a 584 wheel in a fork for 622, quennet-622 at 150 mm', () => {
  // The fork takes 584. Frame 140 to 170 mm; rotor 180 on the native 180; hub, race and cup are alike on both bikes.
  it('onto dallowick-querrel: its maker allows it, nothing to do', async () => {
    const { status, complete, plans, refusal } = await askDemo(QUESTIONS.smallWheelAllowed);
    expect([status, complete, plans, refusal]).toEqual(['nothing-to-do', true, [], null]);
  });
});
