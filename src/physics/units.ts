/**
 * The units of physics: SI, floating point, one brand each, so that an absolute pressure is never taken for a gauge
 * pressure, nor a volume for an area. The constructors here are the only way in; they check nothing, the functions do.
 */
declare const brand: unique symbol;
type Branded<Name extends string> = number & { readonly [brand]: Name };

export type Metres = Branded<'Metres'>;
export type SquareMetres = Branded<'SquareMetres'>;
export type CubicMetres = Branded<'CubicMetres'>;
export type Kilograms = Branded<'Kilograms'>;
export type Newtons = Branded<'Newtons'>;
export type Joules = Branded<'Joules'>;
/** Spring rate, N/m. (Whole numbers of it are a brand of `quantity`; this one is not whole.) */
export type SpringRate = Branded<'SpringRate'>;
/** Pascals above nothing: what the gas laws speak of. */
export type AbsolutePressure = Branded<'AbsolutePressure'>;
/** Pascals above the air around: what a pump shows. */
export type GaugePressure = Branded<'GaugePressure'>;
export type Celsius = Branded<'Celsius'>;
export type Degrees = Branded<'Degrees'>;
export type NewtonMetres = Branded<'NewtonMetres'>;
/** Kinematic viscosity, mm²/s (the same number in centistokes): the unit that every standard on oil counts in. */
export type Viscosity = Branded<'Viscosity'>;

export const metres = (value: number): Metres => value as Metres;
export const squareMetres = (value: number): SquareMetres => value as SquareMetres;
export const cubicMetres = (value: number): CubicMetres => value as CubicMetres;
export const kilograms = (value: number): Kilograms => value as Kilograms;
export const newtons = (value: number): Newtons => value as Newtons;
export const joules = (value: number): Joules => value as Joules;
export const springRate = (value: number): SpringRate => value as SpringRate;
export const absolutePressure = (value: number): AbsolutePressure => value as AbsolutePressure;
export const gaugePressure = (value: number): GaugePressure => value as GaugePressure;
export const celsius = (value: number): Celsius => value as Celsius;
export const degrees = (value: number): Degrees => value as Degrees;
export const newtonMetres = (value: number): NewtonMetres => value as NewtonMetres;
export const viscosity = (value: number): Viscosity => value as Viscosity;

/** Above the air around, from above nothing. */
export const toGauge = (pressure: AbsolutePressure, ambient: AbsolutePressure): GaugePressure =>
  gaugePressure(pressure - ambient);
/** Above nothing, from above the air around. */
export const toAbsolute = (pressure: GaugePressure, ambient: AbsolutePressure): AbsolutePressure =>
  absolutePressure(pressure + ambient);

/** Standard atmosphere, 101 325 Pa exactly. NIST SP 811 (2008), appendix B.8. */
export const STANDARD_ATMOSPHERE = absolutePressure(101_325);
/** Standard acceleration of free fall, m/s², exactly. NIST SP 811 (2008), appendix B.8. */
export const FREE_FALL = 9.806_65;
/** 0 °C in kelvin, exactly. */
export const ICE_POINT = 273.15;
export const toRadians = (angle: number): number => (angle * Math.PI) / 180;
export const toDegrees = (angle: number): Degrees => degrees((angle * 180) / Math.PI);
/** Sine and cosine of an angle in degrees; exactly 1 and 0 at a right angle. */
export const sine = (angle: Degrees): number => (angle === 90 ? 1 : Math.sin(toRadians(angle)));
export const cosine = (angle: Degrees): number => (angle === 90 ? 0 : Math.cos(toRadians(angle)));
