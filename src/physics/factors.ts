import { type GaugePressure, gaugePressure, type NewtonMetres, newtonMetres } from './units.ts';

/**
 * Factors to SI, exact by the definitions of the inch (0.0254 m), the pound (0.453 592 37 kg) and free fall
 * (9.806 65 m/s²). Source: NIST SP 811 (2008), appendix B.8, which prints them to seven digits.
 */
const INCH = 0.0254;
const POUND_FORCE = 4.448_221_615_260_5;

/** Pascals to a unit of pressure. */
export const PASCALS_PER = { psi: POUND_FORCE / INCH ** 2, bar: 100_000 } as const;
export type PressureUnit = keyof typeof PASCALS_PER;

/** Newton metres to a unit of torque. */
const NEWTON_METRES_PER = { N·m: 1, in·lbf: POUND_FORCE * INCH, ft·lbf: POUND_FORCE * INCH * 12 } as const;
export type TorqueUnit = keyof typeof NEWTON_METRES_PER;

/** A gauge pressure as a pump's scale says it. */
export const inPressureUnit = (pressure: GaugePressure, unit: PressureUnit): number => pressure / PASCALS_PER[unit];
export const fromPressureUnit = (number: number, unit: PressureUnit): GaugePressure =>
  gaugePressure(number * PASCALS_PER[unit]);

/** A torque as a tool's scale says it. */
export const inTorqueUnit = (torque: NewtonMetres, unit: TorqueUnit): number => torque / NEWTON_METRES_PER[unit];
export const fromTorqueUnit = (number: number, unit: TorqueUnit): NewtonMetres =>
  newtonMetres(number * NEWTON_METRES_PER[unit]);
