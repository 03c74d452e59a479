import type { Least } from './least-cover.ts';
import { type Programme, weighed } from './programme.ts';

/** A cover with what it weighs. */
export interface Weighed extends Least {
  readonly weight: number;
}

/**
 * Every pair (cost, weight) that no other cover beats, cheapest first, with a cover for each: the least cost with the weight capped below that of the cover before,
 * until nothing covers; of equal costs the lightest is the last. `least` finds a cover of least cost and is exact; null from it means that there is none.
 * Ref: Y. Haimes, L. Lasdon, D. Wismer, "On a bicriterion formulation of the problems of integrated system identification and system optimization",
 * IEEE Transactions on Systems, Man and Cybernetics 1 (1971): the method of caps.
 */
export function coverFront(
  programme: Programme,
  weights: readonly number[],
  least: (programme: Programme) => Least | null,
): readonly Weighed[] {
  const found: Weighed[] = [];
  for (let caps = programme.caps; ; ) {
    const cheapest = least({ ...programme, caps });
    if (!cheapest) return found;
    const weight = weighed(weights, cheapest.packs);
    if (found.at(-1)?.cost === cheapest.cost) found.pop();
    found.push({ ...cheapest, weight });
    caps = [...programme.caps, { weights, most: weight - 1 }];
  }
}
