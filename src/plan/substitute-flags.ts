import type { Supply } from '../catalog/index.ts';
import { compareOils, type NamedOil, viscosityOf } from '../physics/index.ts';
import { purchases } from '../supply/index.ts';
import type { Flag } from './answer.ts';
import { money } from './lines.ts';
import type { Prepared } from './prepare.ts';
import { hundredths } from './rounding.ts';
import type { Candidate } from './search.ts';
import { sourceOf } from './source.ts';
import type { World } from './world.ts';

/** A specified supply that cannot be had at once, with the equal one that can; and equals that are used because the question allows it. */
export function substituteFlags(world: World, prepared: Prepared, candidate: Candidate): Flag[] {
  const { market, catalog } = world;
  const { purchase, work } = candidate;
  const flags: Flag[] = [];
  for (const [specification, sku] of [...purchase.products].sort()) {
    const name = catalog.specifications.get(specification)?.name ?? specification;
    const equals = market.equals.get(specification) ?? [];
    if (equals.includes(sku)) {
      const supply = catalog.supplies.get(sku);
      flags.push({
        severity: 'verify',
        code: 'substitute-used',
        params: {
          specification: name,
          sku,
          name: supply?.name ?? sku,
          ...inTheCold(specified(world, specification), supply),
        },
        source: supply ? sourceOf(supply.source) : null,
      });
      continue;
    }
    const waits = purchase.bought
      .filter(({ offer }) => offer.gives.some((given) => given.sku === sku))
      .map(({ days }) => days);
    if (Math.max(0, ...waits) === 0) continue;
    const amount = work.demand.supplies.get(specification) ?? 0;
    const demand = { pieces: new Map(), supplies: new Map([[specification, amount]]) };
    const policy = { ...prepared.buying, substitutes: true, useKits: [], usePacks: [] };
    for (const equal of equals) {
      const ways = purchases(market, demand, prepared.atHand, { ...policy, useSupplies: [equal] });
      const atOnce = ways.filter(({ days }) => days === 0).sort((a, b) => a.supplies - b.supplies)[0];
      const supply = catalog.supplies.get(equal);
      if (!atOnce || !supply) continue;
      flags.push({
        severity: 'advice',
        code: 'equal-offered',
        params: {
          specification: name,
          sku: equal,
          name: supply.name,
          price: money(world, atOnce.supplies),
          days: 0,
          ...inTheCold(catalog.supplies.get(sku), supply),
        },
        source: sourceOf(supply.source),
      });
      break;
    }
  }
  return flags;
}

/** How far two oils that are equal at 40 °C may be apart at 0 °C without a word. Common practice, no source: the band of 40 °C. */
const COLD_BAND = 0.1;

/** How an equal oil stands to the specified one at 0 °C, where a ride in winter starts; not known where a data sheet is short. */
function inTheCold(
  one: Supply | undefined,
  equal: Supply | undefined,
): { readonly cold: string; readonly coldRatio: number | null } {
  const compared = one && equal ? compareOils(named(one), named(equal), COLD_BAND) : null;
  if (!compared?.ok) return { cold: 'not-known', coldRatio: null };
  const { inTheCold: cold, ratio0 } = compared.value;
  return { cold, coldRatio: ratio0 === null ? null : hundredths(ratio0) };
}

const named = ({ use, viscosity: { at40, at100 } }: Supply): NamedOil => ({
  use,
  at40: at40 === null ? null : viscosityOf(at40),
  at100: at100 === null ? null : viscosityOf(at100),
});

/** The product that a specification means: the first that meets it by a maker's word. */
const specified = ({ catalog }: World, specification: string): Supply | undefined =>
  [...catalog.supplies.values()].find(({ meets }) => meets.includes(specification));
