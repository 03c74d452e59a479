import { describe, expect, it } from 'vitest';
import {
  type AirSpring,
  absolutePressure,
  airForce,
  airPressures,
  airWork,
  CLEARANCE_TEST,
  celsius,
  clearanceTestTravel,
  cubicMetres,
  gaugePressure,
  inPressureUnit,
  newtons,
  pressureElsewhere,
  pressureForForce,
  STANDARD_ATMOSPHERE,
  squareMetres,
} from '../../src/physics/index.ts';
import { asPrinted, value } from '../physics/outcomes.ts';
import { bar, circle, filled, mm, workedSpring } from '../physics/springs.ts';

describe('gas law: OpenStax University Physics vol. 2, section 3.6, compression of an automobile cylinder', () => {
  // 1.00e5 Pa and 20 °C, from 240 to 40 cm³, gamma 1.40: p2 = 1.23e6 Pa, T2 = 600 K (printed as 328 °C from the rounded
  // pressure; unrounded it is 599.97 K, 327 °C), W = -63 J. A chamber of 240 cm³ with a piston of 20 cm² pressed 100 mm.
  const cylinder: AirSpring = {
    travel: mm(100),
    pistonArea: squareMetres(20e-4),
    shaftArea: squareMetres(0),
    positiveVolume: cubicMetres(240e-6),
    spacerVolume: cubicMetres(0),
    spacers: 0,
    negative: { kind: 'none' },
  };
  const state = { pump: gaugePressure(0), ambient: absolutePressure(1e5), exponent: 1.4 };

  it('pressure: 1.23e6 Pa, unrounded 1.228 60e6', () => {
    const { positive } = value(airPressures(cylinder, state, mm(100)));
    expect(asPrinted(positive / 1e6, 1.23, 2)).toBe(true);
    expect(asPrinted(positive / 1e6, 1.2286, 5)).toBe(true);
  });

  it('temperature: 600 K from the pressure and the volumes, unrounded 599.97 K (the book takes 20 °C for 293 K)', () => {
    const { positive } = value(airPressures(cylinder, state, mm(100)));
    const temperature = (293 * positive * 40) / (1e5 * 240);
    expect(asPrinted(temperature, 599.97, 2)).toBe(true);
  });

  it('work: the gas does -63 J, unrounded -62.86 J', () => {
    // airWork is net of the air around, which does 1e5 Pa times 200 cm³ = 20 J.
    const onGas = value(airWork(cylinder, state, mm(0), mm(100))) + 20;
    expect(asPrinted(-onGas, -63, 0)).toBe(true);
    expect(asPrinted(-onGas, -62.86, 2)).toBe(true);
  });
});

