import { describe, expect, it } from 'vitest';
import { askDemo } from '../../support/ask.ts';
import { bought, changes, flagParams, flags, lines, money, onlyPlan, steps } from '../../support/plan-views.ts';
import { QUESTIONS } from './questions.ts';
import { conflicts, members, refused, verdict, waysOut } from './refusals.ts';

describe('steerer, the fork of a dallowick-brannig m of 2024-05 onto a dallowick-querrel', () => {
  // Cut to 175 mm. Size l needs 120 + 8 + 40 = 168 mm, and 5 mm a spacer: one stays (173), two do not (178).
  // 5 + 2 + 6 = 13 min: 14.95.
  it('size l: one of the two stem spacers comes out', async () => {
    const plan = onlyPlan(await askDemo(QUESTIONS.longHeadTube));
    expect(changes(plan)).toEqual(['stem-spacers: ST-SPC-5*2 -> ST-SPC-5']);
    expect([bought(plan), lines(plan, 'reuse'), lines(plan, 'remove')]).toEqual([[], ['1 ST-SPC-5'], ['1 ST-SPC-5']]);
    expect(steps(plan)).toEqual(['bike-stem-off', 'bike-stem-spacers', 'bike-stem-on']);
    expect([money(plan), plan.minutes, plan.readyInDays]).toEqual([['0.00', '0.00', '14.95', '14.95'], 13, 0]);
    expect(flags(plan)).toEqual([]);
  });

  // 135 + 8 + 40 = 183 mm with no spacer at all. A new upper comes uncut, 250 mm: 289.00, star nut 2.90, opening kit 9.60: 301.50. Bearing
  // grease 6.50, gloves 0.60, grease 8.50, alcohol 2.90, threadlocker 6.90, towels 1.60: 27.00. 110 min 126.50. Total 455.00, the upper in 12 days.
  it('size xl: the steerer is too short for good, and a new upper is the way out', async () => {
    const answer = await askDemo(QUESTIONS.longestHeadTube);
    expect(verdict(answer)).toEqual(refused('impossible'));
    expect(conflicts(answer)).toEqual([['kept kept-trait', 'rule steerer-length', 'want want-onto']]);
    expect(members(answer, 'steerer-length')[0]?.params).toMatchObject({ steerer: 175, needed: 183 });
    expect(waysOut(answer)).toEqual([[['kept-steerer upper'], '455.00', 110, 12]]);
    expect(answer.refusal?.instead[0]?.wants.renew).toEqual(['upper']);
  });

  // The long steerer, measured, is what counts: 190 mm hold both spacers (135 + 8 + 10 + 40 = 193), but one less does: 188.
  it('size xl with a steerer of 190 mm: measured beats the record', async () => {
    const plan = onlyPlan(await askDemo({ ...QUESTIONS.longestHeadTube, steererLength: 190 }));
    expect(changes(plan)).toEqual(['stem-spacers: ST-SPC-5*2 -> ST-SPC-5']);
  });
});

describe('a new upper, the same fork', () => {
  // Uncut it is 250 mm long: 135 + 8 + 10 + 40 = 193, so both spacers stay where they are.
  it('size xl: a new upper by the same number brings a steerer that is long enough', async () => {
    const answer = await askDemo({ ...QUESTIONS.longestHeadTube, wants: { renew: ['upper'] } });
    const plan = onlyPlan(answer);
    expect(changes(plan)).toEqual([]);
    expect(bought(plan).filter((line) => /QN-U-44|STARNUT/.test(line))).toEqual([
      '1 QN-U-44 x 289.00 = 289.00, 12 days',
      '1 ST-STARNUT x 2.90 = 2.90, 0 days',
    ]);
  });
});

