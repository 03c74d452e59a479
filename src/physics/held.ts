import type {
  Microlitres,
  Micrometres,
  Millidegrees,
  Milligrams,
  MillinewtonMetres,
  MilliSquareMillimetres,
  MilliSquareMillimetresPerSecond,
  NewtonsPerMetre,
  Pascals,
} from '../quantity/index.ts';
import * as unit from './units.ts';

/** The edge: from the whole numbers that the project holds to the SI that physics counts in. Exact but for the last float digit. */
export const metresOf = (length: Micrometres): unit.Metres => unit.metres(length / 1e6);
export const squareMetresOf = (area: MilliSquareMillimetres): unit.SquareMetres => unit.squareMetres(area / 1e9);
export const cubicMetresOf = (volume: Microlitres): unit.CubicMetres => unit.cubicMetres(volume / 1e9);
export const kilogramsOf = (mass: Milligrams): unit.Kilograms => unit.kilograms(mass / 1e6);
export const newtonMetresOf = (torque: MillinewtonMetres): unit.NewtonMetres => unit.newtonMetres(torque / 1e3);
/** A held pressure is a gauge pressure: what a maker's paper and a pump say. */
export const gaugePressureOf = (pressure: Pascals): unit.GaugePressure => unit.gaugePressure(pressure);
export const springRateOf = (rate: NewtonsPerMetre): unit.SpringRate => unit.springRate(rate);
export const viscosityOf = (held: MilliSquareMillimetresPerSecond): unit.Viscosity => unit.viscosity(held / 1e3);
export const degreesOf = (angle: Millidegrees): unit.Degrees => unit.degrees(angle / 1e3);
