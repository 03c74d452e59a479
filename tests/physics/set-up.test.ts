import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  absolutePressure,
  axialLoad,
  celsius,
  chartRow,
  coilForRider,
  fromPressureUnit,
  gaugePressure,
  inPressureUnit,
  kilograms,
  newtons,
  onPumpScale,
  type PressureLimits,
  pressureElsewhere,
  rateForForce,
  type SetUpQuestion,
  STANDARD_ATMOSPHERE,
  springRate,
  startPressure,
  travelUnder,
} from '../../src/physics/index.ts';
import { hold } from '../laws/hold.ts';
import { code, value } from './outcomes.ts';
import { rider } from './people.ts';
import { bar, mm, springs, within, workedSpring } from './springs.ts';

const psi = (pressure: number) => fromPressureUnit(pressure, 'psi');
const OPEN: PressureLimits = { least: null, greatest: null, chart: null };
const CHART: PressureLimits = {
  least: psi(50),
  greatest: psi(120),
  chart: [
    { from: kilograms(60), to: kilograms(70), least: psi(60), greatest: psi(68) },
    { from: kilograms(70), to: kilograms(80), least: psi(68), greatest: psi(76) },
    { from: kilograms(85), to: kilograms(95), least: psi(80), greatest: psi(92) },
  ],
};
const question = (mass: number, limits: PressureLimits, frontShare = 0.4): SetUpQuestion => ({
  spring: workedSpring(2),
  rider: rider(mass, frontShare, 66),
  sag: { wanted: 0.25, tolerance: 0.02 },
  ambient: STANDARD_ATMOSPHERE,
  limits,
});

describe('load', () => {
  it('force along the fork: 80 kg, 40 % in front, at 90° 313.8 N, at 66° sin 66° of it', () => {
    // 80 · 9.806 65 · 0.4 = 313.8128 N
    expect(value(axialLoad(rider(80, 0.4, 90)))).toBeCloseTo(313.8128, 9);
    expect(value(axialLoad(rider(80, 0.4, 66)))).toBeCloseTo(313.8128 * Math.sin((66 * Math.PI) / 180), 9);
  });
});

describe('who is reckoned with', () => {
  it.each<[string, () => string]>([
    ['a rider of 15 kg', () => code(axialLoad(rider(15)))],
    ['a rider of 250 kg', () => code(axialLoad(rider(250)))],
    ['all the weight in front, steering straight down', () => code(axialLoad(rider(80, 1, 90)))],
  ])('edge: %s is', (_who, found) => {
    expect(found()).toBe('ok');
  });

  it('beyond the edges: refused, with what was found and the range', () => {
    expect(axialLoad(rider(14.9))).toEqual({
      ok: false,
      code: 'out-of-range',
      params: { quantity: 'rider mass', unit: 'kg', found: 14.9, least: 15, greatest: 250 },
    });
    expect(
      [rider(250.1), rider(80, 1.001), rider(80, 0.049), rider(80, 0.4, 90.1)].map((one) => code(axialLoad(one))),
    ).toEqual(Array.from({ length: 4 }, () => 'out-of-range'));
  });
});

