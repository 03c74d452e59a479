import { describe, expect, it } from 'vitest';
import { askDemo, askIn } from '../../support/ask.ts';
import { type Loaded, loadDemoWith } from '../../support/demo.ts';
import { flagParams } from '../../support/plan-views.ts';
import { conflicts, members, refused, verdict } from './refusals.ts';

// yaldern-corrick: on 622 wheels 120 to 150 mm in size s, 140 to 160 mm in m, l and xl (page 4 of its document).
describe('a limit that goes by the size of the frame, yaldern-corrick of 2024-05', () => {
  const corrick = { bike: 'yaldern-corrick', built: '2024-05' };

  it('size s to 160 mm: its frame allows 120 to 150', async () => {
    const answer = await askDemo({ ...corrick, size: 's', wants: { travel: 160 } });
    expect(answer.status).toBe('impossible');
    expect(members(answer, 'frame-travel')).toMatchObject([
      { params: { least: 120, greatest: 150 }, source: { document: 'yaldern-frames', page: '4' } },
    ]);
  });

  it('size m left the works with 160 mm: nothing to do', async () => {
    const answer = await askDemo({ ...corrick, size: 'm', wants: { travel: 160 } });
    expect([answer.now.travel, answer.status]).toEqual([160, 'nothing-to-do']);
  });
});

// hennivar-ruldan is of category 5; Arbrask is rated up to 4.
describe('category of use, arbrask-584 at 180 mm onto hennivar-ruldan', () => {
  it('rated for less: impossible, with both numbers', async () => {
    const answer = await askDemo({ chassis: 'arbrask-584', travelNow: 180, onto: 'hennivar-ruldan', ontoSize: 'm' });
    expect(verdict(answer)).toEqual(refused('impossible'));
    expect(conflicts(answer)).toContainEqual(['rule not-rated-category', 'want want-onto']);
    expect(members(answer, 'not-rated-category')[0]?.params).toMatchObject({ category: 5, rated: 4 });
  });
});

/** A fork with nothing in it that could stumble over dallowick-hullock but what its maker says of use. */
const hollim = (rated: string): Promise<Loaded> =>
  loadDemoWith({
    yaml: `
families:
  - id: hollim
    maker: pellorin
    name: Hollim
    legs: { left: spring, right: none }
    travel-set-by: fixed
    travel-end: extended
    slots: { upper: {}, lowers: {}, spring: {} }
    complete: [upper, lowers, spring]
    rated: ${rated}
    source: { document: pellorin-manual, page: 9 }
chassis:
  - id: hollim-622
    family: hollim
    name: Hollim for 622 wheels
    wheel: 622
    axle: { standard: 15x110, spacing: 110 mm, rotor-plane: 15 mm }
    offset: 44 mm
    steerer: { kind: tapered, top: 28.6 mm, crown-race: 40 mm, length: 250 mm, material: steel }
    brake: { mount: post, native: 203 mm, greatest: 203 mm }
    travel: {}
    axle-to-crown: { compressed: 382 mm, measured: along-steerer }
    tyre-room: { crown: 374 mm, arch: 374 mm, width: 66 mm }
    dimensions: { end-cap-recess: 31 mm }
    upper: HL-U
    lowers: HL-L
    fitted: { spring: HL-SPR }
    builds:
      - { travel: 120 mm, slots: {}, source: { document: pellorin-manual, page: 9 } }
    source: { document: pellorin-manual, page: 9 }
parts:
  - { sku: HL-U, maker: pellorin, name: Hollim upper, role: upper, fits: [{ family: hollim }], price: "90.00" }
  - { sku: HL-L, maker: pellorin, name: Hollim lowers, role: lowers, fits: [{ family: hollim }], price: "70.00" }
  - sku: HL-SPR
    maker: pellorin
    name: Hollim spring unit
    role: spring
    fits: [{ family: hollim, travel: 120 mm }]
    price: "30.00"
`,
  });

// dallowick-hullock is of category 3. Native 203 mm, its rotor is 203; recess 31 mm, its caps are 31; 120 mm is within 120 to 160.
describe('category of use not stated, hollim-622 onto dallowick-hullock', () => {
  const onto = { chassis: 'hollim-622', travelNow: 120, onto: 'dallowick-hullock' };

  it('its maker rates it for motors and says nothing of use: not known, and the silence is the reason', async () => {
    const answer = askIn(await hollim('{ motor-assisted: true }'), onto);
    expect(verdict(answer)).toEqual(refused('not-known'));
    expect(conflicts(answer)).toEqual([['listing not-rated-category-not-known', 'want want-onto']]);
    expect(members(answer, 'not-rated-category-not-known')[0]).toMatchObject({
      params: { family: 'Hollim', bike: 'Dallowick Hullock', category: 3, rated: null },
      source: { document: 'pellorin-manual', page: '9', record: 'families/hollim' },
    });
  });

  it('silence allowed: nothing to do, and it is said what that rests on', async () => {
    const answer = askIn(await hollim('{ motor-assisted: true }'), { ...onto, allowUnknown: true });
    expect([answer.status, answer.plans]).toEqual(['nothing-to-do', []]);
    expect(flagParams(answer, 'rests-on-silence')).toMatchObject([
      { about: 'not-rated-category-not-known', family: 'Hollim', bike: 'Dallowick Hullock' },
    ]);
  });

  it('stated: 2 is a no, and silence allowed changes nothing; 3 is a yes', async () => {
    for (const allowUnknown of [false, true]) {
      const answer = askIn(await hollim('{ category: 2 }'), { ...onto, allowUnknown });
      expect(verdict(answer)).toEqual(refused('impossible'));
      expect(conflicts(answer)).toEqual([['rule not-rated-category', 'want want-onto']]);
    }
    expect(askIn(await hollim('{ category: 3 }'), onto).status).toBe('nothing-to-do');
  });
});
