import { describe, expect, it } from 'vitest';
import { askDemo, faultsDemo } from '../../support/ask.ts';
import { changes, money } from '../../support/plan-views.ts';
import { QUESTIONS } from './questions.ts';
import { conflicts, members, refused, verdict, waysOut } from './refusals.ts';

describe('from the bike it left the works with, dallowick-brannig m of 2024-05', () => {
  it('to 130 mm: size and month name quennet-622 at 150 mm, and the plans are those of the fork by itself', async () => {
    const answer = await askDemo(QUESTIONS.worksShorter);
    expect([answer.now.chassis, answer.now.travel, answer.now.bike]).toEqual(['quennet-622', 150, 'dallowick-brannig']);
    expect(answer.plans.map((plan) => [money(plan), plan.minutes, plan.readyInDays])).toEqual([
      [['110.80', '20.50', '69.00', '200.30'], 60, 5],
      [['106.00', '28.40', '69.00', '203.40'], 60, 0],
    ]);
    for (const plan of answer.plans)
      expect(changes(plan)).toEqual(['spring: QN-AIR-212 -> QN-AIR-192', 'volume-spacers: QN-VS -> QN-VS*3']);
  });

  it('to 160 mm: the frame allows 130 to 150', async () => {
    const answer = await askDemo(QUESTIONS.worksLonger);
    expect(verdict(answer)).toEqual(refused('impossible'));
    expect(conflicts(answer)).toEqual([['kept kept-trait', 'rule frame-travel', 'want want-travel']]);
    expect(members(answer, 'frame-travel')[0]).toMatchObject({
      params: { bike: 'Dallowick Brannig', least: 130, greatest: 150 },
      source: { document: 'dallowick-frames', page: '3' },
    });
    // The chassis takes a 584 wheel with its maker's leave, and of that wheel the frame's maker says nothing. Cartridge 98.00, damper 168.00, opening
    // kit 9.60: 275.60; gloves 0.60, grease 8.50, alcohol 2.90, threadlocker 6.90, towels 1.60: 20.50; 69 min 79.35. Total 375.45.
    expect(waysOut(answer)).toEqual([[['kept-trait wheel'], '375.45', 69, 5]]);
    expect(answer.refusal?.instead[0]).toMatchObject({
      wants: { travel: 160, wheel: 584 },
      drop: [{ params: { trait: 'wheel', value: '622', becomes: '584' } }],
    });
  });

  // model.md, section 10: the kept wheel is the bike's there; who gives it up wishes for another. In the lowers for 584 QN-AIR-222 gives 170 mm.
  // Lowers 209.00, cartridge 98.00, damper 168.00, service kit 38.00: 513.00; gloves 0.60, alcohol 2.90, threadlocker 6.90, towels 1.60: 12.00;
  // 83 min 95.45. Total 620.45, the lowers in nine days.
  it('to 170 mm: another wheel is the way out', async () => {
    const answer = await askDemo(QUESTIONS.worksOtherWheel);
    expect(verdict(answer)).toEqual(refused('impossible'));
    expect(conflicts(answer)).toEqual([['kept kept-trait', 'rule travel-range', 'want want-travel']]);
    expect(waysOut(answer)).toEqual([[['kept-trait wheel'], '620.45', 83, 9]]);
    expect(answer.refusal?.instead[0]?.wants).toMatchObject({ travel: 170, wheel: 584 });
  });

  it('without the month: two forks come into question, and both are listed', async () => {
    const faults = await faultsDemo({ bike: 'dallowick-brannig', size: 'm', wants: { travel: 130 } });
    expect(faults.map(({ code }) => code)).toEqual(['several-forks-of-bike']);
    const choices = JSON.stringify(faults[0]?.params);
    expect(choices).toContain('fennock-622');
    expect(choices).toContain('quennet-622');
    expect(faults[0]?.params).toMatchObject({ sizes: [], built: ['to 2023-12', 'from 2024-01'] });
  });
});

describe('a bike that left the works with several forks', () => {
  const params = async (question: Parameters<typeof faultsDemo>[0]) => (await faultsDemo(question))[0]?.params;

  it('neither size nor month: both are asked for, with the values that there are', async () => {
    expect(await params({ bike: 'dallowick-brannig' })).toMatchObject({
      sizes: ['s', 'm', 'l', 'xl'],
      built: ['to 2023-12', 'from 2024-01'],
    });
  });

  it('the month is said: the size is left', async () => {
    expect(await params({ bike: 'dallowick-brannig', built: '2024-05' })).toMatchObject({
      sizes: ['s', 'm', 'l', 'xl'],
      built: [],
    });
  });

  it('forks that differ by size alone: no month is asked for', async () => {
    expect(await params({ bike: 'hennivar-tarric' })).toMatchObject({ sizes: ['s', 'm', 'l'], built: [] });
  });
});

describe('two-position spring against the limit of a frame, velquin-622 at 150 mm onto dallowick-brannig', () => {
  // Limits judge the greatest travel: 150 of 150; 390 + 150 = 540 of 545 mm.
  it('as it is: nothing to do', async () => {
    const { status, complete, plans } = await askDemo(QUESTIONS.twoPositionSuits);
    expect([status, complete, plans]).toEqual(['nothing-to-do', true, []]);
  });

  // The lower position of cartridge C is 130 mm, within the limits; the greater one is not. Without the bike: 417.25.
  it('to 160 mm: the greater position is above the limit', async () => {
    const answer = await askDemo(QUESTIONS.twoPositionLonger);
    expect(verdict(answer)).toEqual(refused('impossible'));
    expect(conflicts(answer)).toEqual([['kept kept-trait', 'rule frame-travel', 'want want-onto', 'want want-travel']]);
    expect(waysOut(answer)).toEqual([[['want-onto Dallowick Brannig'], '417.25', 67, 0]]);
  });
});
