import { byCodeUnit, groupBy } from '../quantity/index.ts';
import { type Crowd, crowdOf, type Queue, queuesOf } from './crowd.ts';
import { amountIn, type Offer } from './offer.ts';

/** From so many kits on that give a number, it is crowded: then only those are looked at that may be of use. */
const CROWDED = 6;

/** All that is sold, by what it gives. What is made of it is made when it is first asked for, and kept. */
export class Goods {
  /** Offers by the number of a part or supply that they give, in code-unit order of their own. */
  private readonly giving = new Map<string, Offer[]>();
  private readonly kits = new Map<string, number>();
  private readonly names = new Map<string, readonly string[]>();
  private readonly crowds = new Map<string, Crowd>();
  private readonly shares = new Map<string, readonly Queue[]>();
  private readonly crowdedFrom: number;

  constructor(offers: Iterable<Offer>, crowdedFrom: number = CROWDED) {
    this.crowdedFrom = crowdedFrom;
    for (const offer of [...offers].sort((a, b) => byCodeUnit(a.sku, b.sku)))
      for (const { sku } of offer.gives) {
        const list = this.giving.get(sku);
        if (list) list.push(offer);
        else this.giving.set(sku, [offer]);
        if (offer.gives.length > 1) this.kits.set(sku, (this.kits.get(sku) ?? 0) + 1);
      }
  }

  all(sku: string): readonly Offer[] {
    return this.giving.get(sku) ?? [];
  }

  /** True where some offer gives the number together with another. */
  isInKits(sku: string): boolean {
    return this.kits.has(sku);
  }

  isCrowded(sku: string): boolean {
    return (this.kits.get(sku) ?? 0) >= this.crowdedFrom;
  }

  /** Numbers of the offers that give a number together with others. */
  kitsOf(sku: string): readonly string[] {
    const known = this.names.get(sku);
    if (known) return known;
    const names = this.all(sku).flatMap((offer) => (offer.gives.length > 1 ? [offer.sku] : []));
    this.names.set(sku, names);
    return names;
  }

  crowd(sku: string): Crowd {
    const crowd = this.crowds.get(sku) ?? crowdOf(this.all(sku), (other) => this.isCrowded(other));
    this.crowds.set(sku, crowd);
    return crowd;
  }

  /** The offers of a number in queues by what one gives, in the order of what they cost for this number alone. */
  queues(sku: string, shareOf: (offer: Offer) => number): readonly Queue[] {
    const known = this.shares.get(sku);
    if (known) return known;
    const byAmount = groupBy(this.all(sku), (offer) => amountIn(offer, sku));
    const queues = [...byAmount.values()].flatMap((alike) => queuesOf(alike, shareOf));
    this.shares.set(sku, queues);
    return queues;
  }
}
