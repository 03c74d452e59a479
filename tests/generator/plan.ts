import type { RawPart, RawSlot } from '../../src/catalog/raw.ts';
import type { Dice } from './dice.ts';
import type { FamilyShape } from './shape.ts';

/** What all records of one generated family are made from. */
export interface Plan {
  readonly dice: Dice;
  readonly shape: FamilyShape;
  /** Lower case; SKUs begin with it in upper case. */
  readonly id: string;
  readonly wheels: readonly number[];
  readonly travels: readonly number[];
  readonly bySpacers: boolean;
  /** Each body has its own width of the seal seat, or all have the same. */
  readonly seats: readonly number[];
  readonly slots: Readonly<Record<string, RawSlot>>;
  readonly modules: readonly string[];
}

export const skuOf = ({ id }: Plan, ...rest: readonly (string | number)[]): string =>
  [id.toUpperCase(), ...rest].join('-');

export const bodyId = ({ id, wheels }: Plan, at: number): string => `${id}-${wheels[at] ?? 0}-${at + 1}`;

/** A price near the one given, in minor units of 0.05; now and then none. */
export function pricesOf(dice: Dice, near: number): Pick<RawPart, 'price'> {
  if (dice.percent(7)) return {};
  const cents = Math.round(near * 100 * (0.7 + dice.whole(0, 60) / 100));
  return { price: ((cents - (cents % 5)) / 100).toFixed(2) };
}
