import { describe, expect, it } from 'vitest';
import { doesFit, type FitAnswer, reach, uses } from '../../../src/plan/index.ts';
import { askDemo, askIn } from '../../support/ask.ts';
import { demoFolder, loadCatalogFolder, loadDemoWith } from '../../support/demo.ts';
import { type PlanDocument, planAt } from '../../support/plan-views.ts';
import { QUESTIONS } from './questions.ts';

const { world } = await loadCatalogFolder(demoFolder);
const cents = (money: string): number => Math.round(Number(money) * 100);

describe('why, quennet-622 from 150 to 130 mm', () => {
  const answer = askDemo({ ...QUESTIONS.shorter, why: true });
  const whys = (plan: PlanDocument, action: string): readonly unknown[] =>
    plan.lines
      .filter((line) => line.action === action)
      .map(({ sku, why }) => [sku, why?.code, why?.against?.code ?? null, why?.against?.params.by ?? null]);

  it('every line that is bought or goes in has a reason, and changes nothing else', async () => {
    const { plans } = await answer;
    for (const plan of plans) {
      for (const { action, why } of plan.lines)
        expect([action, why !== null]).toEqual([action, ['buy', 'install', 'renew', 'use'].includes(action)]);
    }
    const plain = await askDemo(QUESTIONS.shorter);
    expect(plain.plans.map((plan) => plan.lines)).toEqual(
      plans.map((plan) => plan.lines.map((line) => ({ ...line, why: null }))),
    );
  });

  // QN-KIT-OPEN: 1.80 + 1.90 + 7.90 - 9.60 = 2.00. QN-VS: 8.40 - 7.20 = 1.20. Grease: service kit 38.00 - 9.60 - 8.50 = 19.90.
  it('buy: the cheap plan, each line with what it costs to go without', async () => {
    expect(whys(planAt(await answer, 0), 'buy')).toEqual([
      ['QN-AIR-192', 'cheapest-cover', 'without-it-dearer', '3.10'],
      ['QN-KIT-OPEN', 'cheapest-cover', 'without-it-dearer', '2.00'],
      ['QN-VS', 'cheapest-cover', 'without-it-dearer', '1.20'],
      ['VH-GLOVE-2', 'cheapest-cover', 'without-it-dearer', '13.40'],
      ['VH-GREASE-30', 'cheapest-cover', 'without-it-dearer', '19.90'],
      ['VH-IPA-50', 'cheapest-cover', 'without-it-dearer', '2.90'],
      ['VH-LOCK-5', 'cheapest-cover', 'without-it-dearer', '24.10'],
      ['VH-TOWEL-5', 'cheapest-cover', 'without-it-dearer', '9.40'],
    ]);
  });

  // Without the kit: five days. Without the bottle: opening kit 9.60 - 7.90 = 1.70. Grease: 38.00 - 7.90 - 8.50 = 21.60.
  it('buy: the plan of today, where the kit is what makes it soon', async () => {
    const plan = planAt(await answer, 1);
    expect(whys(plan, 'buy').slice(0, 4)).toEqual([
      ['QN-KIT-192', 'soonest-cover', 'without-it-later', null],
      ['VH-BATH-L-120', 'cheapest-cover', 'without-it-dearer', '1.70'],
      ['VH-GLOVE-2', 'cheapest-cover', 'without-it-dearer', '13.40'],
      ['VH-GREASE-30', 'cheapest-cover', 'without-it-dearer', '21.60'],
    ]);
    expect(plan.lines[0]?.why?.against?.params.days).toBe(5);
  });

  it('buy: each difference is what the question costs with that offer gone', async () => {
    for (const plan of (await answer).plans) {
      for (const { action, sku, why } of plan.lines) {
        if (action !== 'buy') continue;
        const gone = askIn(await loadDemoWith({ stock: [`${sku},0,0,discontinued,,,,`] }), QUESTIONS.shorter);
        const days = plan.readyInDays ?? Number.POSITIVE_INFINITY;
        const inTime = gone.plans.filter(({ readyInDays }) => (readyInDays ?? Number.POSITIVE_INFINITY) <= days);
        if (why?.code === 'soonest-cover') {
          expect(inTime).toEqual([]);
          expect(Math.min(...gone.plans.map(({ readyInDays }) => readyInDays ?? Number.POSITIVE_INFINITY))).toBe(
            why.against?.params.days,
          );
        } else {
          const least = Math.min(...inTime.map(({ money }) => cents(money.total)));
          expect([sku, least - cents(plan.money.total)]).toEqual([sku, cents(String(why?.against?.params.by))]);
        }
      }
    }
  });

  // VH-CW-8 is a bag of ten for 5.40, on top of the opening kit that ring and oil still want: 205.70.
  it('install and renew: the nearest other part, and the plan or the rule that stands against it', async () => {
    const plan = planAt(await answer, 0);
    const inSlots = plan.lines.filter(({ action }) => action === 'install' || action === 'renew');
    expect(inSlots.map(({ sku, why }) => [sku, why?.code, why?.against?.code, why?.against?.params.sku])).toEqual([
      ['QN-AIR-192', 'only-one-that-goes', 'spring-travel', 'QN-AIR-212'],
      ['QN-VS', 'only-listed', undefined, undefined],
      ['QN-RING', 'only-listed', undefined, undefined],
      ['QN-CW', 'unbeaten', 'alternative-plan', 'VH-CW-8'],
    ]);
    expect(inSlots.at(-1)?.why?.against?.params).toMatchObject({ money: '205.70', more: '5.40', minutes: 60, days: 5 });
    const other = await askDemo({
      ...QUESTIONS.shorter,
      wants: { ...QUESTIONS.shorter.wants, use: ['VH-CW-8'] },
    });
    expect(planAt(other, 0).money.total).toBe('205.70');
  });

  // answer.ts: a line names the nearest alternative with the one fact against it. Light bath oil is sold by two makers.
  it('use: where another product meets the specification, it is the alternative', async () => {
    const oil = planAt(await answer, 0).lines.find(({ action, sku }) => action === 'use' && sku === 'OS-BATH');
    expect(oil?.why?.code).toBe('meets-specification');
    expect(oil?.why?.against).not.toBeNull();
  });
});

