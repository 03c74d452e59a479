/**
 * What every function of this folder returns: a value, or why there is none. Nothing here throws, and no number is NaN or
 * infinite, whatever numbers go in: outside its declared domain a function answers with a code and its parameters.
 */
export type Computed<T> = { readonly ok: true; readonly value: T } | Outside;

/** The parameters of each code. Codes are closed; words for them are made elsewhere. */
export interface OutsideParams {
  /** An input, or a result, is not within the range that the formula is declared for. */
  readonly 'out-of-range': {
    readonly quantity: string;
    readonly unit: string;
    readonly found: number;
    readonly least: number;
    readonly greatest: number;
  };
  /** At full travel too little is left of the positive chamber: volumes in m³. */
  readonly 'chamber-too-small': { readonly left: number; readonly needed: number };
  /** The coil would be pressed shorter than it can be: lengths in m. */
  readonly 'coil-bind': { readonly pressed: number; readonly room: number };
  /** The spring pushes out with no force at the wanted sag, whatever its pressure. */
  readonly 'no-force-at-sag': { readonly sag: number };
  /** The wheels do not reach the ground together: lengths in m. */
  readonly 'no-planar-solution': { readonly axles: number; readonly rise: number };
  /** The maker's chart starts above this rider: masses in kg. It is not carried on below. */
  readonly 'below-chart': { readonly mass: number; readonly least: number };
  /** The maker's chart ends below this rider: masses in kg. It is not carried on above. */
  readonly 'above-chart': { readonly mass: number; readonly greatest: number };
  /** The maker's chart has no row for this rider: mass in kg. */
  readonly 'not-on-chart': { readonly mass: number };
  /** The load asks for less than the maker's least pressure: gauge pressures in Pa. */
  readonly 'below-least-pressure': { readonly wanted: number; readonly least: number };
  /** The load asks for more than the maker's greatest pressure: gauge pressures in Pa. */
  readonly 'above-greatest-pressure': { readonly wanted: number; readonly greatest: number };
  /** The maker's limits are narrower than one mark of this pump scale: gauge pressures in Pa. */
  readonly 'no-mark-within-limits': { readonly unit: string; readonly least: number; readonly greatest: number };
  /** No coil of the list is near enough: rates in N/m. */
  readonly 'no-coil-suits': { readonly wanted: number; readonly softest: number; readonly hardest: number };
  /** An oil that does not grow thinner when it is warmed: viscosities in mm²/s. */
  readonly 'not-thinning': { readonly at40: number; readonly at100: number };
  /** Text that is not of the named form. */
  readonly 'not-readable': { readonly text: string; readonly form: string };
  /** A size that the named standard's table, as far as it is held here, does not list. */
  readonly 'not-in-table': { readonly table: string; readonly found: string };
}
export type OutsideCode = keyof OutsideParams;
export type Outside = {
  readonly [Code in OutsideCode]: { readonly ok: false; readonly code: Code; readonly params: OutsideParams[Code] };
}[OutsideCode];

export const computed = <T>(value: T): Computed<T> => ({ ok: true, value });

export const outside = <Code extends OutsideCode>(code: Code, params: OutsideParams[Code]): Outside =>
  ({ ok: false, code, params }) as Outside;

/** One input with the range that it may have, both ends included. */
export type Bound = readonly [quantity: string, unit: string, found: number, least: number, greatest: number];

/** The first bound that is not kept, as an outcome; null where all are. What is not a finite number keeps none. */
export function firstOutside(bounds: readonly Bound[]): Outside | null {
  for (const [quantity, unit, found, least, greatest] of bounds) {
    if (!(found >= least && found <= greatest))
      return outside('out-of-range', { quantity, unit, found, least, greatest });
  }
  return null;
}

/** The value of a further step, where the one before has one. */
export const chain = <T, U>(before: Computed<T>, step: (value: T) => Computed<U>): Computed<U> =>
  before.ok ? step(before.value) : before;
