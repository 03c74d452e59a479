import { describe, expect, it } from 'vitest';
import { type AnswerDocument, answerSchema, ask, type QuestionInput } from '../../src/plan/index.ts';
import { answerDocument } from '../../src/report/document.ts';
import { en } from '../../src/report/words/en.ts';
import { workedText, worldOf } from './worked-fork.ts';

const world = worldOf(workedText);

function asked(question: Partial<QuestionInput>): AnswerDocument {
  const reply = ask(world, { chassis: 'wend-622', travelNow: 160, wants: { travel: 130 }, ...question });
  if (reply.kind === 'faults') throw new Error(JSON.stringify(reply.faults));
  return answerSchema.parse(answerDocument(reply.answer, en, world.catalog, 'without-places'));
}
function effects(question: Partial<QuestionInput>) {
  const plan = asked(question).plans[0];
  if (!plan) throw new Error('no plan');
  const codes = plan.flags.map(({ code }) => code);
  return { ...plan.effects, codes, flags: plan.flags };
}

describe('effects on the spring', () => {
  // 100 kg x 9.80665 x 0.39067 x sin 66° = 349.994 N. By p V = const in both chambers, worked apart from the program:
  // 160 mm without spacers: 72.21 psi at 40 mm of sag, 67.71 at 43.2 and 77.30 at 36.8 mm; at the end with n = 1.3 2055.0 N.
  // 130 mm with three: 81.39 psi at 32.5 mm, 76.38 at 35.1, 87.04 at 29.9; at the end 1847.99 N. 4.38 spacers keep 5.8715.
  const rider = { mass: 100, frontShare: 0.39067 };

  it('a rider is named: the chart first, then what was worked out for the sag, both before and after', () => {
    const { spring, codes } = effects({ rider });
    expect(spring?.rider).toEqual({ mass: 100, named: true, frontShare: 0.39067, headAngle: 66, sag: 0.25, load: 350 });
    expect(spring?.before).toEqual({
      sku: 'W-S',
      kind: 'air',
      travel: 160,
      volumeSpacers: 0,
      rate: null,
      chart: { from: 90, to: 110, psi: { least: 66, greatest: 84 }, bar: { least: 4.6, greatest: 5.8 } },
      start: { psi: { least: 68, greatest: 77 }, bar: { least: 4.7, greatest: 5.3 } },
      sag: 40,
      forceAtSag: 350,
      forceAtEnd: 2055,
      endRatio: 5.87,
      outside: null,
    });
    expect(spring?.after).toMatchObject({
      sku: 'W-T',
      travel: 130,
      volumeSpacers: 3,
      start: { psi: { least: 77, greatest: 87 }, bar: { least: 5.3, greatest: 6 } },
      sag: 32.5,
      forceAtEnd: 1848,
      endRatio: 5.28,
    });
    expect(codes).not.toContain('pressure-against-chart');
    expect(codes).not.toContain('spacers-against-physics');
  });

  it('volume spacers: the maker’s count, and beside it the one that keeps the end of the stroke', () => {
    expect(effects({ rider }).spring?.spacers).toEqual({
      fitted: 3,
      makers: 3,
      greatest: 5,
      keeps: 4.4,
      nearest: 4,
      reach: 'within',
      ratioBefore: 5.87,
      ratioAfter: 5.28,
    });
  });

  // With two in it the long fork has 7.05 at the end; five in the short one give 6.21 and more do not go in. 3 and 5 differ by two.
  it('volume spacers: a difference of more than one is a note for the desk, and the maker’s count is fitted', () => {
    const { spring, flags, codes } = effects({ rider, with: { 'volume-spacers': { sku: 'W-V', quantity: 2 } } });
    expect(spring?.spacers).toMatchObject({
      fitted: 3,
      makers: 3,
      keeps: null,
      nearest: 5,
      reach: 'greatest-is-too-few',
    });
    const note = flags.find(({ code }) => code === 'spacers-against-physics');
    expect(note).toMatchObject({ severity: 'advice', params: { makers: 3, nearest: 5, travel: 130 } });
    expect(codes.filter((code) => code === 'spacers-against-physics')).toHaveLength(1);
  });

  it('nobody is named: one in the middle of the chart, and no pressure is flagged', () => {
    const { spring, codes } = effects({});
    expect(spring?.rider).toMatchObject({ mass: 85, named: false, frontShare: 0.4, sag: 0.25 });
    expect(codes).not.toContain('no-start-pressure');
    expect(codes).not.toContain('pressure-against-chart');
  });

  it('below the chart: said, and nothing is carried on', () => {
    const { spring, flags } = effects({ rider: { mass: 50 } });
    expect(spring?.after).toMatchObject({ chart: null, start: null, forceAtEnd: null });
    expect(spring?.after?.outside).toMatchObject({ code: 'below-chart', params: { mass: 50, least: 60 } });
    const flag = flags.find(({ code }) => code === 'no-start-pressure');
    expect(flag?.severity).toBe('verify');
    expect(flag?.message).toContain("50 kg is below the maker's chart, which starts at 60 kg");
  });

  // A quarter less on the fork asks for less pressure than the row of the chart: 262 N by the same sums, about 59 psi.
  it('beside the chart: a note, since the chart comes first', () => {
    const { flags } = effects({ rider: { mass: 100, frontShare: 0.3 } });
    expect(flags.find(({ code }) => code === 'pressure-against-chart')?.params).toMatchObject({
      least: 66,
      greatest: 84,
    });
  });

  it('nothing about the spring changes and nobody is named: nothing is said', () => {
    const { spring } = effects({ wants: { renew: ['wipers'] } });
    expect(spring).toBeNull();
  });
});