describe('worked spring: two methods outside this project (closed form; Runge-Kutta of order 8) that agreed to 2e-9 N', () => {
  const TRAVELS = [0, 40, 80, 120, 160];
  const ambient = 101_325;
  /** Pressure in bar absolute, force of the positive chamber, net force; at each of the five travels. */
  const at = (exponent: number, spacers: number) =>
    TRAVELS.map((x) => {
      const { positive } = value(airPressures(workedSpring(spacers), filled(exponent), mm(x)));
      return {
        bar: positive / 1e5,
        positive: (positive - ambient) * circle(35),
        net: value(airForce(workedSpring(spacers), filled(exponent), mm(x))) as number,
      };
    });

  it.each([
    [1, 0, 'bar', [6.0133, 7.1586, 8.843, 11.5639, 16.7035]],
    [1, 0, 'positive', [481.0564, 591.2549, 753.3116, 1015.0956, 1509.5763]],
    [1, 0, 'net', [56.5487, 351.2719, 599.8779, 911.8973, 1439.1911]],
    [1, 2, 'net', [56.5487, 362.0497, 633.5452, 1001.673, 1709.1039]],
    [1.3, 0, 'bar', [6.0133, 7.543, 9.9277, 14.0704, 22.6943]],
    [1.3, 0, 'positive', [481.0564, 628.239, 857.6685, 1256.2403, 2085.9575]],
    [1.3, 0, 'net', [56.5487, 429.3003, 752.8872, 1201.7708, 2062.3002]],
    [1.3, 2, 'bar', [6.0133, 7.6968, 10.4414, 15.5639, 27.7696]],
    [1.3, 2, 'positive', [481.0564, 643.037, 907.0935, 1399.932, 2574.262]],
    [1.3, 2, 'net', [56.5487, 444.0983, 802.3122, 1345.4625, 2550.6047]],
    [1.4, 0, 'net', [56.5487, 454.5637, 804.3557, 1306.5279, 2309.4024]],
    [1.4, 2, 'net', [56.5487, 470.7929, 859.7839, 1472.3837, 2896.5322]],
  ] as const)('table: n = %f, %i spacers, %s', (exponent, spacers, column, expected) => {
    const found = at(exponent, spacers).map((row) => row[column]);
    for (const [index, one] of expected.entries()) expect(found[index]).toBeCloseTo(one, 4);
  });

  it('negative chamber: 424.5077 N at full extension to 70.3852 N at full travel, n = 1', () => {
    const found = TRAVELS.map((x) => {
      const { negative } = value(airPressures(workedSpring(0), filled(1), mm(x)));
      return ((negative ?? 0) - ambient) * (circle(35) - circle(12));
    });
    for (const [index, one] of [424.5077, 239.983, 153.4338, 103.1983, 70.3852].entries())
      expect(found[index]).toBeCloseTo(one, 4);
  });

  it('compression: by the pressures at n = 1, 2.7778 without and 3.2443 with two spacers', () => {
    const ratio = (spacers: number): number => {
      const [first, last] = [at(1, spacers)[0], at(1, spacers)[4]];
      return (last?.bar ?? 0) / (first?.bar ?? 0);
    };
    expect([ratio(0), ratio(2)].map((one) => one.toFixed(4))).toEqual(['2.7778', '3.2443']);
  });

  it('work: on the positive chamber above the air around 132.1694 J (n = 1, none) and 173.2699 J (n = 1.3, two)', () => {
    const open = (spacers: number): AirSpring => ({ ...workedSpring(spacers), negative: { kind: 'none' } });
    expect(value(airWork(open(0), filled(1), mm(0), mm(160)))).toBeCloseTo(132.1694, 4);
    expect(value(airWork(open(2), filled(1.3), mm(0), mm(160)))).toBeCloseTo(173.2699, 4);
  });

  it('pressure for 350 N at 40 mm: 4.978 914 bar without, 4.806 008 bar with two spacers (72.2130 and 69.7053 psi)', () => {
    const wanted = (spacers: number) =>
      value(pressureForForce(workedSpring(spacers), STANDARD_ATMOSPHERE, mm(40), newtons(350)));
    expect([wanted(0), wanted(2)].map((one) => (one / 1e5).toFixed(6))).toEqual(['4.978914', '4.806008']);
    expect([wanted(0), wanted(2)].map((one) => inPressureUnit(one, 'psi').toFixed(4))).toEqual(['72.2130', '69.7053']);
  });

  it('temperature: 5.0 bar at 20 °C is 4.589 749 bar at 0 °C and 5.410 251 bar at 40 °C', () => {
    const from = { temperature: celsius(20), ambient: STANDARD_ATMOSPHERE };
    const to = (temperature: number) => ({ temperature: celsius(temperature), ambient: STANDARD_ATMOSPHERE });
    const found = [0, 40].map((one) => value(pressureElsewhere(bar(5), from, to(one))) / 1e5);
    expect(found.map((one) => one.toFixed(6))).toEqual(['4.589749', '5.410251']);
  });
});

describe('tyre clearance: ISO 4210-6 clause 5.1, read in its Taiwanese edition', () => {
  it('force: 2800 N for one minute', () => {
    expect(CLEARANCE_TEST).toEqual({ force: 2800, seconds: 60 });
  });

  it('travel: 1709.1 N hold the worked spring at its end, so 2800 N press it there', () => {
    expect(value(clearanceTestTravel(workedSpring(2), filled(1)))).toMatchObject({ travel: 0.16, toTheEnd: true });
  });

  it('travel: a spring that holds 2800 N short of the end is pressed to where it does', () => {
    // 12 bar instead of 5: (13.01325 · 3.2443 - 1.01325) bar on 9.621 128 cm² is 3964 N, well above 2800 N.
    const state = { ...filled(1), pump: bar(12) };
    const { travel, toTheEnd } = value(clearanceTestTravel(workedSpring(2), state));
    expect(toTheEnd).toBe(false);
    expect(value(airForce(workedSpring(2), state, travel))).toBeCloseTo(2800, 6);
  });
});
