import { describe, expect, it } from 'vitest';
import { withCopy, withMore, without } from './change.ts';
import { caught, codes, edited, P, right, service } from './input.ts';

describe('the lines', () => {
  it.each([
    caught('need-pieces', [`${P}.lines.6.quantity`, 1]),
    caught('need-pieces', [`${P}.lines`, without(7)]),
    caught('need-pieces', [`${P}.lines.8.action`, 'install']),
    caught('need-amount', [`${P}.lines.9.quantity`, 17]),
    caught('need-product', [`${P}.steps.3.amounts.0.sku`, null]),
    caught('need-product', ['catalog.supplies.OD-SLICK.meets', []]),
    caught('quantity', [`${P}.lines`, withCopy(6, { quantity: -1 })]),
    caught('quantity', [`${P}.lines.9.unit`, 'g']),
    caught('from', [`${P}.lines.5.from`, null]),
    caught('from', [`${P}.lines.5.from`, 'QN-V']),
    caught('from', [`${P}.lines.5.from`, 'QN-NOT']),
    caught('over-drawn', [`${P}.lines.2.packs`, 1]),
    caught('left-over', [`${P}.lines.3.leftOver.0.quantity`, 101]),
    caught('left-over', [`${P}.lines.1.leftOver`, null]),
    caught('take', ['answer.question.have', []]),
    caught(
      'used-piece',
      ['answer.question.have', withMore({ sku: 'QN-C', used: true, quantity: 2 })],
      [`${P}.lines`, withCopy(4, { sku: 'QN-C', quantity: 2 })],
    ),
    caught(
      'extra-take',
      ['answer.question.have', withMore({ sku: 'QN-W' })],
      [`${P}.lines`, withCopy(4, { sku: 'QN-W' })],
    ),
    caught('extra-pack', [`${P}.lines`, withCopy(2, { sku: 'QN-K', packs: 1, quantity: 1 })]),
    caught('extra-pack', [`${P}.lines.1.packs`, 2]),
    caught('extra-pack', ['answer.question.have', withMore({ sku: 'OD-BATH', amount: { value: 18, unit: 'mL' } })]),
    caught('buy', [`${P}.lines`, withCopy(2, {})]),
    caught('buy', [`${P}.lines.3.packs`, null]),
    caught('buy', [`${P}.lines.1.quantity`, 2]),
    caught('not-obtainable', ['stock.QN-S-130.state', 'discontinued']),
    caught('not-obtainable', ['stock.QN-C.reserved', '9']),
    caught('days', [`${P}.lines.0.days`, 0]),
    caught('days', ['stock.QN-S-130.lead_days', 'unknown']),
    caught('ready-in-days', [`${P}.readyInDays`, 0]),
    caught('ready-in-days', ['stock', null]),
    caught('unit-price', [`${P}.lines.2.unitPrice`, '1.50']),
    caught('unit-price', ['catalog.parts.QN-S-130.price', undefined]),
    caught('line-total', [`${P}.lines.2.total`, '3.00']),
    caught('line-total', [`${P}.lines.10.total`, '0.13']),
    caught('line-total', [`${P}.lines.11.total`, '9.00']),
    caught('bulk', ['answer.question.supplies', 'packs']),
    caught('bulk', ['shop.bulk', []]),
    caught('bin', [`${P}.lines.1.bin`, 'B3']),
    caught('reuse', [`${P}.lines`, without(11)]),
    caught('remove', [`${P}.lines.12.sku`, 'QN-S-130']),
    caught('waste', [`${P}.lines.13.quantity`, 1]),
    caught('waste', [`${P}.lines.14.quantity`, 10]),
  ])('lines: a fault is caught as %s', (code, edits) => {
    expect(codes(edited(right, edits))).toContain(code);
  });
  it('lines: a kit that the question says to use is not one too many', () => {
    const asked = edited(service, [['answer.question.wants.use', ['QN-K']]]);
    expect(codes(asked)).toEqual([]);
  });
});

describe('money and effects', () => {
  it.each([
    caught('money-parts', [`${P}.money.parts`, '108.21']),
    caught('money-supplies', [`${P}.money.supplies`, '9.50']),
    caught('money-labour', [`${P}.money.labour`, '46.2']),
    caught('money-labour', ['shop.labour.rate', '70.00']),
    caught('money-total', [`${P}.money.total`, '164.00']),
    caught('money-currency', [`${P}.money.currency`, 'USD']),
    caught('money-unpriced', [`${P}.money.unpriced`, 1]),
    caught('money-at-least', [`${P}.money.atLeast`, true]),
    caught('money-tax', [`${P}.money.tax.amount`, '27.33']),
    caught('money-tax', ['shop.tax.included', false]),
    caught('money-tax', [`${P}.money.tax`, null]),
    caught('effect-travel', [`${P}.effects.travel.from`, 151]),
    caught('effect-axle-to-crown', [`${P}.effects.axleToCrown.to`, 516.1]),
    caught('effect-axle-to-crown', [`${P}.effects.axleToCrown`, null]),
    caught('effect-axle-to-crown', ['catalog.chassis.quarnel-622.axle-to-crown.measured', 'straight']),
    caught('effect-mass', [`${P}.effects.mass.to`, 2281]),
    caught('effect-mass', [`${P}.effects.mass`, null]),
    caught('effect-mass', ['catalog.parts.QN-D.mass', undefined]),
  ])('money and effects: a fault is caught as %s', (code, edits) => {
    expect(codes(edited(right, edits))).toContain(code);
  });
  it('money: a flat price stands for the operations that the service lists only', () => {
    expect(codes(edited(service, [[`${P}.money.labour`, '35.00']]))).toContain('money-labour');
  });
});