describe('effects on the bike', () => {
  // The worked example of 20 mm less (closed form and root find, published slope beside it): 66.8783°, 76.8783°, 1192.0053 mm, trail
  // 109.2873, mechanical trail 100.5085, flop 39.4683, bottom bracket 326.3581, reach 469.4492, stack 612.8763.
  const bike = { onto: 'rill', ontoSize: 'm' };
  const short = `      - { family: wend, travel: 140 mm, volume-spacers: { standard: 3, greatest: 5 } }`;

  it('20 mm less: every figure of the worked example, before and after', () => {
    const reply = ask(worldOf(workedText.replace(/ {6}- \{ family: wend, travel: 130 mm.*/, short)), {
      chassis: 'wend-622',
      travelNow: 160,
      wants: { travel: 140 },
      ...bike,
    });
    if (reply.kind === 'faults') throw new Error(JSON.stringify(reply.faults));
    expect(reply.answer.plans[0]?.effects.geometry).toEqual({
      headAngle: { from: 66, to: 66.88, unit: '°' },
      seatAngle: { from: 76, to: 76.88, unit: '°' },
      trail: { from: 115.7, to: 109.3, unit: 'mm' },
      mechanicalTrail: { from: 105.7, to: 100.5, unit: 'mm' },
      flop: { from: 43, to: 39.5, unit: 'mm' },
      wheelbase: { from: 1200, to: 1192, unit: 'mm' },
      bottomBracketHeight: { from: 333, to: 326.4, unit: 'mm' },
      reach: { from: 460, to: 469.4, unit: 'mm' },
      stack: { from: 620, to: 612.9, unit: 'mm' },
      bike: 'rill',
      size: 'm',
      drawing: 'bikes/rill#geometry[0]',
      frontTyre: { from: '57-622', to: '57-622', assumed: false },
      rearTyre: '57-622',
      atSag: null,
    });
  });

  it('seated: a quarter of each travel shorter, the shorter fork sinks less', () => {
    const { geometry } = effects({ ...bike, rider: { sag: 0.25, rearSag: 0 } });
    const { headAngle, atSag } = geometry ?? {};
    // 40 mm before and 32.5 mm after, at about 23 mm a degree: 1.7 and 1.4 degrees steeper.
    expect((atSag?.headAngle.from ?? 0) - (headAngle?.from ?? 0)).toBeCloseTo(1.77, 1);
    expect((atSag?.headAngle.to ?? 0) - (headAngle?.to ?? 0)).toBeCloseTo(1.46, 1);
  });

  it('the size is not said, or no drawing speaks of it: a note instead of figures', () => {
    for (const [question, lacking] of [
      [{ onto: 'rill', ontoSize: 'l' }, 'drawing'],
      [{ onto: 'rill' }, null],
    ] as const) {
      const { geometry, flags } = effects(question);
      const note = flags.find(({ code }) => code === 'geometry-not-known');
      expect(geometry === null ? note?.params.lacking : null).toBe(lacking);
    }
  });

  // 57-622: 622 + 2 x 57 = 736 mm across, 368 mm of radius; one per cent more is 371.68 mm of radius and 57.57 mm of width.
  it('tyre: what is left at the bottom by its designation, and by the largest that goes by it', () => {
    const { tyre } = effects(bike);
    expect(tyre).toEqual({
      designation: '57-622',
      diameter: { nominal: 736, least: 728.6, greatest: 743.4 },
      verdict: 'tight',
      crown: { nominal: 4, least: 0.3 },
      arch: { nominal: 2, least: -1.7 },
      width: { nominal: 5, least: 4.4 },
    });
    expect(effects({ ...bike, tyre: '50-622' }).tyre).toMatchObject({ verdict: 'clears', arch: { nominal: 9 } });
    expect(effects({}).tyre).toBeNull();
  });

  it('no bike: no figures, and no note', () => {
    const { geometry, codes } = effects({});
    expect(geometry).toBeNull();
    expect(codes).not.toContain('geometry-not-known');
  });
});
