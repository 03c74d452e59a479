import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { checkPlan } from '../../src/audit/index.ts';
import { answerSchema } from '../../src/plan/answer.ts';
import { withMore } from './change.ts';
import { caught, codes, type Edit, edited, onto, P } from './input.ts';
import { bikeAnswer } from './tiny-bike-answer.ts';

const V = 'catalog.bikes.vale';
const Q = 'answer.question';
const family = 'catalog.families.quarnel';
const chassis = 'catalog.chassis.quarnel-622';

describe('a fork onto another bike', () => {
  it('bike: a right answer keeps to the contract and passes without a finding', () => {
    expect(answerSchema.safeParse(bikeAnswer).error).toBeUndefined();
    expect(checkPlan(onto)).toEqual([]);
  });
  it.each([
    caught('now', [`${Q}.size`, undefined]),
    caught('now', [`${Q}.size`, 's']),
    caught('now', [`${Q}.with`, { rotor: null }]),
    caught('now', ['catalog.bikes.ridge.forks.1.with', { damper: null }]),
    caught('now-bike', ['answer.now.bike', 'ridge']),
    caught('now-settings', ['answer.now.settings', {}]),
    caught('now-settings', [`${Q}.settings`, { 'stanchion-height': 10 }]),
    caught('now-settings', [`${chassis}.builds.0.settings`, { 'stanchion-height': '5 mm' }]),
    caught('setting', [`${P}.settings`, {}]),
    caught('setting', [`${P}.settings.dial`, 3]),
    caught('setting-mark', [`${P}.settings.stanchion-height`, 6]),
    caught('setting-mark', [`${family}.settings.stanchion-height.greatest`, '4 mm']),
    caught('extra-step', [`${P}.settings.stanchion-height`, 0]),
    caught('no-operation', ['catalog.operations.set-height.changes', []]),
    caught('effect-axle-to-crown', [`${P}.effects.axleToCrown.to`, 536]),
    caught('effect-mass', [`${P}.effects.mass`, null]),
    caught('want-axle-to-crown', [`${Q}.wants.axleToCrown.greatest`, 530]),
    caught('want-offset', [`${Q}.wants.offset`, { least: 45, greatest: 46 }]),
    caught('want-keep', [`${Q}.wants.keep`, ['stanchion-height']]),
    caught('missing-step', [`${Q}.wants.renew`, ['foot-seals']]),
    caught('build-slot', [`${P}.build.saddle`, null]),
    caught('build-slot', [`${P}.build.hub`, null], [`${V}.slots`, { rotor: 'VR-RT-203' }]),
    caught('slot-filled', [`${P}.build.end-caps.quantity`, 1]),
    caught('slot-filled', [`${P}.build.calliper`, null]),
    caught('part-fits', ['catalog.parts.VR-AD-23.fits', [{ family: 'quarnel', not: true, reason: 'touches' }]]),
    caught('frame-travel', [`${V}.limits.0.travel.greatest`, '149 mm']),
    caught('frame-travel', [`${Q}.ontoSize`, undefined]),
    caught('frame-axle-to-crown', [`${V}.limits.2.axle-to-crown.greatest`, '530 mm']),
    caught('frame-axle-to-crown', [`${V}.limits.2.axle-to-crown.measured`, 'straight']),
    caught('not-rated-motor', [`${family}.rated.motor-assisted`, false]),
    caught('not-rated-category', [`${V}.category`, 5]),
    caught('dual-crown-not-approved', [`${V}.dual-crown`, false]),
    caught('wheel-of-bike', [`${V}.wheel`, 584]),
    caught('tyre-room', [`${V}.tyre`, '70-622']),
    caught('tyre-room', [`${Q}.tyre`, '62-622']),
    caught('tyre-room', [`${chassis}.tyre-room`, { width: '59 mm' }]),
    caught('dimension', ['catalog.parts.VR-HUB.interfaces.axle', '20x110']),
    caught('dimension', ['catalog.parts.VR-HUB.dimensions.spacing', '100 mm']),
    caught('dimension', [`${chassis}.axle.rotor-plane`, '10 mm']),
    caught('dimension', ['catalog.parts.VR-CAPS.dimensions.end-cap', '21.1 mm']),
    caught('dimension', [`${P}.build.crown-race.sku`, 'VR-RACE-39']),
    caught('dimension', ['catalog.parts.VR-RACE-40.interfaces.bearing', 'b-49']),
    caught('dimension', ['catalog.parts.VR-AD-23.interfaces.brake-mount', 'flat']),
    caught('dimension', ['catalog.parts.VR-CAL.interfaces.calliper-mount', 'flat']),
    caught('dimension', [`${P}.build.adaptor`, null], ['catalog.parts.VR-CAL.interfaces.calliper-mount', 'flat']),
    caught('rotor-size', [`${P}.build.adaptor`, null]),
    caught('rotor-size', [`${chassis}.brake.native`, '160 mm']),
    caught('rotor-greatest', [`${chassis}.brake.greatest`, '200 mm']),
    caught('steerer-length', [`${Q}.steererLength`, 189]),
    caught('steerer-length', ['catalog.bikes.ridge.forks.1.steerer-length', '189 mm']),
    caught(
      'steerer-length',
      ['catalog.bikes.ridge.forks.1.steerer-length', undefined],
      [`${chassis}.steerer.length`, '189 mm'],
    ),
    caught('unknowns', ['catalog.parts.VR-HUB.interfaces.axle', undefined]),
    caught('unknowns', [`${family}.rated`, undefined]),
    caught('unknown-not-allowed', [`${V}.dual-crown`, undefined], [`${P}.unknowns`, 1]),
  ])('bike: a fault is caught as %s', (code, edits) => {
    expect(codes(edited(onto, edits))).toContain(code);
  });
});

