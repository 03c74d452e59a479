import { describe, expect, it } from 'vitest';
import { askDemo, askIn } from '../../support/ask.ts';
import { loadDemoWith } from '../../support/demo.ts';
import { bought, changes, flagParams, flags, lines, money, onlyPlan, planAt } from '../../support/plan-views.ts';
import { QUESTIONS } from './questions.ts';

// Both plans of quennet-622 from 150 to 130 mm are reckoned line by line in ../shorten-by-cartridge.test.ts.
const cheap = [['110.80', '20.50', '69.00', '200.30'], 60];
const today = [['106.00', '28.40', '69.00', '203.40'], 60, 0];

describe('today and dear against five days and cheap, quennet-622 from 150 to 130 mm', () => {
  // Singles: 94.00 + 7.20 + opening kit 9.60. Kit: 106.00, with oil 7.90 beside it: 3.10 more, and on the shelf.
  it('both are shown, kit against singles', async () => {
    const { plans } = await askDemo(QUESTIONS.shorter);
    expect(plans.map((plan) => [money(plan), plan.minutes, plan.readyInDays, plan.label])).toEqual([
      [...cheap, 5, ['recommended', 'cheapest', 'quickest']],
      [...today, ['soonest']],
    ]);
    expect(plans.map((plan) => bought(plan)[0])).toEqual([
      '1 QN-AIR-192 x 94.00 = 94.00, 5 days',
      '1 QN-KIT-192 x 106.00 = 106.00, 0 days, left 1 QN-VS',
    ]);
  });

  // Singles on the shelf: no worse anywhere than the kit, so the kit is not shown.
  it('the single is released: the kit is beaten', async () => {
    const loaded = await loadDemoWith({ stock: ['QN-AIR-192,1,0,active,5,,,A2-2'] });
    const plan = onlyPlan(askIn(loaded, QUESTIONS.shorter));
    expect([money(plan), plan.minutes, plan.readyInDays]).toEqual([...cheap, 0]);
    expect(flags(plan)).toEqual(['advice hazard', 'advice hazard']);
  });

  // A kit at 100.00 with oil beside it: 107.90 against 110.80, today: 197.40.
  it('a cheaper kit: the singles are beaten', async () => {
    const loaded = await loadDemoWith({ stock: ['QN-KIT-192,1,0,active,5,100.00,EUR,S2-5'] });
    const plan = onlyPlan(askIn(loaded, QUESTIONS.shorter));
    expect([money(plan), plan.readyInDays]).toEqual([['100.00', '28.40', '69.00', '197.40'], 0]);
  });

  it('reserved: what is promised is not there, so the kit is no sooner', async () => {
    const loaded = await loadDemoWith({ stock: ['QN-KIT-192,1,1,active,5,,,S2-5'] });
    const plan = onlyPlan(askIn(loaded, QUESTIONS.shorter));
    expect([money(plan), plan.minutes, plan.readyInDays]).toEqual([...cheap, 5]);
    expect(flagParams(plan, 'waiting')).toEqual([{ sku: 'QN-AIR-192', days: 5, onShelf: 0, packs: 1 }]);
  });

  it('unknown delivery date: no number is made up, and it ranks after every number', async () => {
    const loaded = await loadDemoWith({ stock: ['QN-AIR-192,0,0,active,unknown,,,A2-2'] });
    const answer = askIn(loaded, QUESTIONS.shorter);
    expect(answer.plans.map((plan) => [money(plan), plan.minutes, plan.readyInDays, plan.label])).toEqual([
      [...cheap, null, ['recommended', 'cheapest', 'quickest']],
      [...today, ['soonest']],
    ]);
    expect(flagParams(planAt(answer, 0), 'date-not-known')).toEqual([{ sku: 'QN-AIR-192' }]);
    expect(answer.offers.map(({ days }) => days)).toEqual([null, null]);
  });

  it('unknown date and waiting first: the one that is there is recommended', async () => {
    const loaded = await loadDemoWith({ stock: ['QN-AIR-192,0,0,active,unknown,,,A2-2'] });
    const { plans } = askIn(loaded, { ...QUESTIONS.shorter, prefer: 'wait' });
    expect(plans.map((plan) => plan.money.total)).toEqual(['203.40', '200.30']);
  });
});

describe('service with the change, quennet-622 to 130 mm with its lower-leg service', () => {
  // Flat 49.00 and 2 + 6 + 7 + 2 + 3 = 20 min 23.00: 72.00. Oil 25 + 6 = 31 mL: more than an opening kit holds.
  // 94.00 + 7.20 + ring 1.90 + VH-KIT-33 21.00 = 124.10. 20.50 + bottle 7.90 = 28.40. Total 224.50.
  // Today: 106.00 + VH-W-33 13.80 + QN-F 6.40 = 126.20. Total 226.60.
  it('the service is flat, the rest by the hour, shared steps are done once', async () => {
    const answer = await askDemo(QUESTIONS.shorterWithService);
    expect(answer.plans.map((plan) => [money(plan), plan.minutes, plan.readyInDays])).toEqual([
      [['124.10', '28.40', '72.00', '224.50'], 70, 5],
      [['126.20', '28.40', '72.00', '226.60'], 70, 0],
    ]);
    expect(changes(planAt(answer, 0))).toEqual([
      'spring: QN-AIR-212 -> QN-AIR-192',
      'volume-spacers: QN-VS -> QN-VS*3',
      'wipers: QN-W*2 -> VH-W-33*2',
      'foam-rings: QN-F*2 -> VH-F-33*2',
      'foot-seals: QN-CW*2 -> VH-CW-8*2',
    ]);
    expect(lines(planAt(answer, 1), 'renew')).toEqual([
      '2 VH-W-33 from VH-W-33',
      '2 QN-F from QN-F',
      '1 QN-RING from QN-KIT-192',
      '2 QN-CW from QN-KIT-192',
    ]);
    expect(answer.offers.map(({ service, money: more }) => [service, more])).toEqual([
      ['quennet-spring-service', '1.20'],
    ]);
  });
});