describe('starting pressure', () => {
  it('worked: whatever load the rider makes, the worked pressure comes back for 350 N at 40 of 160 mm', () => {
    // Two spacers: 4.806 008 bar, 69.7053 psi (standards tests). 350 N at 66° is 350 / (9.806 65 · 0.4 · sin 66°) = 97.67 kg.
    const mass = 350 / (9.80665 * 0.4 * Math.sin((66 * Math.PI) / 180));
    const found = value(startPressure(question(mass, OPEN)));
    expect(found.load).toBeCloseTo(350, 9);
    expect(found.pressure / 1e5).toBeCloseTo(4.806008, 6);
    expect(found).toMatchObject({ kind: 'starting-point', chart: null, against: 'no-chart', limitsKnown: false });
  });

  it('range: on the marks of a pump, its ends give a sag within the tolerance', () => {
    hold('pump range', 400, fc.tuple(springs, within(30, 130), within(0.15, 0.35), within(0.01, 0.05)), (one) => {
      const [spring, mass, wanted, tolerance] = one;
      const found = startPressure({
        spring,
        rider: rider(mass),
        sag: { wanted, tolerance },
        ambient: STANDARD_ATMOSPHERE,
        limits: OPEN,
      });
      if (!found.ok || !found.value.psi || found.value.psi.least === found.value.psi.greatest) return;
      for (const mark of [found.value.psi.least, found.value.psi.greatest]) {
        expect(Number.isInteger(mark)).toBe(true);
        const state = { pump: psi(mark), ambient: STANDARD_ATMOSPHERE, exponent: 1 };
        const sag = value(travelUnder(spring, state, found.value.load)) / spring.travel;
        expect(Math.abs(sag - wanted)).toBeLessThanOrEqual(tolerance + 1e-5);
      }
      // No mark that would do is left out: the next ones to either side give a sag beyond it.
      for (const mark of [found.value.psi.least - 1, found.value.psi.greatest + 1]) {
        const state = { pump: psi(Math.max(0, mark)), ambient: STANDARD_ATMOSPHERE, exponent: 1 };
        const sag = value(travelUnder(spring, state, found.value.load)) / spring.travel;
        if (mark > 0) expect(Math.abs(sag - wanted)).toBeGreaterThan(tolerance - 1e-5);
      }
    });
  });

  it('chart: the row is shown, and how the figure stands to it', () => {
    // The rider of the worked pressure is 97.7 kg; with more weight in front a lighter one makes the same 350 N.
    const share = (mass: number): number => 350 / (9.80665 * mass * Math.sin((66 * Math.PI) / 180));
    const at = (mass: number) => value(startPressure(question(mass, CHART, share(mass))));
    expect(at(75)).toMatchObject({ against: 'within-chart', chart: { from: 70, to: 80 }, limitsKnown: true });
    expect(at(65)).toMatchObject({ against: 'above-chart', chart: { from: 60, to: 70 } });
    expect(at(90)).toMatchObject({ against: 'below-chart', chart: { from: 85, to: 95 } });
  });

  it('refused: below the chart, above it and between its rows, never carried on', () => {
    expect(startPressure(question(45, CHART))).toMatchObject({ code: 'below-chart', params: { mass: 45, least: 60 } });
    expect(startPressure(question(99, CHART))).toMatchObject({ code: 'above-chart', params: { greatest: 95 } });
    expect(startPressure(question(82, CHART))).toMatchObject({ code: 'not-on-chart', params: { mass: 82 } });
    expect(code(chartRow([], kilograms(80)))).toBe('not-on-chart');
    expect([60, 95].map((mass) => code(chartRow(CHART.chart ?? [], kilograms(mass))))).toEqual(['ok', 'ok']);
    // Two rows name 70 kg: the first holds.
    expect(value(chartRow(CHART.chart ?? [], kilograms(70))).to).toBe(70);
  });

  it('refused: a greatest pressure below the least', () => {
    const found = startPressure(question(80, { ...OPEN, least: psi(80), greatest: psi(60) }));
    expect(found).toMatchObject({ code: 'out-of-range', params: { quantity: 'greatest pressure' } });
  });

  it('refused: less than the maker’s least pressure, more than the greatest', () => {
    // 60 kg make 219 N: about 47 psi; 130 kg make 466 N.
    expect(code(startPressure(question(60, { ...OPEN, least: psi(60) })))).toBe('below-least-pressure');
    expect(code(startPressure(question(130, { ...OPEN, greatest: psi(80) })))).toBe('above-greatest-pressure');
  });

  it('law: an answer means that a row names the rider and that the pressure is within the maker’s limits', () => {
    const { chart, least, greatest } = CHART;
    hold('never carried on', 1000, fc.tuple(within(20, 140), within(0.3, 0.8)), ([mass, share]) => {
      const found = startPressure(question(mass, CHART, share));
      const named = (chart ?? []).some(({ from, to }) => mass >= from && mass <= to);
      if (!named) expect(['below-chart', 'above-chart', 'not-on-chart']).toContain(code(found));
      if (!found.ok) return;
      expect(named).toBe(true);
      for (const mark of [found.value.psi?.least, found.value.psi?.greatest]) {
        expect(mark).toBeGreaterThanOrEqual(inPressureUnit(least ?? psi(0), 'psi') - 1e-4);
        expect(mark).toBeLessThanOrEqual(inPressureUnit(greatest ?? psi(0), 'psi') + 1e-4);
      }
    });
  });

  it('limits: the range stays within them', () => {
    const found = value(startPressure(question(97.67, { ...OPEN, least: psi(69.5), greatest: psi(70.2) })));
    expect(found.psi).toEqual({ unit: 'psi', least: 70, greatest: 70 });
    // 69.5 to 70.2 psi are 4.792 to 4.840 bar: no tenth lies between.
    expect(found.bar).toEqual({ unit: 'bar', least: 4.8, greatest: 4.8 });
    const narrow = value(startPressure(question(97.67, { ...OPEN, least: psi(69.65), greatest: psi(69.75) })));
    expect(narrow.psi).toBeNull();
  });
});

