import { describe, expect, it } from 'vitest';
import { checkPlan } from '../../src/audit/index.ts';
import { withCopy, withMore } from './change.ts';
import { both, caught, codes, type Edit, edited, P, right } from './input.ts';

const Q = 'answer.question';
const family = 'catalog.families.quarnel';
const spring = 'catalog.parts.QN-S-130';
const generations: Edit = [
  `${family}.generations`,
  [
    { id: 'first', months: { to: '2023-06' }, serials: { from: 'QN1000', to: 'QN1999' } },
    { id: 'second', months: { from: '2023-07' }, serials: { from: 'QN2000', to: 'QN2999' } },
  ],
];
const wider: Edit = [`${family}.generations.1.dimensions`, { 'spring-bore': '32 mm' }];
const first: Edit = [`${spring}.fits.0.generations`, 'first'];
const notice = (more: object): Edit => ['catalog.notices', [{ id: 'n-1', title: 't', text: 'x', ...more }]];
const replaced = (sku: string, more: object): Edit => [`catalog.parts.${sku}.replaced-by`, [more]];

describe('when the fork was made', () => {
  it.each([
    caught('part-fits', generations, first, [`${Q}.serial`, 'QN2500']),
    caught('part-fits', generations, first, [`${Q}.built`, '2023-07']),
    caught('part-fits', [`${spring}.fits.0.months`, { from: '2024-01' }], [`${Q}.built`, '2023-12']),
    caught('part-fits', [`${spring}.fits.0.serials`, { from: 'QN1', to: 'QN9' }], [`${Q}.serial`, 'QN10']),
    caught('unknowns', generations, first),
    caught('unknowns', [`${spring}.fits.0.months`, { from: '2024-01' }]),
    caught('unknown-not-allowed', generations, first, [`${P}.unknowns`, 1]),
    caught('unknowns', generations, wider),
    caught('dimension', generations, wider, [`${Q}.serial`, 'QN2000']),
    caught(
      'now',
      generations,
      ['catalog.chassis.quarnel-622.builds.0.generations', ['first']],
      [`${Q}.built`, '2024-01'],
    ),
    caught('notice-blocks', notice({ effect: 'blocks', families: ['quarnel'] })),
    caught('notice-blocks', notice({ effect: 'blocks', parts: ['QN-S-150'], months: { to: '2023-01' } }), [
      `${Q}.built`,
      '2022-01',
    ]),
    caught('flag', notice({ effect: 'blocks', serials: { from: 'QN1', to: 'QN9' } })),
    caught('flag', notice({ effect: 'flags', chassis: ['quarnel-622'] })),
  ])('made: a fault is caught as %s', (code, edits) => {
    expect(codes(edited(right, edits))).toContain(code);
  });
  it.each([
    ['a generation that the serial settles', [generations, first, wider, [`${Q}.serial`, 'QN1999']]],
    [
      'a generation that the chassis settles',
      [generations, first, ['catalog.chassis.quarnel-622.generations', ['first']]],
    ],
    ['a notice about another part', [notice({ effect: 'blocks', parts: ['QN-S-130'] })]],
    [
      'a notice about other serials',
      [notice({ effect: 'blocks', serials: { from: 'QX1', to: 'QX99' } }), [`${Q}.serial`, 'QN5']],
    ],
    [
      'a notice in doubt that is said',
      [
        notice({ effect: 'blocks', months: { to: '2023-01' } }),
        ['answer.flags', [{ code: 'notice-check', params: { notice: 'n-1' } }]],
      ],
    ],
  ] satisfies readonly (readonly [string, readonly Edit[]])[])('made: %s is no fault', (_, edits) => {
    expect(checkPlan(edited(right, edits))).toEqual([]);
  });
  it('made: a serial that contradicts every generation is doubt, not proof', () => {
    expect(codes(edited(right, [generations, first, [`${Q}.serial`, 'ZZ1']]))).toContain('unknowns');
  });
});

