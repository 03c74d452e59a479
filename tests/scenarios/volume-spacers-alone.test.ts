import { describe, expect, it } from 'vitest';
import { askDemo } from '../support/ask.ts';
import { bought, changes, flagParams, flags, lines, money, onlyPlan, steps, torques } from '../support/plan-views.ts';

const quennet = { chassis: 'quennet-622', travelNow: 150 };

describe('volume spacers alone, quennet-622 at 150 mm', () => {
  // Cap off 2, spacers 2, cap on 3; look over 5, air 3, inflate 5, hand over 8: 28 min, 28 x 69.00 / 60 = 32.20.
  it('two spacers: only the cap comes off, the lowers stay on', async () => {
    const plan = onlyPlan(await askDemo({ ...quennet, wants: { spacers: 2 } }));
    expect(steps(plan)).toEqual([
      'quennet-look-over',
      'quennet-air-out',
      'quennet-cap-off',
      'quennet-volume-spacers',
      'quennet-cap-on',
      'quennet-inflate',
      'quennet-hand-over',
    ]);
    expect(torques(plan)).toEqual([
      'quennet-cap-on: top cap left (spring) 22 N·m greased',
      'quennet-hand-over: wheel axle null (null) 13 N·m greased',
      'quennet-hand-over: calliper bolt null (null) 8 N·m greased',
    ]);
    expect(changes(plan)).toEqual(['volume-spacers: QN-VS -> QN-VS*2']);
    expect([plan.minutes, plan.readyInDays]).toEqual([28, 0]);
  });

  // One spacer is there, one is bought: 3.60. Grease 0.5 g 8.50, gloves 0.60, one towel of five 1.60: 10.70.
  // Total 3.60 + 10.70 + 32.20 = 46.50. No oil: nothing is drained.
  it('two spacers: one is bought and one used again, no oil, 46.50', async () => {
    const plan = onlyPlan(await askDemo({ ...quennet, wants: { spacers: 2 } }));
    expect(bought(plan)).toEqual([
      '1 QN-VS x 3.60 = 3.60, 0 days',
      '1 VH-GLOVE-2 x 0.60 = 0.60, 0 days',
      '1 VH-GREASE-30 x 8.50 = 8.50, 0 days, left 29.5 g VH-GREASE',
      '1 VH-TOWEL-5 x 1.60 = 1.60, 0 days, left 4 VH-TOWEL',
    ]);
    expect(lines(plan, 'install')).toEqual(['1 QN-VS from QN-VS']);
    expect(lines(plan, 'reuse')).toEqual(['1 QN-VS']);
    expect([...lines(plan, 'renew'), ...lines(plan, 'waste'), ...lines(plan, 'remove')]).toEqual([]);
    expect(money(plan)).toEqual(['3.60', '10.70', '32.20', '46.50']);
    expect(plan.effects.mass).toEqual({ from: 1819, to: 1824, unit: 'g' });
    expect(plan.effects.axleToCrown).toMatchObject({ from: 538, to: 538 });
  });

  it('two spacers: the answer says that the maker puts in one', async () => {
    const plan = onlyPlan(await askDemo({ ...quennet, wants: { spacers: 2 } }));
    expect(flags(plan)).toEqual(['advice spacers-off-standard']);
    expect(flagParams(plan, 'spacers-off-standard')).toEqual([{ count: 2, standard: 1, greatest: 3, travel: 150 }]);
  });

  // Nothing to buy but grease, gloves and a towel: 10.70 + 32.20 = 42.90.
  it('no spacer: the one comes out and goes to the customer, 42.90', async () => {
    const plan = onlyPlan(await askDemo({ ...quennet, wants: { spacers: 0 } }));
    expect(changes(plan)).toEqual(['volume-spacers: QN-VS -> -']);
    expect(lines(plan, 'remove')).toEqual(['1 QN-VS']);
    expect(money(plan)).toEqual(['0.00', '10.70', '32.20', '42.90']);
    expect(flagParams(plan, 'spacers-off-standard')).toEqual([{ count: 0, standard: 1, greatest: 3, travel: 150 }]);
  });

  // The greatest for QN-AIR-212 at 150 mm is 3.
  it('four spacers: impossible, by the count that the cartridge allows', async () => {
    const { status, plans, refusal } = await askDemo({ ...quennet, wants: { spacers: 4 } });
    expect([status, plans.length]).toEqual(['impossible', 0]);
    const members = refusal?.conflicts.flat() ?? [];
    expect(members.map(({ kind, code }) => `${kind} ${code}`)).toEqual(
      expect.arrayContaining(['want want-spacers', 'rule volume-spacer-count']),
    );
    expect(members.find(({ code }) => code === 'want-spacers')?.params).toEqual({ spacers: 4 });
    expect(members.find(({ code }) => code === 'volume-spacer-count')?.source?.record).toMatch(/^parts\/QN-AIR-212/);
  });
});
