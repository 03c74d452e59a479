import { describe, expect, it } from 'vitest';
import { askDemo, askIn } from '../../support/ask.ts';
import { loadDemoWith } from '../../support/demo.ts';
import { bought, changes, flagParams, flags, lines, money, onlyPlan } from '../../support/plan-views.ts';
import { QUESTIONS } from './questions.ts';
import { conflicts, members, refused, verdict, waysOut } from './refusals.ts';

describe('recalled serial numbers, fennock-622', () => {
  it('FN20100: nothing is planned, and the notice is the reason', async () => {
    const answer = await askDemo(QUESTIONS.recalled);
    expect(verdict(answer)).toEqual(refused('impossible'));
    expect(conflicts(answer)).toEqual([['notice notice-blocks']]);
    expect(members(answer, 'notice-blocks')[0]).toMatchObject({
      params: { notice: 'ostrell-2023-04' },
      source: { document: 'ostrell-fennock-service', page: 'Notice 2023-04' },
    });
    expect([waysOut(answer), flags(answer)]).toEqual([[], ['blocks notice']]);
  });

  it('without a serial: planned, with what to look up', async () => {
    const answer = await askDemo(QUESTIONS.replaced);
    expect([answer.status, flags(answer)]).toEqual(['answered', ['verify notice-check']]);
    expect(flagParams(answer, 'notice-check')).toMatchObject([
      { notice: 'ostrell-2023-04', serials: 'FN20000 to FN20499', months: null },
    ]);
  });

  it('a serial beside the range, first and last of it: only those within are stopped', async () => {
    for (const [serial, status] of [
      ['FN19999', 'answered'],
      ['FN20000', 'impossible'],
      ['FN20499', 'impossible'],
      ['FN20500', 'answered'],
    ] as const) {
      const answer = await askDemo({ ...QUESTIONS.recalled, serial });
      expect([serial, answer.status]).toEqual([serial, status]);
    }
  });
});

describe('a notice that flags, wolsket-584 of 2024-01 from 200 to 190 mm', () => {
  // 5 + 3 + 9 + 2 + 6 + 7 + 2 + 3 + 10 + 5 + 8 = 60 min 69.00. Cartridge 149.00, one spacer more 3.90, washers 2.60: 155.50. Oil 15 + 20 =
  // 35 mL 7.90, grease 4 g 8.50, alcohol 25 mL 2.90, five towels 1.60, gloves 0.60: 21.50. Total 246.00.
  it('planned, with the notice beside it', async () => {
    const answer = await askDemo(QUESTIONS.notice);
    const plan = onlyPlan(answer);
    expect(changes(plan)).toEqual(['spring: WS-AIR-200 -> WS-AIR-190', 'volume-spacers: WS-VS -> WS-VS*2']);
    expect(bought(plan)).toContain('1 VH-TOWEL-5 x 1.60 = 1.60, 0 days');
    expect(lines(plan, 'reuse')).toEqual(['1 WS-VS']);
    expect([money(plan), plan.minutes, plan.readyInDays]).toEqual([['155.50', '21.50', '69.00', '246.00'], 60, 0]);
    // The stanchions stand out 10 mm as before: 384 + 200 - 10 and 384 + 190 - 10. Cartridge -5 g, spacer +7 g.
    expect(plan.settings).toEqual({ 'stanchion-height': 10 });
    expect(plan.effects).toMatchObject({ axleToCrown: { from: 574, to: 564 }, mass: { from: 2748, to: 2750 } });
    expect(flags(answer)).toEqual(['verify notice']);
    expect(flagParams(answer, 'notice')).toMatchObject([{ notice: 'ketterlune-2024-02' }]);
  });

  it('built after it: no notice', async () => {
    expect(flags(await askDemo({ ...QUESTIONS.notice, built: '2024-04' }))).toEqual([]);
  });
});

describe('two independent conflicts, velquin-622 to 200 mm with VH-W-33', () => {
  // No spring gives 200 mm; the wiper is 43 mm for a seat of 44.5. Both given up, the travel goes to 160 mm: 417.25.
  it('both are shown, and the way out gives up both', async () => {
    const answer = await askDemo(QUESTIONS.twoConflicts);
    expect(verdict(answer)).toEqual(refused('impossible'));
    expect(conflicts(answer)).toEqual([
      ['listing spring-travel', 'want want-travel'],
      ['rule dimension-of-part', 'want want-use'],
    ]);
    expect(waysOut(answer)).toEqual([[['want-travel 200', 'want-use VH-W-33'], '417.25', 67, 0]]);
    expect(answer.refusal?.instead[0]?.wants).toMatchObject({ travel: 160, use: [] });
  });
});