describe('reach, quennet-622 at 150 mm', () => {
  const map = reach(world, { chassis: 'quennet-622', travelNow: 150 });
  if ('faults' in map) throw new Error(JSON.stringify(map.faults));
  const cells = map.rows.flatMap(({ wheel, cells: row }) => row.map((cell) => ({ wheel, ...cell })));

  // 120: 94.00 + three spacers in a bag 8.40 + 9.60, 20.50, 69.00. 160: 98.00 + 168.00 + 9.60, 20.50, 69 min. 584 at 170: lowers 209.00,
  // 98.00, 168.00, service kit 38.00 with grease and oil in it: 513.00, 12.00, 83 min 95.45, nine days.
  it('the map: on 584 what its maker allows, and one travel more by other lowers', () => {
    expect(map.travels).toEqual([120, 130, 140, 150, 160, 170, 180]);
    expect(
      map.rows.map(({ wheel, cells: row }) => [wheel, ...row.map(({ status, plan }) => plan?.money ?? status)]),
    ).toEqual([
      [559, ...Array.from({ length: 7 }, () => 'impossible')],
      [584, '201.50', '200.30', '196.70', expect.anything(), '375.45', '620.45', 'impossible'],
      [622, '201.50', '200.30', '196.70', 'now', '375.45', 'impossible', 'impossible'],
    ]);
  });

  it('every cell is what the question answers when it is asked by itself', async () => {
    for (const { wheel, travel, status, plan } of cells) {
      const alone = await askDemo({ chassis: 'quennet-622', travelNow: 150, wants: { wheel, travel } });
      if (alone.status === 'nothing-to-do') continue;
      const first = alone.plans[0];
      const expected = first
        ? ['reachable', first.money.total, first.minutes, first.readyInDays, first.chassis]
        : [alone.status, undefined, undefined, undefined, undefined];
      expect([wheel, travel, status, plan?.money, plan?.minutes, plan?.days, plan?.chassis]).toEqual([
        wheel,
        travel,
        ...expected,
      ]);
    }
  });

  it('why not: each cell that cannot be has the rule or the kept trait against it', () => {
    for (const { status, why } of cells) expect(why.length > 0).toBe(status === 'impossible');
    const codes = (wheel: number, travel: number): readonly string[] =>
      cells.find((cell) => cell.wheel === wheel && cell.travel === travel)?.why.map(({ code }) => code) ?? [];
    expect([codes(622, 170), codes(559, 140)]).toEqual([['travel-range'], ['kept-trait']]);
  });

  // reach.ts: the plan of a cell is null where there is nothing to do. The fork takes 584 as it is.
  it('584 at 150 mm: there is nothing to do, so there is no plan', () => {
    expect(cells.find(({ wheel, travel }) => wheel === 584 && travel === 150)?.plan).toBeNull();
  });
});

