import { describe, expect, it } from 'vitest';
import { askDemo, askIn } from '../support/ask.ts';
import { loadDemoWith } from '../support/demo.ts';
import { bought, changes, flagParams, flags, lines, money, onlyPlan } from '../support/plan-views.ts';

const question = { chassis: 'brastle-622', travelNow: 150, wants: { travel: 130 } };

/** A second travel spacer, with a price, so that both kinds of plan exist. */
const pricedSpacer = `
parts:
  - sku: VH-TS-10
    maker: varnholt
    name: Varnholt travel spacer 10
    role: travel-spacers
    dimensions: { length: 10 mm, shaft: 10 mm }
    fits:
      - { family: brastle, source: { document: varnholt-seal-table, page: 23 } }
    mass: 4 g
    price: "4.00"
`;

describe('no price for one line, brastle-622 from 150 to 130 mm', () => {
  // Two travel spacers in (3 free on the shelf, no price anywhere), one volume spacer 3.20, O-rings 1.40: parts 4.60 at least.
  // Supplies 21.50 and 59 min 67.85 as in lengthen-by-travel-spacers. Total 93.95 at least.
  it('only way: the total is "at least", one line is unpriced, no plan is called cheapest', async () => {
    const found = await askDemo(question);
    const plan = onlyPlan(found);
    expect([found.status, plan.minutes, plan.readyInDays]).toEqual(['answered', 59, 0]);
    expect(changes(plan)).toEqual(['travel-spacers: - -> BR-TS-10*2', 'volume-spacers: - -> BR-VS']);
    expect(bought(plan).slice(0, 3)).toEqual([
      '2 BR-OR x 0.70 = 1.40, 0 days',
      '2 BR-TS-10 x ? = ?, 0 days',
      '1 BR-VS x 3.20 = 3.20, 0 days',
    ]);
    expect(lines(plan, 'install')).toEqual(['2 BR-TS-10 from BR-TS-10', '1 BR-VS from BR-VS']);
    expect(money(plan)).toEqual(['4.60', '21.50', '67.85', '93.95']);
    expect(plan.money).toMatchObject({ atLeast: true, unpriced: 1 });
    expect(plan.label).toEqual(['recommended', 'quickest', 'soonest']);
    expect(flags(plan)).toEqual(['advice hazard', 'verify no-price']);
    expect(flagParams(plan, 'no-price')).toEqual([{ sku: 'BR-TS-10' }]);
    expect(found.offers.map(({ atLeast }) => atLeast)).toEqual([true]);
  });

  // With VH-TS-10 at 4.00: 93.95 + 8.00 = 101.95, nothing unpriced. Neither beats the other.
  it('two ways: the wholly priced plan is shown beside the one that looks cheaper', async () => {
    const loaded = await loadDemoWith({ yaml: pricedSpacer, stock: ['VH-TS-10,5,0,active,3,,,'] });
    const { plans } = askIn(loaded, question);
    expect(plans.map((plan) => [plan.money.total, plan.money.atLeast, plan.money.unpriced, plan.label])).toEqual([
      ['93.95', true, 1, ['recommended', 'quickest', 'soonest']],
      ['101.95', false, 0, ['cheapest']],
    ]);
    expect(plans.map((plan) => changes(plan)[0])).toEqual([
      'travel-spacers: - -> BR-TS-10*2',
      'travel-spacers: - -> VH-TS-10*2',
    ]);
    expect(plans.map((plan) => money(plan)[0])).toEqual(['4.60', '12.60']);
  });
});
