import { describe, expect, it } from 'vitest';
import { askDemo } from '../support/ask.ts';
import { bought, lines, money, onlyPlan, planAt } from '../support/plan-views.ts';

const shorter = { chassis: 'quennet-622', travelNow: 150, wants: { travel: 130 } };
const extras = (plan: Awaited<ReturnType<typeof askDemo>>['plans'][number]) =>
  plan.steps.flatMap(({ looks }) =>
    looks.filter(({ adds }) => adds.length > 0).map(({ adds, extra }) => [adds.join(' '), extra]),
  );

// Rate 69.00 an hour. Plan: 60 min, parts bought in 5 days.
// upper: 289.00, star nut 2.90, bearing grease 6.50; damper out 5, stem off 5, fork out 4, upper 24, damper in 4, fork in 4, stem on 6 = 52 min = 59.80;
// 12 days: 358.20
// spring: new in this plan
describe('looks, quennet-622 from 150 to 130 mm', () => {
  it('scored bore: a new upper adds its price, its star nut, 52 minutes and twelve days', async () => {
    const plan = planAt(await askDemo(shorter), 0);
    expect(plan.minutes).toBe(60);
    const upper = extras(plan).filter(([adds]) => adds === 'upper');
    expect(upper.length).toBeGreaterThan(0);
    for (const [, extra] of upper) expect(extra).toEqual({ money: '358.20', minutes: 52, days: 12, atLeast: false });
  });

  it('pitted shaft: the cartridge is new in this plan, so nothing is added', async () => {
    const plan = planAt(await askDemo(shorter), 0);
    expect(extras(plan)).toContainEqual(['spring', { money: '0.00', minutes: 0, days: 5, atLeast: false }]);
  });

  it('asked for with the job: the plan costs what the look said', async () => {
    const plan = planAt(await askDemo(shorter), 0);
    const [, wipers] = extras(plan).find(([adds]) => adds === 'wipers foam-rings') ?? [];
    const again = planAt(await askDemo({ ...shorter, wants: { travel: 130, renew: ['wipers', 'foam-rings'] } }), 0);
    const difference = (Number(money(again).at(-1)) - Number(money(plan).at(-1))).toFixed(2);
    expect(wipers).toMatchObject({ money: difference, minutes: again.minutes - plan.minutes });
  });
});

describe('renewed upper, quennet-622', () => {
  it('a star nut cannot be taken over: a new upper brings one, though its number is the old one', async () => {
    const plan = onlyPlan(await askDemo({ chassis: 'quennet-622', travelNow: 150, wants: { renew: ['upper'] } }));
    expect(lines(plan, 'renew').join('; ')).toContain('1 QN-U-44');
    expect(bought(plan).find((line) => line.includes('ST-STARNUT'))).toBe('1 ST-STARNUT x 2.90 = 2.90, 0 days');
  });
});
