import { beforeAll, describe, expect, it } from 'vitest';
import { askDemo, askIn, faultsDemo } from '../../support/ask.ts';
import { type Loaded, loadDemoWith } from '../../support/demo.ts';
import { changes, flagParams, flags, lines, money, onlyPlan } from '../../support/plan-views.ts';
import { conflicts, members, refused, verdict } from './refusals.ts';

/** A coil whose record states no rate, a damper that states no lockout, and a body that states neither offset nor axle-to-crown. */
const SILENT = `
parts:
  - sku: OD-COIL-X
    maker: ketterlune
    name: Odrun coil without a marking
    role: coil
    dimensions: { bore: 32.4 mm }
    fits:
      - { family: odrun, source: { document: ketterlune-odrun-service, page: 11 } }
    price: "40.00"
  - sku: OD-DMP-X
    maker: ketterlune
    name: Odrun damper of an old stock
    role: damper
    dimensions: { bore: 32.4 mm, stroke: 185 mm, closed-length: 292 mm }
    fits:
      - { family: odrun, source: { document: ketterlune-odrun-service, page: 14 } }
    price: "100.00"
  - sku: OD-L-X
    maker: ketterlune
    name: Odrun lowers without papers
    role: lowers
    dimensions: { seal-seat: 48 mm, foot-hole: 10 mm }
    price: "200.00"
chassis:
  - id: odrun-x
    family: odrun
    name: Odrun without papers
    wheel: 584
    axle: { standard: 20x110, spacing: 110 mm, rotor-plane: 15 mm }
    steerer: { kind: tapered, top: 28.6 mm, crown-race: 40 mm, length: 260 mm, material: steel }
    brake: { mount: post, native: 203 mm, greatest: 220 mm }
    travel: { least: 160 mm, greatest: 180 mm }
    doses:
      damper-leg-oil: { specification: light-bath, left: 12 mL }
      spring-leg-oil: { specification: heavy-bath, right: 20 mL }
    upper: OD-U-46
    lowers: OD-L-X
    fitted:
      preload-spacers: OD-PRE-5
      top-cap: OD-CAP
      wipers: { sku: OD-W, quantity: 2 }
      foam-rings: { sku: OD-F, quantity: 2 }
      foot-seals: { sku: OD-CW, quantity: 2 }
    builds:
      - travel: 180 mm
        slots: { spring: OD-PLG-180, coil: OD-COIL-7.5, damper: OD-DMP-A }
`;

const odrun = { chassis: 'odrun-584', travelNow: 180 };

let silent: Loaded;
beforeAll(async () => {
  silent = await loadDemoWith({ yaml: SILENT });
});