describe('hub, odrun-584 at 170 mm onto hennivar-sorrin', () => {
  // Both are 20x110. The rotor plane is 15 mm on the fork, 10 mm on the bike's hub, and no other hub is fitted at this bench.
  it('the rotor planes differ: impossible', async () => {
    const answer = await askDemo(QUESTIONS.rotorPlane);
    expect(verdict(answer)).toEqual(refused('impossible'));
    expect(conflicts(answer)).toEqual([['rule dimension', 'rule no-operation', 'want want-onto']]);
    expect(members(answer, 'dimension')[0]?.params).toMatchObject({ agreement: 'rotor-plane', part: 'hub' });
    expect(members(answer, 'no-operation')[0]?.params).toMatchObject({ slot: 'hub' });
  });
});

describe('brake and end caps', () => {
  // Native 180 mm, the bike brings 160. 10 min 11.50; rotor 29.00; alcohol 5 mL 2.90, a towel 1.60. Total 45.00.
  // The rotor for 27.00 is for a splined hub.
  it('rotor too small, quennet-622 onto dallowick-stobbart with 58-622: the next size', async () => {
    const plan = onlyPlan(await askDemo(QUESTIONS.rotorTooSmall));
    expect(changes(plan)).toEqual(['rotor: ST-RT-160 -> ST-RT-180']);
    expect(bought(plan)).toEqual([
      '1 ST-RT-180 x 29.00 = 29.00, 0 days',
      '1 VH-IPA-50 x 2.90 = 2.90, 0 days, left 45 mL VH-IPA',
      '1 VH-TOWEL-5 x 1.60 = 1.60, 0 days, left 4 VH-TOWEL',
    ]);
    expect([money(plan), plan.minutes, plan.readyInDays]).toEqual([['29.00', '4.50', '11.50', '45.00'], 10, 0]);
    expect(plan.effects.axleToCrown).toMatchObject({ from: 538, to: 538 });
  });

  it('the same, but the rotor is to stay: impossible, and the way out is to let it go', async () => {
    const answer = await askDemo(QUESTIONS.rotorKept);
    expect(verdict(answer)).toEqual(refused('impossible'));
    expect(conflicts(answer)).toEqual([['kept kept-trait', 'rule rotor-size', 'want want-keep', 'want want-onto']]);
    expect(members(answer, 'rotor-size')[0]?.params).toMatchObject({ rotor: 160, native: 180 });
    expect(waysOut(answer)).toEqual([[['want-keep rotor'], '45.00', 10, 0]]);
  });

  // 180 + 23 = 203. 9 min 10.35, adaptor 13.90. Total 24.25; a rotor of 180 would be 45.00.
  it('adaptor, quennet-622 onto dallowick-hullock', async () => {
    const plan = onlyPlan(await askDemo(QUESTIONS.adaptor));
    expect(changes(plan)).toEqual(['adaptor: - -> ST-AD-23']);
    expect(lines(plan, 'install')).toEqual(['1 ST-AD-23 from ST-AD-23']);
    expect([money(plan), plan.minutes, plan.readyInDays]).toEqual([['13.90', '0.00', '10.35', '24.25'], 9, 0]);
  });

  // Recess 21 mm, the bike has caps of 31. 14.50 + 13.90 = 28.40; 4 + 9 = 13 min 14.95. Total 43.35.
  it('end caps too wide, velquin-622 onto dallowick-hullock', async () => {
    const plan = onlyPlan(await askDemo(QUESTIONS.endCaps));
    expect(changes(plan)).toEqual(['end-caps: ST-CAPS-31 -> ST-CAPS-21', 'adaptor: - -> ST-AD-23']);
    expect(lines(plan, 'remove')).toEqual(['1 ST-CAPS-31']);
    expect([money(plan), plan.minutes, plan.readyInDays]).toEqual([['28.40', '0.00', '14.95', '43.35'], 13, 0]);
  });
});

