import { describe, expect, it } from 'vitest';
import { withMore, without } from './change.ts';
import { caught, codes, edited, P, right } from './input.ts';

describe('the build, the wants and the rules', () => {
  it.each([
    caught('build-slot', [`${P}.build.coil`, null]),
    caught('build-part', [`${P}.build.spring.sku`, 'QN-V']),
    caught('build-part', [`${P}.build.spring.sku`, 'QN-NOT']),
    caught('build-chassis', [`${P}.build.lowers.sku`, 'QN-L-999']),
    caught('build-chassis', [`${P}.chassis`, 'quarnel-584']),
    caught('changes', [`${P}.changes`, without(1)]),
    caught('changes', [`${P}.changes.0.to.sku`, 'QN-S-130F']),
    caught('slot-filled', [`${P}.build.spring`, null]),
    caught('slot-filled', [`${P}.build.wipers.quantity`, 1]),
    caught('slot-filled', [`${P}.build.volume-spacers.quantity`, 6]),
    caught('travel', [`${P}.build.spring.sku`, 'QN-V']),
    caught('want-travel', ['answer.question.wants.travel', 140]),
    caught('want-wheel', ['answer.question.wants.wheel', 584]),
    caught('want-use', ['answer.question.wants.use', ['QN-S-130F']]),
    caught('want-use', ['answer.question.wants.use', ['QN-K']]),
    caught('want-use', ['answer.question.wants.use', ['OD-SLICK-50']]),
    caught('want-keep', ['answer.question.wants.keep', ['spring']]),
    caught('want-renew', ['answer.question.wants.renew', ['coil']]),
    caught('want-service', ['answer.question.wants.service', ['no-service']]),
    caught('want-spacers', ['answer.question.wants.spacers', 2]),
    caught('kept-trait', ['answer.question.wants.travel', undefined]),
    caught('kept-trait', ['catalog.parts.QN-S-130.traits.kind', 'coil']),
    caught('kept-trait', [`${P}.build.lowers.sku`, 'QN-L-584'], [`${P}.chassis`, 'quarnel-584']),
    caught('part-fits', ['catalog.parts.QN-S-130.fits', []]),
    caught('part-fits', ['catalog.parts.QN-V.fits', withMore({ family: 'quarnel', not: true, reason: 'no room' })]),
    caught('part-fits', ['catalog.parts.QN-V.fits', withMore({ family: 'quarnel' })]),
    caught('unknowns', ['catalog.parts.QN-V.fits', []]),
    caught('unknown-not-allowed', ['catalog.parts.QN-V.fits', []], [`${P}.unknowns`, 1]),
    caught('dimension', ['catalog.parts.QN-S-130.dimensions.bore', '30 mm']),
    caught('dimension', ['catalog.parts.QN-V.interfaces.spacer-seat', 'thread-z']),
    caught('travel-range', ['catalog.chassis.quarnel-622.travel.least', '131 mm']),
    caught('travel-range', ['catalog.chassis.quarnel-622.travel.greatest', '129 mm']),
    caught('damper-stroke', ['catalog.parts.QN-D.dimensions.stroke', '129.9 mm']),
    caught(
      'damper-length',
      ['catalog.parts.QN-D.dimensions.closed-length', '311 mm'],
      [`${P}.build.damper.quantity`, 2],
    ),
    caught('volume-spacer-count', [`${P}.build.volume-spacers.quantity`, 2]),
    caught('volume-spacer-count', ['catalog.parts.QN-S-130.fits.0.volume-spacers.greatest', 2]),
    caught('flag', ['answer.question.wants.spacers', 3], ['catalog.parts.QN-S-130.fits.0.volume-spacers.standard', 2]),
    caught('flag', ['catalog.parts.QN-S-130.fits.0.volume-spacers', undefined]),
    caught('needs', ['catalog.parts.QN-S-130.needs', withMore({ slot: 'damper', 'any-of': ['QN-D2'] })]),
    caught('excludes', ['catalog.parts.QN-D.excludes', [{ sku: 'QN-S-130', reason: 'touches' }]]),
    caught('excludes', ['catalog.parts.QN-S-130.excludes', [{ slot: 'wipers', reason: 'touches' }]]),
  ])('plan: a fault is caught as %s', (code, edits) => {
    expect(codes(edited(right, edits))).toContain(code);
  });
  it('plan: a pair that stays is not judged', () => {
    expect(codes(edited(right, [['catalog.parts.QN-W.dimensions.seal-seat', '40 mm']]))).toEqual([]);
    expect(codes(edited(right, [['catalog.parts.QN-D.dimensions.closed-length', '311 mm']]))).toEqual([]);
  });
});
