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
  planAt,
  steps,
  torques,
} from '../support/plan-views.ts';

const answer = askDemo({ chassis: 'quennet-622', travelNow: 150, wants: { travel: 130 } });

describe('shorten by cartridge, quennet-622 from 150 to 130 mm', () => {
  // 130 mm in a 622 wheel: QN-AIR-192, standard 3 volume spacers. There is 1, so 2 are bought and 1 goes back.
  it('build: the other cartridge brings its own count of volume spacers, one is used again', async () => {
    const { status, complete, plans } = await answer;
    expect([status, complete, plans.length]).toEqual(['answered', true, 2]);
    for (const plan of plans) {
      expect(changes(plan)).toEqual(['spring: QN-AIR-212 -> QN-AIR-192', 'volume-spacers: QN-VS -> QN-VS*3']);
      expect(lines(plan, 'reuse')).toEqual(['1 QN-VS']);
      expect(lines(plan, 'remove')).toEqual(['1 QN-AIR-212']);
      expect(plan.unknowns).toBe(0);
    }
  });

  // look over 5, air 3, dial off 1, lowers off 8, cap off 2, out 6, in 7, spacers 2, cap on 3, lowers on 9, dial on 1,
  // inflate 5, hand over 8: 60 min.
  it('steps: what the cartridge asks for is done in this order, in 60 minutes', async () => {
    for (const plan of (await answer).plans) {
      expect(steps(plan)).toEqual([
        'quennet-look-over',
        'quennet-air-out',
        'quennet-adjuster-off',
        'quennet-lowers-off',
        'quennet-cap-off',
        'quennet-spring-out',
        'quennet-spring-in',
        'quennet-volume-spacers',
        'quennet-cap-on',
        'quennet-lowers-on',
        'quennet-adjuster-on',
        'quennet-inflate',
        'quennet-hand-over',
      ]);
      expect(plan.minutes).toBe(60);
    }
  });

  it('torques: left and right foot bolt differ, and every fastener has its own', async () => {
    expect(torques(planAt(await answer, 0))).toEqual([
      'quennet-cap-on: top cap left (spring) 22 N·m greased',
      'quennet-lowers-on: foot bolt left (spring) 6.5 N·m dry',
      'quennet-lowers-on: foot bolt right (damper) 8 N·m dry',
      'quennet-adjuster-on: dial screw right (damper) 1.2 N·m threadlocked',
      'quennet-hand-over: wheel axle null (null) 13 N·m greased',
      'quennet-hand-over: calliper bolt null (null) 8 N·m greased',
    ]);
    const fullyExtended = planAt(await answer, 0).steps.flatMap(({ fasteners }) =>
      fasteners.filter(({ position }) => position === 'fully extended').map(({ name, side }) => `${name} ${side}`),
    );
    expect(fullyExtended).toEqual(['foot bolt left', 'foot bolt right']);
  });

  // Out: bath 8 + 14, on the old piston 3: 25 mL. In: on the new piston 3, bath 8 + 14: 25 mL.
  it('oil: each leg and the chamber get their dose, and what was in runs out', async () => {
    const plan = planAt(await answer, 0);
    expect(amounts(plan, 'light-bath')).toEqual([
      'quennet-lowers-off: drain 8 mL left',
      'quennet-lowers-off: drain 14 mL right',
      'quennet-spring-out: drain 3 mL',
      'quennet-spring-in: use 3 mL',
      'quennet-lowers-on: use 8 mL left',
      'quennet-lowers-on: use 14 mL right',
    ]);
    expect(lines(plan, 'waste')).toEqual(['1 QN-RING', '2 QN-CW', '25 mL light bath oil']);
  });

  // Grease 2 + 0.5 + 1 = 3.5 g; alcohol 10 + 10 = 20 mL; towels 4; gloves 2; threadlocker 0.1 mL.
  // QN-AIR-192: 1 on hand, 1 reserved, so 5 days. 94.00 + 2 x 3.60 = 101.20. Washers, ring and 25 mL of oil: the opening
  // kit (9.60, 30 mL in it, 5 left) beats 2 x 0.90 + 1.90 + the cheapest bottle 7.90 = 11.60. Parts 110.80.
  // Supplies 0.60 + 8.50 + 2.90 + 6.90 + 1.60 = 20.50. Labour 60 min at 69.00: 69.00. Total 200.30.
  it('cheapest: cartridge in five days, opening kit for washers, ring and oil, 200.30', async () => {
    const plan = planAt(await answer, 0);
    expect(plan.label).toEqual(['recommended', 'cheapest', 'quickest']);
    expect(bought(plan)).toEqual([
      '1 QN-AIR-192 x 94.00 = 94.00, 5 days',
      '1 QN-KIT-OPEN x 9.60 = 9.60, 0 days, left 5 mL OS-BATH',
      '2 QN-VS x 3.60 = 7.20, 0 days',
      '1 VH-GLOVE-2 x 0.60 = 0.60, 0 days',
      '1 VH-GREASE-30 x 8.50 = 8.50, 0 days, left 26.5 g VH-GREASE',
      '1 VH-IPA-50 x 2.90 = 2.90, 0 days, left 30 mL VH-IPA',
      '1 VH-LOCK-5 x 6.90 = 6.90, 0 days, left 4.9 mL VH-LOCK',
      '1 VH-TOWEL-5 x 1.60 = 1.60, 0 days, left 1 VH-TOWEL',
    ]);
    expect(lines(plan, 'install')).toEqual(['1 QN-AIR-192 from QN-AIR-192', '2 QN-VS from QN-VS']);
    expect(lines(plan, 'renew')).toEqual(['1 QN-RING from QN-KIT-OPEN', '2 QN-CW from QN-KIT-OPEN']);
    expect([...lines(plan, 'use')].sort()).toEqual([
      '0.1 mL VH-LOCK from VH-LOCK-5',
      '2 VH-GLOVE from VH-GLOVE-2',
      '20 mL VH-IPA from VH-IPA-50',
      '25 mL OS-BATH from QN-KIT-OPEN',
      '3.5 g VH-GREASE from VH-GREASE-30',
      '4 VH-TOWEL from VH-TOWEL-5',
    ]);
    expect(money(plan)).toEqual(['110.80', '20.50', '69.00', '200.30']);
    expect(plan.readyInDays).toBe(5);
    expect(plan.money).toMatchObject({ atLeast: false, unpriced: 0, currency: 'EUR' });
    // 19 parts of 119 of 200.30: 31.98
    expect(plan.money.tax).toEqual({ rate: 19, included: true, amount: '31.98' });
  });

  // The cartridge kit is on hand: 106.00 with 3 spacers (1 left), ring and washers, but no oil: bottle 7.90, 95 mL left.
  // Supplies 7.90 + 20.50 = 28.40. Total 106.00 + 28.40 + 69.00 = 203.40, today.
  it('soonest: the cartridge kit is on the shelf and costs 3.10 more', async () => {
    const plan = planAt(await answer, 1);
    expect(plan.label).toEqual(['soonest']);
    expect(bought(plan).slice(0, 2)).toEqual([
      '1 QN-KIT-192 x 106.00 = 106.00, 0 days, left 1 QN-VS',
      '1 VH-BATH-L-120 x 7.90 = 7.90, 0 days, left 95 mL VH-BATH-L',
    ]);
    expect(money(plan)).toEqual(['106.00', '28.40', '69.00', '203.40']);
    expect([plan.minutes, plan.readyInDays]).toEqual([60, 0]);
  });

  // Axle-to-crown 388 + 150 and 388 + 130. Mass before: 762 + 604 + 188 + 5 + 21 + 214 + 16 + 4 + 1 + 2 + 2 = 1819 g;
  // after: cartridge 8 g lighter, two spacers 10 g heavier: 1821 g.
  it('effects: axle-to-crown falls with travel, mass is what the parts weigh', async () => {
    const { effects } = planAt(await answer, 0);
    expect(effects.travel).toEqual({ from: 150, to: 130, unit: 'mm' });
    expect(effects.axleToCrown).toEqual({ from: 538, to: 518, unit: 'mm', measured: 'along-steerer' });
    expect(effects.mass).toEqual({ from: 1819, to: 1821, unit: 'g' });
  });

  it('flags: the damper is assumed, the cartridge is waited for, two supplies are hazardous', async () => {
    const found = await answer;
    expect(flags(found)).toEqual(['verify now-assumed']);
    expect(flagParams(found, 'now-assumed')).toEqual([
      { slot: 'damper', held: 'QN-DMP-155*1', others: ['damper=QN-DMP-185*1'] },
    ]);
    const plan = planAt(found, 0);
    expect(flags(plan)).toEqual(['advice hazard', 'advice hazard', 'advice waiting']);
    expect(flagParams(plan, 'waiting')).toEqual([{ sku: 'QN-AIR-192', days: 5, onShelf: 0, packs: 1 }]);
    expect(flags(planAt(found, 1))).toEqual(['advice hazard', 'advice hazard']);
  });

  // Lower-leg service: flat 49.00 for its steps; cap off 2, out 6, in 7, spacers 2, cap on 3 = 20 min by the hour, 23.00:
  // labour 72.00. Oil 25 + 6 = 31 mL, more than an opening kit holds. 94.00 + 7.20 + VH-KIT-33 21.00 + ring 1.90 +
  // bottle 7.90 + 20.50 + 72.00 = 224.50, that is 24.20 more, 10 min more (wipers).
  // Spring service: only the cap's O-ring is new, 1.20; its steps are done anyway.
  it('offers: each service says what it adds to the recommended plan', async () => {
    expect((await answer).offers).toEqual([
      {
        service: 'quennet-lower-leg-service',
        name: 'Lower-leg service',
        money: '24.20',
        minutes: 10,
        days: 5,
        atLeast: false,
      },
      { service: 'quennet-spring-service', name: 'Spring service', money: '1.20', minutes: 0, days: 5, atLeast: false },
    ]);
  });

  it('preference: waiting first turns the list round and changes nothing else', async () => {
    const waiting = await askDemo({ chassis: 'quennet-622', travelNow: 150, wants: { travel: 130 }, prefer: 'wait' });
    expect(waiting.plans.map((plan) => [plan.money.total, plan.label])).toEqual([
      ['203.40', ['recommended', 'quickest', 'soonest']],
      ['200.30', ['cheapest']],
    ]);
  });
});
