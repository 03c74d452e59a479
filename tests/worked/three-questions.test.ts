import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import type { QuestionInput } from '../../src/plan/index.ts';
import { askIn } from '../support/ask.ts';
import { loadCatalogFolder } from '../support/demo.ts';
import {
  amounts,
  bought,
  builtIn,
  changes,
  flagParams,
  flags,
  lines,
  money,
  onlyPlan,
  planAt,
  steps,
  torques,
} from '../support/plan-views.ts';

// Every number here was worked out on paper in docs/model.md, section 9, and typed in.
const paper = loadCatalogFolder(fileURLToPath(new URL('./paper', import.meta.url)));
const askPaper = async (question: Partial<QuestionInput>) =>
  askIn(await paper, { chassis: 'ombry-622', travelNow: 120, ...question });

const SHORTER_STEPS = [
  'ombry-start',
  'ombry-lowers-off',
  'ombry-cap-off',
  'ombry-spring',
  'ombry-spacers',
  'ombry-cap-on',
  'ombry-lowers-on',
  'ombry-finish',
];

describe('9.1 shorter: a kit against singles', () => {
  const answer = askPaper({ wants: { travel: 100 } });

  it('now: the one factory build at 120 mm, nothing assumed', async () => {
    const { status, complete, now, flags: found } = await answer;
    expect([status, complete, found.length]).toEqual(['answered', true, 0]);
    expect(now.build).toEqual({
      upper: { sku: 'OM-U', quantity: 1 },
      lowers: { sku: 'OM-L-622', quantity: 1 },
      spring: { sku: 'OM-S-20', quantity: 1 },
      'volume-spacers': { sku: 'OM-V', quantity: 1 },
      damper: { sku: 'OM-D-130', quantity: 1 },
      wipers: { sku: 'OM-W', quantity: 2 },
      'foot-seals': { sku: 'OM-C', quantity: 2 },
    });
  });

  it('work: the same slots, steps and minutes in both plans', async () => {
    const { plans } = await answer;
    expect(plans.length).toBe(2);
    for (const plan of plans) {
      expect(changes(plan)).toEqual(['spring: OM-S-20 -> OM-S-10', 'volume-spacers: OM-V -> OM-V*2']);
      expect(builtIn(plan, 'damper')).toBe('OM-D-130');
      expect(steps(plan)).toEqual(SHORTER_STEPS);
      expect(plan.steps.map(({ minutes }) => minutes)).toEqual([5, 10, 2, 10, 3, 5, 10, 5]);
      expect(amounts(plan, 'bath')).toEqual([
        'ombry-lowers-off: drain 5 mL left',
        'ombry-lowers-off: drain 10 mL right',
        'ombry-lowers-on: use 5 mL left',
        'ombry-lowers-on: use 10 mL right',
      ]);
      expect(amounts(plan, 'grease')).toEqual(['ombry-spring: use 2 g', 'ombry-cap-on: use 1 g']);
      expect(torques(plan)).toEqual([
        'ombry-cap-on: top cap left (spring) 25 N·m',
        'ombry-lowers-on: foot bolt left (spring) 6 N·m',
        'ombry-lowers-on: foot bolt right (damper) 8 N·m',
      ]);
      expect(lines(plan, 'reuse')).toEqual(['1 OM-V']);
      expect(lines(plan, 'remove')).toEqual(['1 OM-S-20']);
      expect(lines(plan, 'waste')).toEqual(['2 OM-C', '15 mL bath oil']);
      expect(plan.effects.axleToCrown).toEqual({ from: 520, to: 500, unit: 'mm', measured: 'along-steerer' });
      expect(plan.effects.mass).toEqual({ from: 1717, to: 1712, unit: 'g' });
    }
  });

  it('front: 108.00 in four days and 116.00 today, with their labels', async () => {
    const { plans } = await answer;
    expect(
      plans.map((plan) => [money(plan), plan.minutes, plan.readyInDays, plan.money.unpriced, plan.unknowns]),
    ).toEqual([
      [['52.00', '6.00', '50.00', '108.00'], 50, 4, 0, 0],
      [['52.00', '14.00', '50.00', '116.00'], 50, 0, 0, 0],
    ]);
    expect(plans.map(({ label }) => label)).toEqual([['recommended', 'cheapest', 'quickest'], ['soonest']]);
    expect(plans.map(flags)).toEqual([['advice waiting'], []]);
    expect(flagParams(planAt(await answer, 0), 'waiting')).toEqual([{ sku: 'OM-S-10', days: 4, onShelf: 0, packs: 1 }]);
  });

  it('purchases: singles with the opening kit, or the cartridge kit with a bottle', async () => {
    const found = await answer;
    expect(bought(planAt(found, 0))).toEqual([
      '1 OM-GLOVE-2 x 1.00 = 1.00, 0 days',
      '1 OM-GREASE-10 x 5.00 = 5.00, 0 days, left 7 g OM-GREASE',
      '1 OM-K-OPEN x 9.00 = 9.00, 0 days, left 5 mL OM-OIL',
      '1 OM-S-10 x 40.00 = 40.00, 4 days',
      '1 OM-V x 3.00 = 3.00, 0 days',
    ]);
    expect(bought(planAt(found, 1))).toEqual([
      '1 OM-GLOVE-2 x 1.00 = 1.00, 0 days',
      '1 OM-GREASE-10 x 5.00 = 5.00, 0 days, left 7 g OM-GREASE',
      '1 OM-K-10 x 52.00 = 52.00, 0 days, left 1 OM-V',
      '1 OM-OIL-100 x 8.00 = 8.00, 0 days, left 85 mL OM-OIL',
    ]);
  });

  it('offer: the service adds 17.00 and ten minutes', async () => {
    expect((await answer).offers).toEqual([
      { service: 'ombry-lower-leg', name: 'Lower-leg service', money: '17.00', minutes: 10, days: 4, atLeast: false },
    ]);
  });
});