describe('replaced numbers', () => {
  const by = { by: [{ sku: 'QN-S-130' }] };
  const asOld = ['catalog.parts', withMore({ sku: 'QN-OLD', role: 'spring', 'replaced-by': [by] })] satisfies Edit;
  it.each([
    caught('not-obtainable', replaced('QN-S-130', { by: [{ sku: 'QN-S-130F' }] })),
    caught('not-obtainable', replaced('QN-C', { by: [{ sku: 'QN-CLIP' }], 'old-stock': 'not-usable' })),
    caught('old-stock', replaced('QN-CLIP', { by: [{ sku: 'QN-C' }], 'old-stock': 'not-usable' })),
    caught('need-pieces', replaced('QN-CLIP', { by: [{ sku: 'QN-C' }] }), [`${Q}.have`, []]),
    caught('want-use', asOld, [`${Q}.wants.use`, ['QN-OLD']], ['stock', withCopy(1, { sku: 'QN-OLD' })]),
    caught('needs', [`${spring}.needs`, withMore({ slot: 'damper', 'any-of': ['QN-OLD'] })], asOld),
  ])('replaced: a fault is caught as %s', (code, edits) => {
    expect(codes(edited(right, edits))).toContain(code);
  });
  it('replaced: the last replacement does where the old number is asked for', () => {
    const used = edited(right, [asOld, [`${Q}.wants.use`, ['QN-OLD']]]);
    expect(checkPlan(used).filter((found) => found.plan === 0)).toEqual([]);
    const old = { sku: 'QN-D-OLD', role: 'damper', 'replaced-by': [{ by: [{ sku: 'QN-D' }] }] };
    const need = { slot: 'damper', 'any-of': ['QN-D-OLD'] };
    const needed = edited(right, [
      ['catalog.parts', withMore(old)],
      [`${spring}.needs`, withMore(need)],
    ]);
    expect(checkPlan(needed)).toEqual([]);
  });
  it('replaced: a statement about another family says nothing here', () => {
    expect(codes(edited(right, [replaced('QN-C', { by: [{ sku: 'QN-CLIP' }], families: ['other'] })]))).toEqual([]);
  });
});

describe('the stricter of two issuers, and more wants', () => {
  it.each([
    caught('part-limits', [`${spring}.fits.0.limits`, { least: '131 mm' }]),
    caught('part-limits', [`${spring}.fits.0.limits`, { greatest: '129 mm' }]),
    caught('flag', [`${spring}.fits.0.limits`, { least: '110 mm' }]),
    caught('want-coil-rate', [`${Q}.wants.coilRate`, 8.5]),
    caught('want-trait', [`${Q}.wants.traits`, { 'damper.lockout': 'remote' }]),
    caught('use-lines', [`${P}.lines`, withCopy(9, { quantity: 1 })]),
    caught('kept-trait', [`${Q}.wants.travel`, undefined]),
  ])('issuers and wants: a fault is caught as %s', (code, edits) => {
    expect(codes(edited(right, edits))).toContain(code);
  });
  it('issuers: limits that agree need no flag, and a flag says that they differ', () => {
    expect(codes(edited(right, [[`${spring}.fits.0.limits`, { least: '100 mm' }]]))).toEqual([]);
    const said = [[`${spring}.fits.0.limits`, { least: '110 mm' }], ...both('flags', [{ code: 'limits-disagree' }])];
    expect(codes(edited(right, said as Edit[]))).toEqual([]);
  });
  it('wants: an axle-to-crown names the travel', () => {
    const wants: readonly Edit[] = [
      [`${Q}.wants.travel`, undefined],
      [`${Q}.wants.axleToCrown`, { least: 510, greatest: 516 }],
    ];
    expect(codes(edited(right, wants))).toEqual([]);
  });
  it('kept: brake mount and axle are kept by all that they are made of', () => {
    const other: readonly Edit[] = [
      [`${P}.build.lowers.sku`, 'QN-L-584'],
      [`${P}.chassis`, 'quarnel-584'],
      [`${Q}.wants.wheel`, 584],
    ];
    expect(codes(edited(right, other))).not.toContain('kept-trait');
    for (const [fact, value] of [
      ['brake.native', '160 mm'],
      ['axle.rotor-plane', '10 mm'],
      ['steerer.crown-race', '30 mm'],
    ] as const) {
      expect(codes(edited(right, [...other, [`catalog.chassis.quarnel-584.${fact}`, value]]))).toContain('kept-trait');
    }
    const length: Edit = ['catalog.chassis.quarnel-584.steerer.length', '240 mm'];
    expect(codes(edited(right, [...other, length]))).not.toContain('kept-trait');
  });
});