describe('head tube', () => {
  // 5 + 4 + 6 + 4 + 6 = 25 min 28.75. Reducer 12.50; bearing grease 4 g 6.50, a towel 1.60. Total 49.35.
  it('straight steerer in a tapered head tube, lommet-622 onto hennivar-tarric: a reducer race', async () => {
    const plan = onlyPlan(await askDemo(QUESTIONS.straightSteerer));
    expect(changes(plan)).toEqual(['crown-race: ST-RACE-40 -> ST-RACE-30-WIDE']);
    expect(steps(plan)).toEqual(['bike-stem-off', 'bike-fork-out', 'bike-crown-race', 'bike-fork-in', 'bike-stem-on']);
    expect([money(plan), plan.minutes, plan.readyInDays]).toEqual([['12.50', '8.10', '28.75', '49.35'], 25, 0]);
    expect(plan.effects.axleToCrown).toMatchObject({ from: 482, to: 482 });
    // Three sizes, three head tubes: without the size nobody knows whether the steerer is long enough.
    expect(flags(plan)).toEqual(['advice geometry-not-known', 'verify steerer-length-not-known']);
  });

  it('the same with the size named: 125 + 8 + 10 + 40 = 183 of 255 mm, nothing open', async () => {
    const plan = onlyPlan(await askDemo({ ...QUESTIONS.straightSteerer, ontoSize: 'l' }));
    expect([plan.money.total, flags(plan)]).toEqual(['49.35', []]);
  });

  // ec34 takes a bearing b38; the race for it has a seat of 30 mm, the fork 40. Each of the three rules alone could be met.
  it('34 mm head tube, brastle-622 onto dallowick-pelter: no race brings a 40 mm seat to it', async () => {
    const answer = await askDemo(QUESTIONS.headTube34);
    expect(verdict(answer)).toEqual(refused('impossible'));
    expect(conflicts(answer)).toEqual([['rule dimension', 'rule dimension', 'rule dimension', 'want want-onto']]);
    expect(
      members(answer, 'dimension')
        .map(({ params }) => params.agreement)
        .sort(),
    ).toEqual(['bearing', 'crown-race', 'head-tube']);
  });

  // External cup 27.00 and race 7.50: 34.50. Bearing grease 2 + 4 = 6 g 6.50, a towel 1.60: 8.10. 25 + 10 = 35 min 40.25.
  // Total 82.85. 390 + 140 = 530 mm, which is just the frame's limit.
  it('44 mm head tube, fennock-622 at 140 of 2024-02 onto dallowick-morrin: external cup and the other race', async () => {
    const answer = await askDemo(QUESTIONS.headTube44);
    const plan = onlyPlan(answer);
    expect(changes(plan)).toEqual([
      'headset-lower: ST-CUP-44 -> ST-CUP-44-X',
      'crown-race: ST-RACE-30-44 -> ST-RACE-40',
    ]);
    expect([money(plan), plan.minutes, plan.readyInDays]).toEqual([['34.50', '8.10', '40.25', '82.85'], 35, 0]);
    expect(plan.effects.axleToCrown).toMatchObject({ from: 530, to: 530 });
    expect(flags(plan)).toEqual(['advice tool-not-at-hand']);
    expect(flagParams(plan, 'tool-not-at-hand')).toEqual([{ tool: 'headset press', price: '96.00' }]);
    expect(flags(answer)).toEqual(['verify notice-check']);
  });
});

describe('axle-to-crown above the limit of the frame, quennet-622 at 150 mm onto dallowick-morrin', () => {
  it('388 + 150 = 538 mm, the frame allows 530: impossible', async () => {
    const answer = await askDemo(QUESTIONS.axleToCrownTooLong);
    expect(verdict(answer)).toEqual(refused('impossible'));
    expect(conflicts(answer)).toEqual([
      ['kept kept-trait', 'kept kept-trait', 'rule frame-axle-to-crown', 'want want-onto'],
    ]);
    expect(members(answer, 'frame-axle-to-crown')[0]).toMatchObject({
      params: { least: 500, greatest: 530 },
      source: { document: 'dallowick-frames', page: '10' },
    });
    expect(waysOut(answer)).toEqual([[['kept-trait travel'], '277.95', 95, 0]]);
    expect(answer.refusal?.instead[0]?.wants.travel).toBe(140);
  });

  // 94.00 + 3.60 + 9.60 + 27.00 + 7.50 = 141.70; 20.50 + 6.50 = 27.00, the fifth towel is in the pack; 60 + 35 = 95 min 109.25.
  it('instead 140 mm: cartridge, cup and race in one job, 528 mm', async () => {
    const plan = onlyPlan(await askDemo(QUESTIONS.axleToCrownShortened));
    expect(changes(plan)).toEqual([
      'spring: QN-AIR-212 -> QN-AIR-202',
      'volume-spacers: QN-VS -> QN-VS*2',
      'headset-lower: ST-CUP-44 -> ST-CUP-44-X',
      'crown-race: ST-RACE-30-44 -> ST-RACE-40',
    ]);
    expect([money(plan), plan.minutes, plan.readyInDays]).toEqual([['141.70', '27.00', '109.25', '277.95'], 95, 0]);
    expect(plan.effects.axleToCrown).toMatchObject({ from: 538, to: 528 });
  });
});

