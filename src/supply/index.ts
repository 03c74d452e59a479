export { cheapestCovers } from './cover.ts';
export { coverFront } from './cover-front.ts';
export {
  type Alternatives,
  ANY_OFFER,
  type Floor,
  floorByLines,
  floorFor,
  floorTogether,
  shareFloorFor,
  type Within,
} from './floor.ts';
export { type Least, leastCover } from './least-cover.ts';
export { type AtHand, type Market, makeMarket, withoutOffer } from './market.ts';
export { daysFor, mostWithin, onShelf } from './offer.ts';
export { leastGiven, tiesAmong } from './offered.ts';
export { type Cover, type CoverColumn, isCover, type Programme, type ProgrammeColumn, weighed } from './programme.ts';
export { type BuyingPolicy, canBeHad, comparePurchases, type Demand, type Purchase, purchases } from './purchase.ts';
export { productsFor, wantedProducts } from './separate.ts';
