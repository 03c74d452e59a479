import { type CoilSpring, coilOutside } from './coil-spring.ts';
import { sagBound } from './end-of-stroke.ts';
import { axialLoad, type RiderLoad } from './load.ts';
import { type Computed, chain, computed, firstOutside, outside } from './outcome.ts';
import { rateForForce } from './sag.ts';
import { metres, type SpringRate } from './units.ts';

/** One coil of the list with the sag it gives, as a share of travel. */
export interface CoilSag {
  readonly rate: SpringRate;
  readonly sag: number;
}
export interface CoilChoice {
  readonly kind: 'starting-point';
  /** The rate that gives the wanted sag, not one of the list. */
  readonly wanted: SpringRate;
  /** The coils of the list whose sag is within the tolerance, nearest to the wanted sag first; never empty. */
  readonly suit: readonly CoilSag[];
}
export interface CoilQuestion {
  readonly coil: Omit<CoilSpring, 'rate'>;
  /** The rates that the maker sells for this fork and travel. */
  readonly rates: readonly SpringRate[];
  readonly rider: RiderLoad;
  /** Wanted sag and how far it may be off, as shares of travel. */
  readonly sag: { readonly wanted: number; readonly tolerance: number };
}

/**
 * Which coils of the maker's list give a rider the wanted sag. A starting point, as `startPressure`; a rider for whom the
 * list has none is refused, never sent beyond it. Source: `axialLoad`, `rateForForce`, Hooke's law.
 */
export function coilForRider({ coil, rates, rider, sag }: CoilQuestion): Computed<CoilChoice> {
  const found =
    firstOutside([
      sagBound(sag.wanted),
      ['sag tolerance', 'share of travel', sag.tolerance, 0, 0.2],
      ['coils to choose from', 'pieces', rates.length, 1, 1000],
      ...rates.map((rate) => ['rate', 'N/m', rate, 100, 1e6] as const),
    ]) ?? rates.map((rate) => coilOutside({ ...coil, rate }, [])).find((one) => one !== null);
  if (found) return found;
  return chain(axialLoad(rider), (load) =>
    chain(rateForForce(coil, metres(sag.wanted * coil.travel), load), (wanted) => {
      const suit = [...new Set(rates)]
        .map((rate): CoilSag => ({ rate, sag: Math.max(0, load / rate - coil.preload) / coil.travel }))
        .filter((one) => Math.abs(one.sag - sag.wanted) <= sag.tolerance)
        .sort((a, b) => Math.abs(a.sag - sag.wanted) - Math.abs(b.sag - sag.wanted) || a.rate - b.rate);
      return suit.length > 0
        ? computed<CoilChoice>({ kind: 'starting-point', wanted, suit })
        : outside('no-coil-suits', { wanted, softest: Math.min(...rates), hardest: Math.max(...rates) });
    }),
  );
}
