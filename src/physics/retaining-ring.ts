import { type Computed, computed, firstOutside, outside } from './outcome.ts';
import { type Metres, metres } from './units.ts';

/** An internal retaining ring and its groove. Lengths in mm, as the standard prints them. */
export interface RetainingRing {
  readonly bore: number;
  readonly thickness: number;
  /** Outer diameter of the free ring. */
  readonly free: number;
  readonly groove: number;
  /** Least diameter of the holes in its lugs. */
  readonly lugHole: number;
}

/**
 * Rings for bores, normal type. Source: DIN 472, read in FreeCAD's fasteners data; the groove for a bore of 28 mm from
 * NopSCADlib (29.4; the other copy has 20.4, a slip). Columns: bore d1, thickness s, free d3, groove d2, lug hole d5 least.
 */
const RINGS: readonly RetainingRing[] = (
  [
    [22, 1, 23.5, 23, 2],
    [24, 1.2, 25.9, 25.2, 2],
    [25, 1.2, 26.9, 26.2, 2],
    [26, 1.2, 27.9, 27.2, 2],
    [28, 1.2, 30.1, 29.4, 2],
    [30, 1.2, 32.1, 31.4, 2],
    [32, 1.2, 34.4, 33.7, 2.5],
    [34, 1.5, 36.5, 35.7, 2.5],
    [35, 1.5, 37.8, 37, 2.5],
    [36, 1.5, 38.8, 38, 2.5],
    [38, 1.5, 40.8, 40, 2.5],
    [40, 1.75, 43.5, 42.5, 2.5],
  ] as const
).map(([bore, thickness, free, groove, lugHole]) => ({ bore, thickness, free, groove, lugHole }));

/** The DIN 472 ring for a bore, where the bore is one of the table's (22 to 40 mm); a fork may well hold a ring of its own kind. */
export function retainingRing(bore: Metres): Computed<RetainingRing> {
  const found = firstOutside([['bore', 'm', bore, 0.001, 1]]);
  if (found) return found;
  const ring = RINGS.find((one) => Math.abs(one.bore - bore * 1000) < 1e-6);
  return ring ? computed(ring) : outside('not-in-table', { table: 'DIN 472', found: `${shown(bore)} mm` });
}

/** Straight internal pliers by size, for bores from one to another, both included, with the diameter of their tips. */
export interface RingPliers {
  readonly size: 'J0' | 'J1' | 'J2' | 'J3' | 'J4';
  readonly from: Metres;
  readonly to: Metres;
  readonly tip: Metres;
}

/** Sizes of DIN 5256 form C: from memory, no published copy was found. Columns: size, bores from and to, tip; mm. */
const PLIERS: readonly RingPliers[] = (
  [
    ['J0', 8, 13, 0.9],
    ['J1', 12, 25, 1.3],
    ['J2', 19, 60, 1.8],
    ['J3', 40, 100, 2.3],
    ['J4', 85, 140, 3.2],
  ] as const
).map(([size, from, to, tip]) => ({ size, from: mm(from), to: mm(to), tip: mm(tip) }));

/**
 * The pliers for a ring in a bore, the largest tip that goes into its lug holes first; sizes overlap, so there may be two.
 * Source: DIN 5256 from memory, DIN 472 for the lug holes where the bore is in its table. Range: bores 8 to 140 mm.
 */
export function ringPliers(bore: Metres): Computed<readonly RingPliers[]> {
  const found = firstOutside([['bore', 'm', bore, 0.008, 0.14]]);
  if (found) return found;
  const ring = retainingRing(bore);
  const hole = ring.ok ? ring.value.lugHole / 1000 : Number.POSITIVE_INFINITY;
  return computed(
    PLIERS.filter(({ from, to, tip }) => bore >= from && bore <= to && tip <= hole).sort((a, b) => b.tip - a.tip),
  );
}

function mm(length: number): Metres {
  return metres(length / 1000);
}
const shown = (bore: number): number => Math.round(bore * 1e6) / 1e3;
