import { describe, expect, it } from 'vitest';
import type { FaultCode, QuestionInput } from '../../src/plan/index.ts';
import { askDemo, faultsDemo } from '../support/ask.ts';
import { bought, changes, flagParams, flags, lines, money, onlyPlan } from '../support/plan-views.ts';

describe('now, where no factory build has that travel', () => {
  // quennet-584 left the works at 160 mm only. 150 mm there is QN-AIR-202 with 2 volume spacers; the damper stays 175.
  it('derived: the one spring that gives it is put in, with its volume spacers, and that is said', async () => {
    const found = await askDemo({ chassis: 'quennet-584', travelNow: 150, wants: { travel: 160 } });
    expect(found.now.build).toMatchObject({
      spring: { sku: 'QN-AIR-202', quantity: 1 },
      'volume-spacers': { sku: 'QN-VS', quantity: 2 },
      damper: { sku: 'QN-DMP-175', quantity: 1 },
    });
    expect(flags(found)).toEqual(['verify now-derived']);
    expect(flagParams(found, 'now-derived')).toEqual([
      { travel: 150, spring: 'QN-AIR-202', chassis: 'Quennet for 584 wheels' },
    ]);
  });

  // To 160 mm: QN-AIR-212, 1 spacer. Oil 3 + 7 + 12 = 22 mL. 94.00 + opening kit 9.60 = 103.60; + 20.50 + 69.00 = 193.10.
  // Axle-to-crown 374 + 150 = 524, 374 + 160 = 534. Mass 762 + 588 + 184 + 10 + 21 + 222 + 16 + 4 + 1 + 2 + 2 = 1812.
  it('derived: the plan counts from it, one spacer goes back and one to the customer', async () => {
    const plan = onlyPlan(await askDemo({ chassis: 'quennet-584', travelNow: 150, wants: { travel: 160 } }));
    expect(changes(plan)).toEqual(['spring: QN-AIR-202 -> QN-AIR-212', 'volume-spacers: QN-VS*2 -> QN-VS']);
    expect(lines(plan, 'reuse')).toEqual(['1 QN-VS']);
    expect(lines(plan, 'remove')).toEqual(['1 QN-AIR-202', '1 QN-VS']);
    expect(lines(plan, 'waste')).toEqual(['1 QN-RING', '2 QN-CW', '22 mL light bath oil']);
    expect(bought(plan).slice(0, 2)).toEqual([
      '1 QN-AIR-212 x 94.00 = 94.00, 0 days',
      '1 QN-KIT-OPEN x 9.60 = 9.60, 0 days, left 8 mL OS-BATH',
    ]);
    expect([money(plan), plan.minutes, plan.readyInDays]).toEqual([['103.60', '20.50', '69.00', '193.10'], 60, 0]);
    expect(plan.effects.axleToCrown).toMatchObject({ from: 524, to: 534 });
    expect(plan.effects.mass).toEqual({ from: 1812, to: 1811, unit: 'g' });
  });

  // brastle-622 at 140 mm: from the build at 130 one spacer less, from the one at 150 one more; both give the same fork,
  // with the standard of 140 mm, no volume spacer.
  it('derived: two factory builds that lead to the same fork are one', async () => {
    const found = await askDemo({ chassis: 'brastle-622', travelNow: 140 });
    expect(found.status).toBe('nothing-to-do');
    expect(found.now.build['travel-spacers']).toEqual({ sku: 'BR-TS-10', quantity: 1 });
    expect(found.now.build['volume-spacers']).toBeNull();
    expect(flags(found)).toEqual(['verify now-derived']);
  });

  // quennet-622 at 140 mm: the build at 150 has QN-DMP-155, the one at 160 QN-DMP-175.
  it('several: the question is at fault, and what would settle it is listed', async () => {
    const [first, ...others] = await faultsDemo({ chassis: 'quennet-622', travelNow: 140 });
    expect([first?.code, others.length]).toEqual(['several-builds-now', 0]);
    expect(first?.params.choices).toEqual([
      expect.stringContaining('damper=QN-DMP-155'),
      expect.stringContaining('damper=QN-DMP-175'),
    ]);
  });

  it('several: the damper named settles it', async () => {
    const found = await askDemo({
      chassis: 'quennet-622',
      travelNow: 140,
      with: { damper: { sku: 'QN-DMP-175', quantity: 1 } },
    });
    expect(found.now.build).toMatchObject({
      spring: { sku: 'QN-AIR-202', quantity: 1 },
      'volume-spacers': { sku: 'QN-VS', quantity: 2 },
      damper: { sku: 'QN-DMP-175', quantity: 1 },
    });
    expect(flags(found)).toEqual(['verify now-derived']);
  });
});

