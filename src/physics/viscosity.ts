import { type Computed, computed, firstOutside, outside } from './outcome.ts';
import { type Celsius, ICE_POINT, type Viscosity, viscosity } from './units.ts';

/** An oil by what every data sheet prints: kinematic viscosity at 40 °C and at 100 °C. */
export interface OilViscosity {
  readonly at40: Viscosity;
  readonly at100: Viscosity;
}

/**
 * The kinematic viscosity at a temperature: log log Z = A - B log T (logs to ten, T in kelvin), with Z = ν + 0.7 + exp(-1.47
 * - 1.84 ν - 0.51 ν²), through the two given points. Source: ASTM D341 (Walther, MacCoull). Range: 0.5 to 100 000 mm²/s,
 * -40 to 150 °C, an oil that thins on warming. Z is turned back into ν by Newton's method, closer than the standard's own
 * formula for that (2 in 10 000). Left out: cloud and pour point, below which an oil is no longer one liquid.
 */
export function viscosityAt(oil: OilViscosity, temperature: Celsius): Computed<Viscosity> {
  const line = walther(oil);
  if (!line.ok) return line;
  const found = firstOutside([['temperature', '°C', temperature, -40, 150]]);
  if (found) return found;
  const { intercept, slope } = line.value;
  const log = 10 ** (intercept - slope * Math.log10(temperature + ICE_POINT));
  // log Z above 6 is far beyond the range, and would overflow further on.
  const value = log > 6 ? 1e6 : fromZ(10 ** log);
  return firstOutside([['viscosity', 'mm²/s', value, LEAST, GREATEST]]) ?? computed(viscosity(value));
}

/** The line of an oil in D341: `intercept` A and `slope` B. */
export function walther(oil: OilViscosity): Computed<{ readonly intercept: number; readonly slope: number }> {
  const { at40, at100 } = oil;
  const found = firstOutside([
    ['viscosity at 40 °C', 'mm²/s', at40, LEAST, GREATEST],
    ['viscosity at 100 °C', 'mm²/s', at100, LEAST, GREATEST],
  ]);
  if (found) return found;
  if (at100 >= at40) return outside('not-thinning', { at40, at100 });
  const [cold, warm] = [Math.log10(40 + ICE_POINT), Math.log10(100 + ICE_POINT)];
  const [thick, thin] = [logLogZ(at40), logLogZ(at100)];
  const slope = (thick - thin) / (warm - cold);
  return computed({ intercept: thick + slope * cold, slope });
}

const LEAST = 0.5;
const GREATEST = 1e5;

/** Z of D341, from a viscosity in mm²/s. */
export const zOf = (value: number): number => value + 0.7 + Math.exp(-1.47 - 1.84 * value - 0.51 * value ** 2);
const logLogZ = (value: number): number => Math.log10(Math.log10(zOf(value)));

/** The viscosity whose Z is given, by Newton's method from above; Z rises with ν, and its slope with it. */
function fromZ(z: number): number {
  let value = Math.max(0, z - 0.7);
  for (let turn = 0; turn < 8; turn += 1) {
    const slope = 1 - (1.84 + 1.02 * value) * Math.exp(-1.47 - 1.84 * value - 0.51 * value ** 2);
    value = Math.max(0, value - (zOf(value) - z) / slope);
  }
  return value;
}
