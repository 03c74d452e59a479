import type { Priced } from './multipliers.ts';
import type { Residue } from './residue.ts';

/** Prices, and by how much a cover of interest may pass the bound that they prove. */
export interface Proof {
  readonly prices: Priced;
  readonly room: number;
}

/** What every cover of interest has: so many packs at least, and of each column so many at most. */
export interface Fixed {
  readonly taken: readonly (readonly [place: number, packs: number])[];
  readonly limits: Int32Array;
}

/**
 * What follows from bounds: a pack of a column adds its reduced cost to the bound, a pack less of one that the bound counts on adds what it saved. What would
 * pass the room is ruled out. `none` where nothing follows, `no-cover` where two bounds contradict each other.
 */
export function fixedBy({ limit }: Residue, proofs: readonly Proof[]): Fixed | 'none' | 'no-cover' {
  const limits = limit.slice();
  const least = new Int32Array(limit.length);
  let any = false;
  for (const { prices, room } of proofs) {
    for (let place = 0; place < limit.length; place++) {
      const [each, most] = [prices.reduced[place] ?? 0, limit[place] ?? 0];
      const step = Math.abs(each) - SLACK * (Math.abs(room) + Math.abs(prices.bound));
      if (step <= 0 || most * step <= room) continue;
      const packs = Math.floor(room / step);
      if (each > 0) limits[place] = Math.min(limits[place] ?? 0, packs);
      else least[place] = Math.max(least[place] ?? 0, most - packs);
      any = true;
    }
  }
  if (!any) return 'none';
  const taken: [number, number][] = [];
  for (let place = 0; place < limit.length; place++) {
    if ((least[place] ?? 0) > (limits[place] ?? 0)) return 'no-cover';
    if ((least[place] ?? 0) > 0) taken.push([place, least[place] ?? 0]);
  }
  return { taken, limits };
}

/** Taken off a reduced cost for what the machine may have rounded. */
const SLACK = 1e-9;