describe('a wish for what a record does not state', () => {
  it('a coil rate that no coil states, and one coil states none: not known, and the coil is named', () => {
    const answer = askIn(silent, { ...odrun, wants: { coilRate: 6.25 } });
    expect(verdict(answer)).toEqual(refused('not-known'));
    expect(conflicts(answer)).toEqual([['listing coil-rate-not-known', 'want want-coil-rate']]);
    expect(members(answer, 'coil-rate-not-known')[0]).toMatchObject({
      params: { sku: 'OD-COIL-X', name: 'Odrun coil without a marking' },
      source: { record: 'parts/OD-COIL-X' },
    });
  });

  it('where every coil states its rate and none has it: impossible', async () => {
    const answer = await askDemo({ ...odrun, wants: { coilRate: 6.25 } });
    expect(verdict(answer)).toEqual(refused('impossible'));
    expect(conflicts(answer)).toEqual([['want want-coil-rate']]);
  });

  // 5 + 1 + 3 + 3 + 3 + 4 + 4 + 8 = 31 min, 35.65. Coil 40.00; coil grease 7.20, grease 1 g 8.50, two towels 1.60, gloves 0.60: 17.90.
  // Total 93.55. The coil has no stock row: date not known.
  it('unknowns allowed: the coil that may have the rate, counted and flagged', () => {
    const plan = onlyPlan(askIn(silent, { ...odrun, wants: { coilRate: 6.25 }, allowUnknown: true }));
    expect(changes(plan)).toEqual(['coil: OD-COIL-7.5 -> OD-COIL-X']);
    expect([money(plan), plan.minutes, plan.readyInDays, plan.unknowns]).toEqual([
      ['40.00', '17.90', '35.65', '93.55'],
      31,
      null,
      1,
    ]);
    expect(flagParams(plan, 'rests-on-silence')).toMatchObject([{ about: 'coil-rate-not-known', sku: 'OD-COIL-X' }]);
  });

  // The same 31 min; coil 39.00: 39.00 + 17.90 + 35.65 = 92.55, two on the shelf.
  it('the coil of now states none: one that does goes in, and with unknowns allowed it is said that the old one may do', () => {
    const held = { ...odrun, with: { coil: { sku: 'OD-COIL-X', quantity: 1 } }, wants: { coilRate: 7.5 } };
    for (const allowUnknown of [false, true]) {
      const answer = askIn(silent, { ...held, allowUnknown });
      const plan = onlyPlan(answer);
      expect(changes(plan)).toEqual(['coil: OD-COIL-X -> OD-COIL-7.5']);
      expect([money(plan), plan.minutes, plan.readyInDays, plan.unknowns]).toEqual([
        ['39.00', '17.90', '35.65', '92.55'],
        31,
        0,
        0,
      ]);
      expect(lines(plan, 'remove')).toEqual(['1 OD-COIL-X']);
      expect(flags(answer)).toEqual(allowUnknown ? ['verify rests-on-silence'] : []);
    }
  });

  it('the coil of now states none and no other has the rate: with unknowns allowed it may be so already', () => {
    const held = { ...odrun, with: { coil: { sku: 'OD-COIL-X', quantity: 1 } }, wants: { coilRate: 6.25 } };
    expect(askIn(silent, held).status).toBe('not-known');
    const answer = askIn(silent, { ...held, allowUnknown: true });
    expect([answer.status, answer.plans]).toEqual(['nothing-to-do', []]);
    expect(flagParams(answer, 'rests-on-silence')).toMatchObject([{ about: 'coil-rate-not-known' }]);
  });

  it('an offset, an axle-to-crown: the body that states none leaves them not known', async () => {
    const offset = { least: 50, greatest: 52 };
    const axleToCrown = { least: 600, greatest: 610 };
    // with the length alone wished for, the offset is kept: whether it stays nobody knows either
    for (const [wants, wish, silences] of [
      [{ offset }, 'want-offset', ['offset']],
      [{ axleToCrown }, 'want-axle-to-crown', ['axle-to-crown', 'offset']],
    ] as const) {
      const answer = askIn(silent, { ...odrun, wants });
      expect(verdict(answer)).toEqual(refused('not-known'));
      expect(conflicts(answer)).toEqual([['listing chassis-trait-not-known', `want ${wish}`]]);
      expect(members(answer, 'chassis-trait-not-known')[0]?.params).toEqual({
        chassis: 'Odrun without papers',
        trait: silences[0],
      });
      expect((await askDemo({ ...odrun, wants })).status).toBe('impossible');
      const allowed = onlyPlan(askIn(silent, { ...odrun, wants, allowUnknown: true }));
      expect([allowed.chassis, allowed.unknowns]).toEqual(['odrun-x', silences.length]);
      expect(flagParams(allowed, 'rests-on-silence')).toMatchObject(silences.map((trait) => ({ trait })));
    }
  });

  it('a trait: the damper that states none leaves it not known', async () => {
    const wants = { traits: { 'damper.lockout': 'remote' } };
    const answer = askIn(silent, { ...odrun, wants });
    expect(verdict(answer)).toEqual(refused('not-known'));
    expect(conflicts(answer)).toEqual([['listing trait-not-known', 'want want-trait']]);
    expect(members(answer, 'trait-not-known')[0]?.params).toMatchObject({ sku: 'OD-DMP-X', trait: 'damper.lockout' });
    expect((await askDemo({ ...odrun, wants })).status).toBe('impossible');
  });

  // The lockout is kept: "none". What the damper brings in its place nobody says, so no question could state that it is given up.
  it('a trait that is kept: a damper that states none may keep it or not', () => {
    const wants = { use: ['OD-DMP-X'] };
    const answer = askIn(silent, { ...odrun, wants });
    expect(answer.status).toBe('not-known');
    expect(conflicts(answer)).toEqual([['kept kept-trait', 'listing trait-not-known', 'want want-use']]);
    expect(members(answer, 'trait-not-known')[0]?.params).toMatchObject({ sku: 'OD-DMP-X', trait: 'damper.lockout' });
    const plan = onlyPlan(askIn(silent, { ...odrun, wants, allowUnknown: true }));
    expect([changes(plan), plan.unknowns]).toEqual([['damper: OD-DMP-A -> OD-DMP-X'], 1]);
    expect(flagParams(plan, 'rests-on-silence')).toMatchObject([{ about: 'trait-not-known' }]);
  });

  it('another wish refused: silence about the rate falls with the wish for it', () => {
    const held = { ...odrun, with: { coil: { sku: 'OD-COIL-X', quantity: 1 } } };
    const answer = askIn(silent, { ...held, wants: { coilRate: 6.25, travel: 170, keep: ['coil'] } });
    expect(verdict(answer)).toEqual(refused('not-known'));
    expect(answer.refusal?.instead.map(({ drop }) => drop.map(({ code }) => code))).toEqual([['want-coil-rate']]);
    expect(answer.refusal?.instead[0]?.wants.travel).toBe(170);
  });

  it('a fork without a coil: the question is at fault, and the slots are named', async () => {
    const faults = await faultsDemo({ chassis: 'quennet-622', travelNow: 150, wants: { coilRate: 8 } });
    expect(faults).toMatchObject([{ code: 'unknown-slot', params: { slot: 'coil', family: 'Quennet' } }]);
  });
});

// model.md, section 8: a wish that nothing in the family could meet says what there is.
describe('a wish for what nobody has', () => {
  it.each([
    [{ coilRate: 6.25 }, 'want-coil-rate', { rates: ['5.5', '6.5', '7.5', '8.5', '9.5'] }],
    [{ offset: { least: 50, greatest: 52 } }, 'want-offset', { offsets: ['46'] }],
    [{ traits: { 'damper.lockout': 'remote' } }, 'want-trait', { values: ['none'] }],
    [{ traits: { 'damper.colour': 'red' } }, 'want-trait', { values: [], traits: ['lockout'] }],
  ])('odrun-584, %j: it says what there is', async (wants, code, known) => {
    const answer = await askDemo({ ...odrun, wants });
    expect(answer.status).toBe(code === 'want-trait' && 'traits' in known ? 'not-known' : 'impossible');
    expect(members(answer, code)[0]?.params).toMatchObject(known);
  });

  it('what there is: nothing is said beside it', async () => {
    const answer = await askDemo({ ...odrun, wants: { coilRate: 8.5, keep: ['coil'] } });
    expect(members(answer, 'want-coil-rate')[0]?.params).toEqual({ rate: 8.5 });
  });
});