describe('what a bike leaves open', () => {
  it.each([
    ['a length that one side does not state', [['catalog.parts.VR-HUB.dimensions', {}]]],
    [
      'a head tube of no known length',
      [
        [`${V}.head-tube.length`, undefined],
        [`${Q}.steererLength`, 100],
      ],
    ],
    ['a tyre of another wheel', [[`${V}.tyre`, '80-584']]],
    ['a limit for another crown', [[`${V}.limits.0`, { crown: 'single', travel: { greatest: '100 mm' } }]]],
    ['a limit for another wheel', [[`${V}.limits.0`, { wheel: 584, travel: { greatest: '100 mm' } }]]],
    ['a pair on the bike that stays', [['catalog.parts.VR-RT-203.interfaces.rotor-mount', 'centre']]],
    ['a cup that stays', [[`${V}.head-tube.lower`, 'ec49']]],
    [
      'other forks of other months',
      [
        [
          'catalog.bikes.ridge.forks',
          withMore({ months: { from: '2024-01' }, sizes: ['m'], chassis: 'quarnel-584', travel: '150 mm' }),
        ],
        [`${Q}.built`, '2023-12'],
      ],
    ],
  ] satisfies readonly (readonly [string, readonly Edit[]])[])('bike: %s is no fault', (_, edits) => {
    expect(codes(edited(onto, edits))).toEqual([]);
  });
  it('bike: facts of a fork on its own bike are not judged', () => {
    const own: readonly Edit[] = [
      [`${Q}.bike`, 'vale'],
      [`${Q}.size`, 'l'],
      [`${Q}.onto`, undefined],
      [`${V}.forks`, [{ chassis: 'quarnel-622', travel: '150 mm', 'steerer-length': '100 mm' }]],
      [`${V}.tyre`, '70-622'],
      [`${V}.category`, 5],
      [`${V}.dual-crown`, undefined],
      ['catalog.parts.VR-HUB.interfaces.axle', '20x110'],
    ];
    expect(codes(edited(onto, own))).toEqual([]);
    expect(codes(edited(onto, [...own, [`${V}.limits.2.axle-to-crown.greatest`, '530 mm']]))).toContain(
      'frame-axle-to-crown',
    );
  });
});

describe('odd bikes', () => {
  it('odd bikes: are reported and never thrown', () => {
    const paths = fc.constantFrom(
      ...[
        'catalog.bikes',
        V,
        `${V}.slots`,
        `${V}.limits`,
        `${V}.limits.0`,
        `${V}.head-tube`,
        `${V}.tyre`,
        'answer.now',
      ],
      ...['catalog.bikes.ridge.forks', 'catalog.bikes.ridge.forks.1', 'catalog.notices', `${family}.generations`],
      ...[`${family}.settings`, `${family}.rated`, `${P}.settings`, `${Q}.settings`, `${Q}.serial`, `${Q}.built`],
      ...[`${Q}.wants`, 'catalog.parts.VR-AD-23.fits', 'catalog.parts.VR-AD-23.replaced-by', `${chassis}.builds.0`],
    );
    const run = (path: string, value: unknown) => Array.isArray(checkPlan(edited(onto, [[path, value]])));
    fc.assert(fc.property(paths, fc.jsonValue(), run), { numRuns: 500, seed: 7 });
  });
});
