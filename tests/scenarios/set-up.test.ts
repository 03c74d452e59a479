import { describe, expect, it } from 'vitest';
import { type SetUpDocument, setUp, setUpSchema } from '../../src/plan/index.ts';
import { noPaint } from '../../src/report/paint.ts';
import { setUpDocument, setUpText } from '../../src/report/set-up.ts';
import { en } from '../../src/report/words/en.ts';
import { demoFolder, loadCatalogFolder } from '../support/demo.ts';
import { workedText, worldOf } from './worked-fork.ts';

const worked = worldOf(workedText);
const { world: demo } = await loadCatalogFolder(demoFolder);

function setUpOf(question: object, world = worked): SetUpDocument {
  const reply = setUp(world, { chassis: 'wend-622', travelNow: 160, ...question });
  if (reply.kind === 'faults') throw new Error(JSON.stringify(reply.faults));
  const document = setUpSchema.parse(setUpDocument(reply.answer, en));
  const text = setUpText({ page: { width: 80, paint: noPaint }, language: en, catalog: world.catalog }, reply.answer);
  expect(text).not.toMatch(/undefined|NaN|null|\[object/);
  return document;
}

describe('set-up of an air fork', () => {
  // The pressures of the worked spring (see effects.test.ts): 67.71 to 77.30 psi for 43.2 to 36.8 mm of sag under 350 N.
  const rider = { mass: 100, frontShare: 0.39067 };

  it('pressure: the maker’s row first, what was worked out beside it, on both scales of a pump', () => {
    const { status, spring, rider: who, lacking } = setUpOf({ rider });
    expect([status, lacking]).toEqual(['answered', []]);
    expect(who).toEqual({
      mass: 100,
      frontShare: 0.39067,
      headAngle: 66,
      sag: 0.25,
      load: 350,
      assumed: ['head-angle', 'sag'],
    });
    expect(spring).toMatchObject({
      sku: 'W-S',
      chart: { from: 90, to: 110, psi: { least: 66, greatest: 84 } },
      start: { psi: { least: 68, greatest: 77 }, bar: { least: 4.7, greatest: 5.3 } },
      sag: 40,
      forceAtEnd: 2055,
    });
  });

  // p2 = (75 psi + 1 atm) T2/T1 - 1 atm: 68.87... at 0 °C from 20 °C is worked as 89.696 x 273.15/293.15 - 14.696 = 68.88 psi.
  it('temperature: the middle of the row, and what a pump shows of the same air in the cold and the heat', () => {
    const { temperature } = setUpOf({ rider });
    expect(temperature?.filled).toEqual({ celsius: 20, psi: 75, bar: 5.2 });
    expect(temperature?.shows.map(({ celsius, psi }) => [celsius, psi])).toEqual([
      [-10, 66],
      [0, 69],
      [10, 72],
      [20, 75],
      [30, 78],
      [40, 81],
    ]);
    expect(setUpOf({ rider, filledAt: 0 }).temperature?.shows.find(({ celsius }) => celsius === 20)?.psi).toBe(82);
  });

  it('the bike’s drawing says the steering angle', () => {
    const { rider: who } = setUpOf({ rider, onto: 'rill', ontoSize: 'm' });
    expect([who.headAngle, who.assumed]).toEqual([66, ['sag']]);
  });

  it('a rider below or above the chart: no figure, and the chart is not carried on', () => {
    for (const [mass, code] of [
      [59.9, 'below-chart'],
      [110.1, 'above-chart'],
    ] as const) {
      const found = setUpOf({ rider: { mass } });
      expect(found).toMatchObject({ status: 'beyond', temperature: null });
      expect(found.spring).toMatchObject({ chart: null, start: null, forceAtEnd: null, outside: { code } });
    }
    expect(setUpOf({ rider: { mass: 60 } }).status).toBe('answered');
    expect(setUpOf({ rider: { mass: 110 } }).status).toBe('answered');
  });

  // 60 kg with a tenth of it on the fork is 54 N: no pressure of 40 psi or more lets that sag by 40 mm.
  it('a sag that the maker’s limits do not allow: the row of the chart stands, and why nothing is worked out beside it', () => {
    const found = setUpOf({ rider: { mass: 60, frontShare: 0.1 } });
    expect(found.status).toBe('answered');
    expect(found.spring).toMatchObject({ chart: { from: 60 }, start: null, outside: { code: 'below-least-pressure' } });
  });

  it('what the catalogue does not state of a spring: named, and nothing is guessed', () => {
    const silent = worldOf(workedText.replaceAll('positive-volume: 240.528 mL', '').replaceAll('shaft: 12 mm', ''));
    const found = setUpOf({ rider }, silent);
    expect(found).toMatchObject({ status: 'not-known', spring: null, lacking: ['shaft', 'positive-volume'] });
  });

  it('a question without a rider, or with one that is none: a fault', () => {
    for (const question of [{}, { rider: {} }, { rider: { mass: 5 } }, { rider: { mass: 80 }, wants: {} }])
      expect(setUp(worked, { chassis: 'wend-622', travelNow: 160, ...question }).kind).toBe('faults');
  });
});

describe('set-up of a coil fork', () => {
  // 90 kg x 9.80665 x 0.4 x sin 66° = 322.51 N. A quarter of 170 mm is 42.5 mm: 7.59 N/mm. 8 N/mm sags 40.3 mm, 23.7 %; 7 N/mm
  // 46.1 mm, 27.1 %; at the end 7 N/mm holds 1190 N.
  const coil = { chassis: 'arbrask-622', travelNow: 170 };
  it('coils: those near the wanted sag, the nearest first', () => {
    const { status, coils, spring, temperature } = setUpOf({ ...coil, rider: { mass: 90 } }, demo);
    expect([status, temperature]).toEqual(['answered', null]);
    expect(coils?.wantedRate).toBe(7.6);
    expect(coils?.suit.map(({ sku, sag }) => [sku, sag])).toEqual([
      ['AR-COIL-8', 0.237],
      ['AR-COIL-7', 0.271],
    ]);
    expect(spring).toMatchObject({ kind: 'coil', rate: 7, sag: 46.1, forceAtSag: 323, forceAtEnd: 1190 });
  });

  it('a rider for whom the list has none: refused, never sent beyond it', () => {
    const found = setUpOf({ ...coil, rider: { mass: 40 } }, demo);
    expect(found).toMatchObject({ status: 'beyond', coils: { suit: [], outside: { code: 'no-coil-suits' } } });
  });
});
