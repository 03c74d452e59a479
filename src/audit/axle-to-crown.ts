import { length } from './measure.ts';
import { type Row, row } from './read.ts';
import type { Standing } from './scene.ts';
import { standingOut } from './settings.ts';

export type Measured = 'along-steerer' | 'straight';

/** Axle-to-crown in mm, unrounded, as its chassis measures it; null where the catalogue does not give it (section 1). */
export function axleToCrown(family: Row, { chassis, travel, settings }: Standing): number | null {
  const facts = row(chassis['axle-to-crown']);
  const atCompressedEnd = family['travel-end'] === 'compressed';
  const from = length(atCompressedEnd ? facts.extended : facts.compressed);
  const added = atCompressedEnd ? 0 : travel;
  if (from === null || added === null) return null;
  const shorter = standingOut(settings) / 1000;
  if (measuredOf(chassis) !== 'straight' || added === 0) return (from + added) / 1000 - shorter;
  const along = turned(from / 1000, 'straight', 'along-steerer', chassis);
  const straight = along === null ? null : turned(along + added / 1000, 'along-steerer', 'straight', chassis);
  return straight === null ? null : straight - shorter;
}

export const measuredOf = (chassis: Row): Measured =>
  row(chassis['axle-to-crown']).measured === 'straight' ? 'straight' : 'along-steerer';

/** A length in mm turned into the other way of measuring, with the offset; null where the offset is not known. */
export function turned(mm: number, from: Measured, to: Measured, chassis: Row): number | null {
  if (from === to) return mm;
  const offset = length(chassis.offset);
  if (offset === null) return null;
  const o = offset / 1000;
  if (to === 'straight') return Math.hypot(mm, o);
  return mm < o ? null : Math.sqrt(mm * mm - o * o);
}
