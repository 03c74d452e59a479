import type { Market } from './market.ts';
import { amountIn } from './offer.ts';
import { tiesAmong } from './offered.ts';
import type { BuyingPolicy, Demand } from './purchase.ts';

/** A part of a demand that can be bought without regard to the rest, with what must be used for it. */
export interface SeparateDemand {
  readonly demand: Demand;
  readonly policy: BuyingPolicy;
}

/** Supplies that may serve a specification, in code-unit order: those that meet it, then, if allowed, their equals. */
export const productsFor = (
  market: Market,
  policy: Pick<BuyingPolicy, 'substitutes'>,
  specification: string,
): readonly string[] =>
  policy.substitutes
    ? [...(market.meeting.get(specification) ?? []), ...(market.equals.get(specification) ?? [])]
    : (market.meeting.get(specification) ?? []);

/** Supplies that must serve some need: named themselves, or by a pack. */
export const wantedProducts = (market: Market, policy: BuyingPolicy): string[] => [
  ...new Set([...policy.useSupplies, ...policy.usePacks.flatMap((sku) => market.catalog.packs.get(sku)?.supply ?? [])]),
];

/**
 * Splits a demand into parts that share no offer and no product: each can be bought on its own, since neither packs nor stock nor a choice of
 * product ties it to another. In the order of their first need.
 */
export function separateDemands(market: Market, demand: Demand, policy: BuyingPolicy): readonly SeparateDemand[] {
  const forced = [...policy.useKits, ...policy.usePacks];
  const poured = [...demand.supplies].filter(([, amount]) => amount > 0);
  const products = poured.map(([name]) => productsFor(market, policy, name));
  const kitsOf = tiesAmong(market, [...demand.pieces.keys(), ...products.flat()]);
  // what must be bought ties too; what is sold by itself does not
  const tiesOf = (sku: string): readonly string[] =>
    forced.length === 0 ? kitsOf(sku) : [...kitsOf(sku), ...forced.filter((one) => gives(market, one, sku))];
  const needs: Need[] = [];
  for (const [sku, count] of demand.pieces) needs.push({ kind: 'piece', name: sku, count, ties: tiesOf(sku) });
  for (const [at, [name, amount]] of poured.entries())
    needs.push({ kind: 'supply', name, amount, ties: (products[at] ?? []).flatMap((sku) => [sku, ...tiesOf(sku)]) });
  for (const name of forced) needs.push({ kind: 'offer', name, ties: [name] });
  if (policy.useSupplies.length + policy.usePacks.length > 0)
    for (const name of wantedProducts(market, policy)) needs.push({ kind: 'product', name, ties: [name] });
  return grouped(needs).map((group) => partOf(group, policy));
}

/** One thing that has to be had, with the offers and products that may tie it to another. */
type Need = { readonly name: string; readonly ties: readonly string[] } & (
  | { readonly kind: 'piece'; readonly count: { readonly fresh: number; readonly any: number } }
  | { readonly kind: 'supply'; readonly amount: number }
  | { readonly kind: 'offer' | 'product' }
);

const gives = (market: Market, one: string, sku: string): boolean => {
  const offer = market.offers.get(one);
  return offer !== undefined && amountIn(offer, sku) > 0;
};

/** Needs that share a tie are one group; groups and their needs in the order of the needs. */
function grouped(needs: readonly Need[]): readonly (readonly Need[])[] {
  const parent = [...needs.keys()];
  const root = (at: number): number => {
    let here = at;
    while (parent[here] !== here) here = parent[here] ?? here;
    return here;
  };
  const first = new Map<string, number>();
  needs.forEach(({ ties }, at) => {
    for (const tie of ties) {
      const other = first.get(tie);
      if (other === undefined) first.set(tie, at);
      else {
        const [one, two] = [root(at), root(other)];
        parent[Math.max(one, two)] = Math.min(one, two);
      }
    }
  });
  const groups = new Map<number, Need[]>();
  needs.forEach((need, at) => {
    const group = groups.get(root(at));
    if (group) group.push(need);
    else groups.set(root(at), [need]);
  });
  return [...groups.values()];
}

function partOf(group: readonly Need[], policy: BuyingPolicy): SeparateDemand {
  const pieces = new Map<string, { readonly fresh: number; readonly any: number }>();
  const supplies = new Map<string, number>();
  const ties = new Set<string>();
  for (const need of group) {
    if (need.kind === 'piece') pieces.set(need.name, need.count);
    else if (need.kind === 'supply') supplies.set(need.name, need.amount);
    else ties.add(need.name);
  }
  const used = (list: readonly string[]): readonly string[] =>
    list.length === 0 ? list : list.filter((sku) => ties.has(sku));
  return {
    demand: { pieces, supplies },
    policy: {
      bulk: policy.bulk,
      substitutes: policy.substitutes,
      useKits: used(policy.useKits),
      useSupplies: used(policy.useSupplies),
      usePacks: used(policy.usePacks),
    },
  };
}
