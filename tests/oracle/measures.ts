import type { Chassis, Family } from './records.ts';

/** Axle-to-crown at a travel, in micrometres and not rounded, measured as the chassis measures; null where not stated. */
export function axleToCrown(
  family: Family,
  chassis: Chassis,
  travel: number,
  settings: ReadonlyMap<string, number>,
): number | null {
  const stated = chassis['axle-to-crown'];
  if (!stated) return null;
  const height = settings.get('stanchion-height') ?? 0;
  if (family['travel-end'] === 'compressed') return stated.extended === undefined ? null : stated.extended - height;
  if (stated.compressed === undefined) return null;
  if (stated.measured === 'along-steerer') return stated.compressed + travel - height;
  if (chassis.offset === undefined) return null;
  return straight(along(stated.compressed, chassis.offset) + travel - height, chassis.offset);
}

/** A length straight to the axle, turned along the steerer. */
export const along = (length: number, offset: number): number => Math.sqrt(length ** 2 - offset ** 2);

/** A length along the steerer, turned straight to the axle. */
export const straight = (length: number, offset: number): number => Math.sqrt(length ** 2 + offset ** 2);
