export { type Cover, type CoverColumn, cheapestCovers } from './cover.ts';
export { type Floor, floorFor } from './floor.ts';
export { type AtHand, daysFor, type Market, makeMarket, mostWithin, onShelf, withoutOffer } from './market.ts';
export { type BuyingPolicy, comparePurchases, type Demand, type Purchase, purchases } from './purchase.ts';
export { productsFor, wantedProducts } from './separate.ts';