describe('9.2 too long: a refusal', () => {
  const answer = askPaper({ wants: { travel: 150 } });

  it('conflict: the wish, the wheel and the range, smallest', async () => {
    const { status, complete, plans, refusal } = await answer;
    expect([status, complete, plans.length]).toEqual(['impossible', true, 0]);
    expect(refusal?.smallest).toBe(true);
    expect(
      refusal?.conflicts.map((members) => members.map(({ kind, code, params }) => ({ kind, code, params }))),
    ).toEqual([
      [
        { kind: 'want', code: 'want-travel', params: { travel: 150 } },
        { kind: 'kept', code: 'kept-trait', params: { trait: 'wheel', value: '622' } },
        { kind: 'rule', code: 'travel-range', params: { chassis: 'Ombry 622', least: 100, greatest: 140 } },
      ],
    ]);
    expect(refusal?.conflicts[0]?.[2]?.source).toEqual({ document: 'paper', page: '2', record: 'chassis/ombry-622' });
  });

  it('ways out: 140 mm for 193.00, or the other wheel for 305.00, and no other', async () => {
    const { refusal } = await answer;
    expect(refusal?.complete).toBe(true);
    expect(
      refusal?.instead.map(({ drop, wants, money: price, minutes, days }) => [
        drop.map(({ code, params }) => ({ code, params })),
        { travel: wants.travel, wheel: wants.wheel },
        price,
        minutes,
        days,
      ]),
    ).toEqual([
      [[{ code: 'want-travel', params: { travel: 150 } }], { travel: 140, wheel: undefined }, '193.00', 58, 6],
      [
        [{ code: 'kept-trait', params: { trait: 'wheel', value: '622', becomes: '584' } }],
        { travel: 150, wheel: 584 },
        '305.00',
        68,
        6,
      ],
    ]);
  });

  it('140 mm: spring, spacer and damper change, 193.00', async () => {
    const plan = onlyPlan(await askPaper({ wants: { travel: 140 } }));
    expect(changes(plan)).toEqual([
      'spring: OM-S-20 -> OM-S-30',
      'volume-spacers: OM-V -> -',
      'damper: OM-D-130 -> OM-D-150',
    ]);
    expect(money(plan)).toEqual(['129.00', '6.00', '58.00', '193.00']);
    expect([plan.minutes, plan.readyInDays]).toEqual([58, 6]);
    expect(flags(plan)).toEqual(['advice waiting', 'verify damper-length-not-known', 'verify frame-limit']);
  });

  it('other wheel: lowers and wipers come along, 305.00', async () => {
    const plan = onlyPlan(await askPaper({ wants: { travel: 150, wheel: 584 } }));
    expect(plan.chassis).toBe('ombry-584');
    expect(changes(plan)).toEqual([
      'lowers: OM-L-622 -> OM-L-584',
      'spring: OM-S-20 -> OM-S-30',
      'volume-spacers: OM-V -> -',
      'damper: OM-D-130 -> OM-D-150',
    ]);
    expect(steps(plan)).toEqual([
      'ombry-start',
      'ombry-lowers-off',
      'ombry-cap-off',
      'ombry-spring',
      'ombry-damper',
      'ombry-spacers',
      'ombry-cap-on',
      'ombry-wipers',
      'ombry-lowers-on',
      'ombry-finish',
    ]);
    expect(amounts(plan, 'bath')).toEqual([
      'ombry-lowers-off: drain 5 mL left',
      'ombry-lowers-off: drain 10 mL right',
      'ombry-wipers: use 5 mL',
      'ombry-lowers-on: use 5 mL left',
      'ombry-lowers-on: use 5 mL right',
    ]);
    expect(money(plan)).toEqual(['231.00', '6.00', '68.00', '305.00']);
    expect([plan.minutes, plan.readyInDays]).toEqual([68, 6]);
    expect(plan.effects.axleToCrown).toMatchObject({ from: 520, to: 535 });
    expect(plan.effects.mass).toEqual({ from: 1717, to: 1722, unit: 'g' });
    expect(flags(plan)).toEqual(['advice waiting', 'verify damper-length-not-known', 'verify frame-limit']);
  });
});