describe('stricter of two issuers, fennock-622 of 2024-02 from 140 to 160 mm with VH-DMP-FN', () => {
  // 150 mm: 124.00 + 189.00 + 1.90 + 1.80 = 316.70, 67 min 77.05, 21.50: 415.25 in 3 days.
  // 160 mm without it: 96.00 + 1.90 + 1.80 = 99.70, 58 min 66.70, 21.50: 187.90.
  it('impossible: its maker allows 150 mm there; 150 with it, or 160 without it', async () => {
    const answer = await askDemo(QUESTIONS.stricterIssuer);
    expect(verdict(answer)).toEqual(refused('impossible'));
    expect(conflicts(answer)).toEqual([['rule part-travel-limit', 'want want-travel', 'want want-use']]);
    expect(waysOut(answer)).toEqual([
      [['want-travel 160'], '415.25', 67, 3],
      [['want-use VH-DMP-FN'], '187.90', 58, 0],
    ]);
  });

  // model.md, section 8: a rule is shown with the record it stands in. The limit stands in the clause of the damper that is asked
  // for, not in the damper that is in the fork and has none.
  it('impossible: the limit is cited from the clause that states it', async () => {
    const [limit] = members(await askDemo(QUESTIONS.stricterIssuer), 'part-travel-limit');
    expect(limit?.source).toEqual({ document: 'varnholt-inserts', page: '9', record: 'parts/VH-DMP-FN#fits[0]' });
  });

  it('150 mm with it: both issuers are shown where they disagree', async () => {
    const plan = onlyPlan(await askDemo(QUESTIONS.withinBothIssuers));
    expect(changes(plan)).toEqual([
      'spring: FN-AIR-140-W -> VH-AIR-FN',
      'volume-spacers: FN-VS*2 -> FN-VS',
      'damper: FN-DMP -> VH-DMP-FN',
    ]);
    expect([money(plan), plan.minutes, plan.readyInDays]).toEqual([['316.70', '21.50', '77.05', '415.25'], 67, 3]);
    expect(flagParams(plan, 'limits-disagree')).toMatchObject([
      { partLeast: '130 mm', partGreatest: '170 mm', chassisLeast: '130 mm', chassisGreatest: '160 mm' },
      { partLeast: '130 mm', partGreatest: '150 mm', chassisLeast: '130 mm', chassisGreatest: '160 mm' },
    ]);
    // Out 8 + 13 + 3, in 8 + 13 + 2: this cartridge wants less on its piston.
    expect(lines(plan, 'waste').at(-1)).toBe('24 mL light bath oil');
    expect(lines(plan, 'use')[0]).toBe('23 mL VH-BATH-L from VH-BATH-L-120');
  });

  it('160 mm without it: no second issuer, no flag', async () => {
    const plan = onlyPlan(await askDemo(QUESTIONS.withoutIssuer));
    expect([money(plan), plan.minutes, plan.readyInDays]).toEqual([['99.70', '21.50', '66.70', '187.90'], 58, 0]);
    expect(flags(plan)).toEqual(['advice hazard', 'verify frame-limit']);
  });
});

/** Another cartridge that gives just what the one in the fork gives. */
const SAME_TRAVEL = `
parts:
  - sku: FN-AIR-160-Z
    maker: ostrell
    name: Fennock air cartridge 160, light shaft
    role: spring
    dimensions: { bore: 29.8 mm, shaft: 9 mm, ring-groove: 1.8 mm }
    interfaces: { spacer-seat: snap-24 }
    traits: { kind: air }
    fits:
      - family: fennock
        travel: 160 mm
        volume-spacers: { standard: 0, greatest: 2 }
        source: { document: ostrell-fennock-service, page: 14 }
    price: "150.00"
`;

// model.md, section 10: what the maker of a damper allows is judged where the damper or anything that sets the travel changes, be the travel the same or not.
describe('a damper beyond what its maker allows is in the fork, fennock-622 of 2024-02 at 160 mm', () => {
  const beyond = {
    chassis: 'fennock-622',
    travelNow: 160,
    built: '2024-02',
    with: { damper: { sku: 'VH-DMP-FN', quantity: 1 } },
  };

  it('another cartridge of the same travel: the damper of the fork maker goes in with it', async () => {
    const loaded = await loadDemoWith({ yaml: SAME_TRAVEL });
    const use = ['FN-AIR-160-Z'];
    expect(changes(onlyPlan(askIn(loaded, { ...beyond, wants: { use } })))).toEqual([
      'spring: FN-AIR-160-W -> FN-AIR-160-Z',
      'damper: VH-DMP-FN -> FN-DMP',
    ]);
    const kept = askIn(loaded, { ...beyond, wants: { use, keep: ['damper'] } });
    expect(verdict(kept)).toEqual(refused('impossible'));
    expect(members(kept, 'part-travel-limit')[0]?.params).toMatchObject({
      sku: 'VH-DMP-FN',
      least: 130,
      greatest: 150,
    });
  });

  it('nothing that sets the travel changes: it is a fact, and stays', async () => {
    const answer = await askDemo({ ...beyond, wants: { service: ['fennock-lower-leg-service'] } });
    expect(answer.plans.map((plan) => plan.build.damper?.sku)).toEqual(answer.plans.map(() => 'VH-DMP-FN'));
    expect(answer.status).toBe('answered');
  });
});
