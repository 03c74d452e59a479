import { describe, expect, it } from 'vitest';
import { askDemo } from '../../support/ask.ts';
import { changes, flagParams, flags, money, onlyPlan, steps } from '../../support/plan-views.ts';
import { QUESTIONS } from './questions.ts';
import { conflicts, members, refused, verdict, waysOut } from './refusals.ts';

describe('motor-assisted, onto hennivar-osker', () => {
  it('fennock-622: its maker says no', async () => {
    const answer = await askDemo(QUESTIONS.motorRefused);
    expect(verdict(answer)).toEqual(refused('impossible'));
    expect(conflicts(answer)).toEqual([['rule not-rated-motor', 'want want-onto']]);
    expect(members(answer, 'not-rated-motor')[0]?.source?.record).toBe('families/fennock');
  });

  it('velquin-622: its maker says nothing, so it is not known', async () => {
    const answer = await askDemo(QUESTIONS.motorNotKnown);
    expect(verdict(answer)).toEqual(refused('not-known'));
    expect(conflicts(answer)).toEqual([['listing not-rated-motor-not-known', 'want want-onto']]);
    expect(members(answer, 'not-rated-motor-not-known')[0]?.source?.record).toBe('families/velquin');
  });

  // Rotor 203 on 180: adaptor 13.90 and 9 min 10.35.
  it('velquin-622, silence allowed: the plan rests on one unknown and says so', async () => {
    const plan = onlyPlan(await askDemo(QUESTIONS.motorAllowed));
    expect(changes(plan)).toEqual(['adaptor: - -> ST-AD-23']);
    expect([money(plan), plan.minutes, plan.unknowns]).toEqual([['13.90', '0.00', '10.35', '24.25'], 9, 1]);
    expect(flags(plan)).toEqual([
      'advice geometry-not-known',
      'verify rests-on-silence',
      'verify steerer-length-not-known',
    ]);
    expect(flagParams(plan, 'rests-on-silence')).toMatchObject([{ family: 'Velquin', bike: 'Hennivar Osker' }]);
  });

  // 396 + 170 = 566 mm along the steerer; straight with 51 mm of offset 568.3 mm, the frame allows 575.
  it('arbrask-622: rated for it and bare for its rotor, nothing to do', async () => {
    const { status, plans } = await askDemo(QUESTIONS.motorRated);
    expect([status, plans]).toEqual(['nothing-to-do', []]);
  });
});

describe('two crowns, wolsket-584 at 200 mm', () => {
  it('onto hennivar-skarn: its maker does not approve them', async () => {
    const answer = await askDemo(QUESTIONS.dualCrownRefused);
    expect(verdict(answer)).toEqual(refused('impossible'));
    expect(conflicts(answer)).toEqual([['rule dual-crown-not-approved', 'want want-onto']]);
    expect(members(answer, 'dual-crown-not-approved')[0]?.source?.record).toBe('bikes/hennivar-skarn');
  });

  it('onto hennivar-sorrin: its maker says nothing, so it is not known', async () => {
    const answer = await askDemo(QUESTIONS.dualCrownNotKnown);
    expect(verdict(answer)).toEqual(refused('not-known'));
    expect(conflicts(answer)).toEqual([['listing dual-crown-not-approved-not-known', 'want want-onto']]);
  });

  // model.md, section 4: a plan never rests on unknown unless that is allowed, and then it counts. No part changes here, but
  // that the fork may go on this bike still rests on what nobody says.
  it('onto hennivar-sorrin, silence allowed: whatever the answer, it says that it rests on silence', async () => {
    const answer = await askDemo(QUESTIONS.dualCrownAllowed);
    const said = [...answer.flags, ...answer.plans.flatMap((plan) => plan.flags)].map(({ code }) => code);
    expect(said).toContain('rests-on-silence');
  });

  // 384 + 200 - h within 565 to 575: marks 10 (574) and 15 (569). The fork stands at 0 (584). 5 + 12 + 8 = 25 min 28.75, gloves 0.60,
  // a towel 1.60. Total 30.95.
  it('onto hennivar-grundel, between two limits: the stanchions are set to the nearest mark that does', async () => {
    const answer = await askDemo(QUESTIONS.dualCrownHeight);
    const plan = onlyPlan(answer);
    expect([answer.now.settings, plan.settings]).toEqual([{ 'stanchion-height': 0 }, { 'stanchion-height': 10 }]);
    expect([changes(plan), steps(plan)]).toEqual([[], ['bench-look-over', 'wolsket-height', 'bench-hand-over']]);
    expect([money(plan), plan.minutes, plan.readyInDays]).toEqual([['0.00', '2.20', '28.75', '30.95'], 25, 0]);
    expect(plan.effects).toMatchObject({ travel: { from: 200, to: 200 }, axleToCrown: { from: 584, to: 574 } });
    expect(flags(plan)).toEqual(['advice geometry-not-known', 'verify steerer-length-not-known']);
    expect(flags(answer)).toEqual(['verify notice-check']);
  });

  it('the same within 565 to 570: only mark 15 does, 569 mm', async () => {
    const plan = onlyPlan(await askDemo(QUESTIONS.dualCrownNarrow));
    expect([plan.settings, plan.money.total, plan.minutes]).toEqual([{ 'stanchion-height': 15 }, '30.95', 25]);
    expect(plan.effects.axleToCrown).toMatchObject({ from: 584, to: 569 });
  });

  // As it left the works it stands at 10 mm: 574 mm, within the limits.
  it('the same as it left the works: nothing to do', async () => {
    const { status } = await askDemo({ chassis: 'wolsket-584', travelNow: 200, onto: 'hennivar-grundel' });
    expect(status).toBe('nothing-to-do');
  });

  // Head tube 115, upper stack 8, stem 40: 163 mm, and the lower cup adds nothing to it. A steerer of 160 mm does not reach; a new one is 200 mm.
  it('its steerer of 160 mm is too short for hennivar-grundel in l: no, and a new steerer is named', async () => {
    const answer = await askDemo(QUESTIONS.dualCrownSteererShort);
    expect(verdict(answer)).toEqual(refused('impossible'));
    expect(conflicts(answer)).toEqual([['rule steerer-length', 'want want-onto']]);
    expect(members(answer, 'steerer-length')[0]?.params).toMatchObject({
      steerer: 160,
      needed: 163,
      uncut: 200,
      renew: 'steerer',
    });
    expect(waysOut(answer)).toEqual([[['kept-steerer steerer'], '142.30', 58, 0]]);
  });

  // Steerer 64.00, star nut 2.90; bearing grease 6.50, gloves 0.60, towels 1.60; 5 + 5 + 4 + 26 + 4 + 6 + 8 = 58 min 66.70. Total 142.30.
  // The upper that holds the stanchions stays where it is: a dual crown's steerer is a part of its own.
  it('a new steerer reaches, and brings its star nut', async () => {
    const plan = onlyPlan(await askDemo(QUESTIONS.dualCrownSteererNew));
    expect(changes(plan)).toEqual([]);
    expect(plan.lines.flatMap(({ action, sku }) => (action === 'buy' ? [sku] : []))).toEqual([
      'ST-GREASE-50',
      'ST-STARNUT',
      'VH-GLOVE-2',
      'VH-TOWEL-5',
      'WS-STEER',
    ]);
    expect([money(plan), plan.minutes, plan.readyInDays]).toEqual([['66.90', '8.70', '66.70', '142.30'], 58, 0]);
  });
});