describe('now, as the question gives it', () => {
  // A fact, not a rule: 150 mm with 2 volume spacers where the standard is 1; and the damper is no longer assumed.
  it('with: what is named is in the fork, and nothing is assumed about it', async () => {
    const found = await askDemo({
      chassis: 'quennet-622',
      travelNow: 150,
      with: { damper: { sku: 'QN-DMP-185', quantity: 1 }, 'volume-spacers': { sku: 'QN-VS', quantity: 2 } },
    });
    expect(found.now.build).toMatchObject({
      damper: { sku: 'QN-DMP-185', quantity: 1 },
      'volume-spacers': { sku: 'QN-VS', quantity: 2 },
    });
    expect(flags(found)).toEqual([]);
  });

  // Four spacers where the cartridge takes 3 at most.
  it('with: a fork that breaks a rule is told so, not refused', async () => {
    const found = await askDemo({
      chassis: 'quennet-622',
      travelNow: 150,
      with: { 'volume-spacers': { sku: 'QN-VS', quantity: 4 } },
      wants: { renew: ['cap-ring'] },
    });
    expect(found.status).toBe('answered');
    expect(flagParams(found, 'now-breaks-rule')).toEqual([{ rule: 'volume-spacer-count', held: 4, limit: 3 }]);
    expect(onlyPlan(found).build['volume-spacers']).toEqual({ sku: 'QN-VS', quantity: 4 });
  });
});

describe('questions at fault', () => {
  const quennet: QuestionInput = { chassis: 'quennet-622', travelNow: 150 };
  const one = (sku: string) => ({ sku, quantity: 1 });
  const cases: readonly (readonly [string, FaultCode, Readonly<Record<string, unknown>>, QuestionInput])[] = [
    // QN-AIR-192 gives 130 mm in quennet-622
    [
      'a spring that gives another travel',
      'other-travel-now',
      { travel: '150 mm', gives: '130 mm' },
      { ...quennet, with: { spring: one('QN-AIR-192') } },
    ],
    [
      'a travel that nothing gives',
      'no-build-now',
      { travel: '155 mm', travels: ['150 mm', '160 mm'] },
      { ...quennet, travelNow: 155 },
    ],
    ['a chassis that is not there', 'unknown-chassis', { id: 'quennet-623' }, { ...quennet, chassis: 'quennet-623' }],
    ['a part that is not there', 'unknown-sku', { sku: 'QN-AIR-19' }, { ...quennet, wants: { use: ['QN-AIR-19'] } }],
    [
      'a damper in the spring slot',
      'wrong-slot',
      { sku: 'QN-DMP-155', slot: 'spring' },
      { ...quennet, with: { spring: one('QN-DMP-155') } },
    ],
    ['one wiper', 'wrong-count', { slot: 'wipers', found: 1, most: 2 }, { ...quennet, with: { wipers: one('QN-W') } }],
    ['no damper', 'slot-not-empty', { slot: 'damper' }, { ...quennet, with: { damper: null } }],
    ['a slot of another family', 'unknown-slot', { slot: 'coil' }, { ...quennet, wants: { keep: ['coil'] } }],
    [
      'volume spacers in a coil fork',
      'unknown-slot',
      { slot: 'volume-spacers' },
      { chassis: 'odrun-584', travelNow: 180, wants: { spacers: 1 } },
    ],
    [
      'a service of another family',
      'unknown-service',
      { id: 'odrun-damper-service' },
      { ...quennet, wants: { service: ['odrun-damper-service'] } },
    ],
    [
      'oil by the gram',
      'have-unit',
      { sku: 'OS-BATH', expected: 'mL' },
      { ...quennet, have: [{ sku: 'OS-BATH', amount: { value: 8, unit: 'g' } }] },
    ],
    [
      'a part that has no slot',
      'use-without-slot',
      { sku: 'BR-LEVER' },
      { chassis: 'brastle-622', travelNow: 130, wants: { use: ['BR-LEVER'] } },
    ],
    ['a travel below nothing', 'bad-question', { path: 'wants.travel' }, { ...quennet, wants: { travel: -5 } }],
  ];
  for (const [name, code, params, question] of cases) {
    it(`${name}: ${code}`, async () => {
      const faults = await faultsDemo(question);
      expect(faults.map((fault) => fault.code)).toEqual([code]);
      expect(faults[0]?.params).toMatchObject(params);
    });
  }

  it('nearest: a mistyped number is answered with the numbers that come near', async () => {
    const [fault] = await faultsDemo({ ...quennet, wants: { use: ['QN-AIR-19'] } });
    expect(fault?.params.nearest).toContain('QN-AIR-192');
  });

  it('a family, a name or other capitals in place of an id: the ids that are meant', async () => {
    const offered = async (chassis: string) => (await faultsDemo({ ...quennet, chassis }))[0]?.params.nearest;
    const all = ['quennet-559', 'quennet-584', 'quennet-584-20x110', 'quennet-622'];
    expect(await offered('quennet')).toEqual(all);
    expect(await offered('Quennet')).toEqual(all);
    expect(await offered('QUENNET-622')).toEqual(['quennet-622']);
    expect(await offered('Quennet 622')).toEqual(['quennet-622']);
    expect(await offered('Quennet for 622 wheels')).toEqual(['quennet-622']);
    expect(await offered('Quennet, for 622 wheel')).toContain('quennet-622');
    expect(await offered('Quennet 29')).toEqual(['quennet-622']);
    const [bike] = await faultsDemo({ bike: 'Dallowick Brannig' });
    expect([bike?.code, bike?.params.nearest]).toEqual(['unknown-bike', ['dallowick-brannig']]);
  });

  it('two faults: both are named at once', async () => {
    const faults = await faultsDemo({ ...quennet, wants: { keep: ['coil'], service: ['odrun-damper-service'] } });
    expect(faults.map(({ code }) => code).sort()).toEqual(['unknown-service', 'unknown-slot']);
  });
});
