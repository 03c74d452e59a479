import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  celsius,
  compareOils,
  type NamedOil,
  viscosity,
  viscosityAt,
  viscosityIndex,
  zOf,
} from '../../src/physics/index.ts';
import { hold } from '../laws/hold.ts';
import { code, value } from './outcomes.ts';
import { root } from './root.ts';
import { within } from './springs.ts';

const oil = (use: string, at40: number | null, at100: number | null): NamedOil => ({
  use,
  at40: at40 === null ? null : viscosity(at40),
  at100: at100 === null ? null : viscosity(at100),
});
const pairs = fc
  .tuple(within(2, 200), within(0.1, 0.9))
  .map(([at40, share]) => ({ at40: viscosity(at40), at100: viscosity(Math.max(0.6, at40 * share)) }));

describe('viscosity at a temperature', () => {
  it('second method: the temperature at which log log Z has the wanted share, by root finding in natural logs', () => {
    hold('D341 by roots', 1500, fc.tuple(pairs, within(-20, 120)), ([pair, temperature]) => {
      const found = viscosityAt(pair, celsius(temperature));
      if (!found.ok) expect(found.code).toBe('out-of-range');
      if (!found.ok) return;
      const ordinate = (nu: number): number => Math.log(Math.log(zOf(nu)));
      const abscissa = (t: number): number => Math.log(t + 273.15);
      const share = (abscissa(temperature) - abscissa(40)) / (abscissa(100) - abscissa(40));
      const wanted = ordinate(pair.at40) + share * (ordinate(pair.at100) - ordinate(pair.at40));
      const expected = root((nu) => ordinate(nu) - wanted, 0.3, 2e5);
      expect(Math.abs(found.value / expected - 1)).toBeLessThan(1e-6);
    });
  });

  it('the given points: come back', () => {
    hold('D341 points', 500, pairs, (pair) => {
      expect(value(viscosityAt(pair, celsius(40))) / pair.at40).toBeCloseTo(1, 9);
      expect(value(viscosityAt(pair, celsius(100))) / pair.at100).toBeCloseTo(1, 9);
    });
  });

  it('colder is thicker', () => {
    hold('D341 falls', 500, fc.tuple(pairs, within(-10, 110), within(1, 30)), ([pair, temperature, by]) => {
      const [warm, cold] = [viscosityAt(pair, celsius(temperature)), viscosityAt(pair, celsius(temperature - by))];
      if (warm.ok && cold.ok) expect(cold.value).toBeGreaterThan(warm.value);
      // Where one is out of range it is the colder that is too thick or the warmer that is too thin.
      else expect(warm.ok && cold.ok).toBe(false);
    });
  });

  it('an oil that does not thin on warming is none', () => {
    const solid = { at40: viscosity(10), at100: viscosity(10) };
    expect([code(viscosityAt(solid, celsius(20))), code(viscosityIndex(solid))]).toEqual([
      'not-thinning',
      'not-thinning',
    ]);
  });
});

describe('viscosity index', () => {
  it('less thick at 40 °C for the same at 100 °C: a higher index, with no jump where the procedures meet', () => {
    hold('index rises', 1000, fc.tuple(within(2, 15), within(1.1, 12)), ([at100, times]) => {
      const at = (at40: number) => value(viscosityIndex({ at40: viscosity(at40), at100: viscosity(at100) }));
      const thick = at(at100 * times);
      const thin = at(at100 * times * 0.99);
      expect(thin.exact).toBeGreaterThan(thick.exact);
      expect(thick.procedure).toBe(thick.exact < 100 ? 'A' : 'B');
      expect(thick.rounded).toBe(Math.round(thick.exact));
    });
  });
});

describe('an equal of the specified oil', () => {
  const specified = oil('bath', 32, 5.4);

  it('itself: equal at 40 °C and in the cold', () => {
    expect(value(compareOils(specified, specified, 0.1))).toEqual({
      sameUse: true,
      at40: 'equal',
      ratio40: 1,
      inTheCold: 'equal',
      ratio0: 1,
    });
  });

  it('band: 10 % to either side, its edges included', () => {
    const at = (at40: number) => value(compareOils(specified, oil('bath', at40, null), 0.1)).at40;
    expect([28.7, 28.8, 35.2, 35.3].map(at)).toEqual(['thinner', 'equal', 'equal', 'thicker']);
  });

  it('in the cold: equal at 40 °C, and yet thicker at 0 °C', () => {
    // 32 and 5.4: 335.9996 mm²/s at 0 °C (standards tests). 32 and 4.8 thins faster, so it is thicker there.
    const found = value(compareOils(specified, oil('bath', 32, 4.8), 0.1));
    expect(found).toMatchObject({ at40: 'equal', ratio40: 1, inTheCold: 'thicker' });
    expect(value(compareOils(specified, oil('bath', 32, 6.4), 0.1)).inTheCold).toBe('thinner');
  });

  it('never across uses: a damper oil is no bath oil, though every figure agrees', () => {
    expect(value(compareOils(specified, oil('damper', 32, 5.4), 0.1))).toEqual({
      sameUse: false,
      at40: 'not-known',
      ratio40: null,
      inTheCold: 'not-known',
      ratio0: null,
    });
  });

  it('what is not printed is not known', () => {
    expect(value(compareOils(specified, oil('bath', null, 5.4), 0.1))).toMatchObject({
      at40: 'not-known',
      inTheCold: 'not-known',
    });
    expect(value(compareOils(specified, oil('bath', 32, null), 0.1))).toMatchObject({
      at40: 'equal',
      inTheCold: 'not-known',
    });
  });

  it('law: what is thicker than the other is thinner seen from the other side', () => {
    hold('comparison turned round', 500, fc.tuple(pairs, pairs), ([a, b]) => {
      const [one, other] = [
        { use: 'bath', ...a },
        { use: 'bath', ...b },
      ];
      const [there, back] = [value(compareOils(one, other, 0)), value(compareOils(other, one, 0))];
      expect((there.ratio40 ?? 0) * (back.ratio40 ?? 0)).toBeCloseTo(1, 9);
      if (there.at40 === 'thicker') expect(back.at40).toBe('thinner');
    });
  });
});
