import { purchases } from '../supply/index.ts';
import type { Flag } from './answer.ts';
import { money } from './lines.ts';
import type { Prepared } from './prepare.ts';
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
        params: { specification: name, sku, name: supply?.name ?? sku },
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
        params: { specification: name, sku: equal, name: supply.name, price: money(world, atOnce.supplies), days: 0 },
        source: sourceOf(supply.source),
      });
      break;
    }
  }
  return flags;
}
