/**
 * The units that everything inside is held in: whole numbers, so that equal means equal.
 * A brand is made only by the constructors in this folder.
 */
declare const brand: unique symbol;
type Branded<Name extends string> = number & { readonly [brand]: Name };

/** Length, whole micrometres. */
export type Micrometres = Branded<'Micrometres'>;
/** Volume, whole microlitres. */
export type Microlitres = Branded<'Microlitres'>;
/** Mass, whole milligrams. */
export type Milligrams = Branded<'Milligrams'>;
/** Torque, whole millinewton metres. */
export type MillinewtonMetres = Branded<'MillinewtonMetres'>;
/** Gauge pressure, whole pascals. */
export type Pascals = Branded<'Pascals'>;
/** Kinematic viscosity, whole thousandths of mm²/s. */
export type MilliSquareMillimetresPerSecond = Branded<'MilliSquareMillimetresPerSecond'>;
/** Working time or riding time, whole minutes. */
export type Minutes = Branded<'Minutes'>;
/** Spring rate, whole N/m. */
export type NewtonsPerMetre = Branded<'NewtonsPerMetre'>;
/** Area, whole thousandths of mm². */
export type MilliSquareMillimetres = Branded<'MilliSquareMillimetres'>;
/** Angle, whole thousandths of a degree. */
export type Millidegrees = Branded<'Millidegrees'>;
/** Money, whole minor units of the catalogue's currency (ISO 4217). */
export type Minor = Branded<'Minor'>;

/** The dimensions a quantity can have, with the unit each is held in. */
export interface DimensionUnits {
  readonly length: Micrometres;
  readonly volume: Microlitres;
  readonly mass: Milligrams;
  readonly torque: MillinewtonMetres;
  readonly pressure: Pascals;
  readonly viscosity: MilliSquareMillimetresPerSecond;
  readonly time: Minutes;
  readonly rate: NewtonsPerMetre;
  readonly area: MilliSquareMillimetres;
  readonly angle: Millidegrees;
}
export type Dimension = keyof DimensionUnits;

const whole = (value: number): number => {
  if (!Number.isSafeInteger(value)) throw new RangeError(`not a whole number in range: ${value}`);
  return value;
};

/** Brands a whole number as a quantity of the given dimension. Throws on a programming mistake only (not whole). */
export const held = <D extends Dimension>(_dimension: D, value: number): DimensionUnits[D] =>
  whole(value) as DimensionUnits[D];

/** Brands whole minor units as money. Throws on a programming mistake only (not whole). */
export const minor = (value: number): Minor => whole(value) as Minor;

/** Millimetres to micrometres, rounded to the whole micrometre. */
export const millimetres = (value: number): Micrometres => held('length', Math.round(value * 1000));