describe('9.3 a service, one spacer more, oil from the drum', () => {
  const answer = askPaper({
    wants: { spacers: 2, service: ['ombry-lower-leg'] },
    supplies: 'bulk',
    have: [{ sku: 'OM-C', quantity: 2, used: true }],
  });

  it('work: the steps of the service and the cap, in one order, 50 minutes', async () => {
    const plan = onlyPlan(await answer);
    expect(changes(plan)).toEqual(['volume-spacers: OM-V -> OM-V*2']);
    expect(steps(plan)).toEqual([
      'ombry-start',
      'ombry-lowers-off',
      'ombry-cap-off',
      'ombry-spacers',
      'ombry-cap-on',
      'ombry-wipers',
      'ombry-lowers-on',
      'ombry-finish',
    ]);
    expect([plan.minutes, plan.readyInDays]).toEqual([50, 0]);
  });

  it('money: flat and hourly labour, oil by what is used, 70.00', async () => {
    const plan = onlyPlan(await answer);
    expect(money(plan)).toEqual(['17.00', '8.00', '45.00', '70.00']);
    expect(bought(plan)).toEqual([
      '2 OM-C x 1.00 = 2.00, 0 days',
      '1 OM-GLOVE-2 x 1.00 = 1.00, 0 days',
      '1 OM-GREASE-10 x 5.00 = 5.00, 0 days, left 9 g OM-GREASE',
      '1 OM-V x 3.00 = 3.00, 0 days',
      '2 OM-W x 6.00 = 12.00, 0 days',
    ]);
    expect(lines(plan, 'use')).toContain('20 mL OM-OIL = 2.00');
    expect(plan.label).toEqual(['recommended', 'cheapest', 'quickest', 'soonest']);
  });

  it('old and new: used washers stay on the bench, one spacer goes back', async () => {
    const plan = onlyPlan(await answer);
    expect(lines(plan, 'take')).toEqual([]);
    expect(lines(plan, 'install')).toEqual(['1 OM-V from OM-V']);
    expect(lines(plan, 'renew')).toEqual(['2 OM-W from OM-W', '2 OM-C from OM-C']);
    expect(lines(plan, 'reuse')).toEqual(['1 OM-V']);
    expect(lines(plan, 'remove')).toEqual(['2 OM-W']);
    expect(lines(plan, 'waste')).toEqual(['2 OM-C', '15 mL bath oil']);
    expect(plan.effects.axleToCrown).toMatchObject({ from: 520, to: 520 });
    expect(plan.effects.mass).toEqual({ from: 1717, to: 1722, unit: 'g' });
    expect(flags(plan)).toEqual(['advice spacers-off-standard']);
    expect(flagParams(plan, 'spacers-off-standard')).toEqual([{ count: 2, standard: 1, greatest: 2, travel: 120 }]);
  });
});