describe('pump scale', () => {
  const open = { least: null, greatest: null };
  const range = (least: number, wanted: number, greatest: number) => ({
    least: psi(least),
    wanted: psi(wanted),
    greatest: psi(greatest),
  });

  it('marks: inward, whole psi and tenths of a bar', () => {
    expect(value(onPumpScale('psi', range(68.2, 70, 73.9), open))).toEqual({ unit: 'psi', least: 69, greatest: 73 });
    // 68.2 psi is 4.702 bar, 73.9 psi is 5.095 bar.
    expect(value(onPumpScale('bar', range(68.2, 70, 73.9), open))).toEqual({ unit: 'bar', least: 4.8, greatest: 5 });
  });

  it('marks: an exact mark counts, though it came through pascals', () => {
    hold('marks', 300, fc.integer({ min: 10, max: 300 }), (mark) => {
      expect(value(onPumpScale('psi', range(mark, mark, mark), open))).toEqual({
        unit: 'psi',
        least: mark,
        greatest: mark,
      });
    });
  });

  it('marks: a range that ends on marks has both of them', () => {
    hold(
      'ranges of marks',
      300,
      fc.tuple(fc.integer({ min: 10, max: 150 }), fc.integer({ min: 1, max: 40 })),
      (one) => {
        const [least, more] = one;
        const found = value(onPumpScale('psi', range(least, least + more / 2, least + more), open));
        expect(found).toEqual({ unit: 'psi', least, greatest: least + more });
      },
    );
  });

  it('marks: where none lies within, the nearest to what is wanted', () => {
    expect(value(onPumpScale('psi', range(70.2, 70.3, 70.6), open))).toMatchObject({ least: 70, greatest: 70 });
    expect(value(onPumpScale('psi', range(70.2, 70.55, 70.6), open))).toMatchObject({ least: 71, greatest: 71 });
  });

  it('marks: a limit on a mark allows that mark', () => {
    hold('limits on marks', 300, fc.integer({ min: 10, max: 300 }), (mark) => {
      const between = range(mark + 0.2, mark + 0.3, mark + 0.4);
      expect(value(onPumpScale('psi', between, { least: psi(mark), greatest: null })).least).toBe(mark);
      const below = range(mark - 0.4, mark - 0.3, mark - 0.2);
      expect(value(onPumpScale('psi', below, { least: null, greatest: psi(mark) })).least).toBe(mark);
    });
  });

  it('marks: never outside the maker’s limits', () => {
    const limits = { least: psi(70.1), greatest: null };
    expect(value(onPumpScale('psi', range(70.2, 70.3, 70.6), limits))).toMatchObject({ least: 71, greatest: 71 });
    expect(code(onPumpScale('psi', range(70.2, 70.3, 70.4), { least: psi(70.1), greatest: psi(70.5) }))).toBe(
      'no-mark-within-limits',
    );
  });
});

describe('temperature and height', () => {
  it('height: filled at the sea, the same air shows more where less air is around', () => {
    const at = (pressure: number) => ({ temperature: celsius(20), ambient: absolutePressure(pressure) });
    // Absolute pressure stays: 5.0 + 1.01325 - 0.80 bar.
    expect(value(pressureElsewhere(bar(5), at(101_325), at(80_000)))).toBeCloseTo(521_325, 6);
  });

  it('there and back: the pressure that was', () => {
    const places = fc.record({
      temperature: within(-30, 60).map(celsius),
      ambient: within(5e4, 1.1e5).map(absolutePressure),
    });
    hold('temperature', 300, fc.tuple(within(1e5, 2e6), places, places), ([pressure, a, b]) => {
      const there = value(pressureElsewhere(gaugePressure(pressure), a, b));
      expect(inPressureUnit(value(pressureElsewhere(there, b, a)), 'psi')).toBeCloseTo(pressure / 6894.757293, 6);
    });
  });
});

describe('coil for a rider', () => {
  const coil = { travel: mm(150), preload: mm(5), room: null };
  const rates = [4000, 5000, 6000, 7500].map(springRate);
  const ask = (mass: number) =>
    coilForRider({ coil, rates, rider: rider(mass, 0.4, 90), sag: { wanted: 0.3, tolerance: 0.04 } });

  it('rate: the force over sag and preload', () => {
    expect(value(rateForForce(coil, mm(45), newtons(300)))).toBeCloseTo(300 / 0.05, 9);
  });

  it('choice: the coils within the tolerance, nearest first, with the sag that each gives', () => {
    // 70 kg in front at 40 % is 274.59 N: 5000 N/m gives 54.92 - 5 = 49.92 mm (33.3 %), 6000 gives 40.76 mm (27.2 %).
    const found = value(ask(70));
    expect(found.wanted).toBeCloseTo(274.5862 / 0.05, 3);
    expect(found.suit.map(({ rate }) => rate)).toEqual([6000, 5000]);
    expect(found.suit[0]?.sag).toBeCloseTo(0.04076437 / 0.15, 6);
  });

  it('refused: a rider too light for the softest and too heavy for the hardest', () => {
    expect(ask(30)).toMatchObject({ code: 'no-coil-suits', params: { softest: 4000, hardest: 7500 } });
    expect(code(ask(140))).toBe('no-coil-suits');
  });
});
