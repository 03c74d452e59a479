import type { Market } from './market.ts';
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
): readonly string[] => [
  ...(market.meeting.get(specification) ?? []),
  ...(policy.substitutes ? (market.equals.get(specification) ?? []) : []),
];

/** Supplies that must serve some need: named themselves, or by a pack. */
export const wantedProducts = (market: Market, policy: BuyingPolicy): string[] => [
  ...new Set([...policy.useSupplies, ...policy.usePacks.flatMap((sku) => market.catalog.packs.get(sku)?.supply ?? [])]),
];

/**
 * Splits a demand into parts that share no offer and no product: each can be bought on its own, since neither packs nor stock nor a choice of
 * product ties it to another. In the order of their first need.
 */
export function separateDemands(market: Market, demand: Demand, policy: BuyingPolicy): SeparateDemand[] {
  const groups = new Groups();
  const needs = [...demand.pieces.keys()].map((sku) => `piece ${sku}`);
  for (const [sku] of demand.pieces)
    for (const offer of market.giving.get(sku) ?? []) groups.tie(`piece ${sku}`, `offer ${offer.sku}`);
  const amounts = [...demand.supplies].filter(([, amount]) => amount > 0);
  for (const [specification] of amounts) {
    const need = `supply ${specification}`;
    needs.push(need);
    for (const product of productsFor(market, policy, specification)) {
      groups.tie(need, `product ${product}`);
      for (const offer of market.giving.get(product) ?? []) groups.tie(need, `offer ${offer.sku}`);
    }
  }
  const forced = [...policy.useKits, ...policy.usePacks];
  for (const sku of forced) needs.push(`offer ${sku}`);
  for (const sku of wantedProducts(market, policy)) needs.push(`product ${sku}`);
  const byGroup = new Map<string, SeparateDemand>();
  for (const need of needs) {
    const group = groups.find(need);
    if (byGroup.has(group)) continue;
    const inGroup = (name: string): boolean => groups.find(name) === group;
    byGroup.set(group, {
      demand: {
        pieces: new Map([...demand.pieces].filter(([sku]) => inGroup(`piece ${sku}`))),
        supplies: new Map(amounts.filter(([specification]) => inGroup(`supply ${specification}`))),
      },
      policy: {
        bulk: policy.bulk,
        substitutes: policy.substitutes,
        useKits: policy.useKits.filter((sku) => inGroup(`offer ${sku}`)),
        useSupplies: policy.useSupplies.filter((sku) => inGroup(`product ${sku}`)),
        usePacks: policy.usePacks.filter((sku) => inGroup(`offer ${sku}`)),
      },
    });
  }
  return [...byGroup.values()];
}

/** Names that belong together (union and find). */
class Groups {
  private readonly parent = new Map<string, string>();

  find(name: string): string {
    let here = name;
    for (let above = this.parent.get(here); above !== undefined && above !== here; above = this.parent.get(here))
      here = above;
    return here;
  }

  tie(a: string, b: string): void {
    const [one, other] = [this.find(a), this.find(b)];
    if (one !== other) this.parent.set(other, one);
  }
}