describe('fit', () => {
  const judged = (
    part: string,
    chassis: string,
    more: { readonly serial?: string; readonly built?: string } = {},
  ): FitAnswer => {
    const answer = doesFit(world.catalog, { part, chassis, ...more });
    if ('faults' in answer) throw new Error(JSON.stringify(answer.faults));
    return answer;
  };

  it('no, with both values: closed length, ring groove', () => {
    for (const [answer, own, other] of [
      [judged('VQ-DMP-172', 'velquin-584'), '270 mm', '262 mm'],
      [judged('FN-AIR-160-W', 'fennock-622', { serial: 'FN30000' }), '1.8 mm', '1.4 mm'],
    ] as const) {
      expect(answer.verdict).toBe('no');
      expect(answer.reasons).toMatchObject([{ code: 'dimension-contradicts', params: { own, other } }]);
    }
  });

  it('no, because of the generation or the maker', () => {
    expect(judged('FN-RING-N', 'fennock-622', { built: '2024-02' }).reasons.map(({ code }) => code)).toEqual([
      'other-generation',
    ]);
    expect(judged('AR-AIR', 'arbrask-584').reasons).toMatchObject([
      { code: 'denied', params: { reason: expect.stringContaining('drawn and not honed') } },
    ]);
  });

  it('fits if: the generation, the cap, no coil beside it; and what it gives', () => {
    const open = judged('FN-RING-N', 'fennock-622');
    expect([open.verdict, open.conditions.map(({ code }) => code)]).toEqual(['fits-if', ['condition-generation']]);
    const air = judged('AR-AIR', 'arbrask-622');
    expect([air.verdict, air.conditions.map(({ code }) => code)]).toEqual([
      'fits-if',
      ['condition-needs-slot', 'condition-excludes'],
    ]);
    expect(air.gives).toEqual({ travels: [170], volumeSpacers: [{ travel: null, standard: 1, greatest: 3 }] });
  });

  it('a strange serial is doubt: serial and month contradict, and both generations stay possible', () => {
    const answer = judged('FN-RING-N', 'fennock-622', { serial: 'FN60000', built: '2020-01' });
    expect(answer.verdict).toBe('fits-if');
  });

  it('replaced: says by what, and that what is left may be used', () => {
    expect(judged('FN-AIR-140-W', 'fennock-622', { built: '2024-02' }).conditions).toContainEqual({
      code: 'condition-replaced',
      params: { by: ['FN-AIR-140-WL'], usable: true },
      source: { document: 'ostrell-fennock-service', page: '15', record: 'parts/FN-AIR-140-W#replaced-by[0]' },
    });
  });

  // A chassis has one pair of lowers and one upper (model.md, section 1), and their seat and thread agree: nothing is left open.
  it('fits: what the chassis itself settles is no condition', () => {
    for (const [part, chassis] of [
      ['VH-W-33', 'quennet-622'],
      ['QN-CAP', 'quennet-622'],
      ['FN-W', 'velquin-622'],
    ] as const)
      expect([part, judged(part, chassis).verdict, judged(part, chassis).conditions]).toEqual([part, 'fits', []]);
  });
});

describe('uses', () => {
  const used = (sku: string) => {
    const answer = uses(world.catalog, sku);
    if ('faults' in answer) throw new Error(JSON.stringify(answer.faults));
    return answer;
  };

  it('a cartridge: another travel by wheel, one factory build, one kit', () => {
    const { fits, builds, kits, bikes } = used('QN-AIR-192');
    expect(fits.map(({ chassis, travels }) => [chassis, travels])).toEqual([
      ['quennet-559', [150]],
      ['quennet-584', [140]],
      ['quennet-622', [130]],
    ]);
    expect(builds).toEqual([{ chassis: 'quennet-559', travel: 150, slot: 'spring', quantity: 1 }]);
    expect([kits.map(({ sku, quantity }) => [sku, quantity]), bikes]).toEqual([[['QN-KIT-192', 1]], []]);
  });

  it('a replaced number and its replacement point at each other', () => {
    expect([used('FN-AIR-140-W').replacedBy, used('FN-AIR-140-WL').replaces]).toEqual([
      ['FN-AIR-140-WL'],
      ['FN-AIR-140-W'],
    ]);
  });

  it('a star nut fits no slot: what needs it is listed', () => {
    const { fits, neededBy } = used('ST-STARNUT');
    expect(fits).toEqual([]);
    // every upper of the families with aluminium or steel steerers that are here, and the one steerer sold singly
    expect(neededBy).toEqual(
      expect.arrayContaining([
        ...['AR-U-46', 'AR-U-51', 'BR-U-42', 'FN-U-44', 'LM-U-45', 'OD-U-46', 'QN-U-40', 'QN-U-44', 'QN-U-44-S'],
        ...['TD-U-38', 'VQ-U-44', 'WS-STEER'],
      ]),
    );
  });

  it('a rotor: the bikes it left the works on', () => {
    expect(used('ST-RT-180').bikes.map(({ id, slot }) => `${id} ${slot}`)).toEqual([
      'dallowick-brannig rotor',
      'dallowick-morrin rotor',
      'dallowick-querrel rotor',
      'quilland-dorrin rotor',
      'quilland-vorrel rotor',
    ]);
  });

  it('silence: a part that no clause names is used nowhere', () => {
    expect(used('VH-W-33-FL').fits).toEqual([]);
  });
});