describe('as it is, quennet-622 at 150 mm onto dallowick-brannig, size m', () => {
  const asItIs = { chassis: 'quennet-622', travelNow: 150, onto: 'dallowick-brannig', ontoSize: 'm' };
  const service = ['quennet-onto-bike'];
  // 5 + 5 + 4 + 9 + 4 + 6 + 8 = 41 min 47.15; bearing grease 4 g 6.50, gloves 0.60, two towels 1.60: 8.70. Total 55.85.
  const alone = { service: 'quennet-onto-bike', money: '55.85', minutes: 41, days: 0, atLeast: false };

  it('nothing is to be done to it, and putting it there is offered by what it comes to', async () => {
    const answer = await askDemo(asItIs);
    expect([answer.status, answer.complete, answer.plans]).toEqual(['nothing-to-do', true, []]);
    expect(answer.offers).toEqual([{ ...alone, name: 'Put the fork onto the bike' }]);
  });

  it('asked for: stem, race and fork in their order, each with its page, and the bike as it was drawn', async () => {
    const plan = onlyPlan(await askDemo({ ...asItIs, wants: { service } }));
    expect([changes(plan), money(plan), plan.minutes]).toEqual([[], ['0.00', '8.70', '47.15', '55.85'], 41]);
    expect(steps(plan)).toEqual([
      ...['quennet-look-over', 'bike-stem-off', 'bike-fork-out', 'bike-fork-over', 'bike-fork-in', 'bike-stem-on'],
      'quennet-hand-over',
    ]);
    expect(plan.steps.filter(({ source }) => source.page === null)).toEqual([]);
    expect(plan.steps.flatMap(({ fasteners }) => fasteners.map(({ name, torque }) => `${name} ${torque}`))).toEqual([
      'stem clamp bolt 5 N·m',
      'wheel axle 13 N·m',
      'calliper bolt 8 N·m',
    ]);
    expect(plan.effects.geometry?.headAngle).toMatchObject({ from: 65.5, to: 65.5 });
  });

  // 60 + 28 = 88 min; 69.00 + 32.20 = 101.20. The bearing grease comes on top, 6.50: 38.70 more.
  it('with another travel: offered by what it adds; the steps at both ends are done once', async () => {
    const answer = await askDemo({ ...asItIs, wants: { travel: 140 } });
    const offer = answer.offers.find((one) => one.service === 'quennet-onto-bike');
    expect(offer).toMatchObject({ money: '38.70', minutes: 28, days: 0 });
    const plan = onlyPlan(await askDemo({ ...asItIs, wants: { travel: 140, service } }));
    expect([plan.minutes, steps(plan).filter((id) => id === 'quennet-look-over').length]).toEqual([88, 1]);
  });

  it('no bike named: it is not offered, and can be asked for all the same', async () => {
    const { onto: _onto, ontoSize: _size, ...without } = asItIs;
    const answer = await askDemo({ ...without, wants: { travel: 140 } });
    expect(answer.offers.map((one) => one.service)).toEqual(['quennet-lower-leg-service', 'quennet-spring-service']);
    expect(onlyPlan(await askDemo({ ...without, wants: { service } })).minutes).toBe(41);
  });
});
