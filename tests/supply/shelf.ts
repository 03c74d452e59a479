import type { Catalog, Kit, Pack, Part, Shop, Stock, StockRow, Supply } from '../../src/catalog/index.ts';
import { held, type Minor, minor, type SupplyUnit } from '../../src/quantity/index.ts';
import {
  type AtHand,
  type BuyingPolicy,
  type Demand,
  type Market,
  makeMarket,
  type Purchase,
  purchases,
} from '../../src/supply/index.ts';

/** What is on sale, in short. Prices in minor units; left out: no price. Amounts in held units. */
export interface Shelf {
  readonly parts?: Readonly<
    Record<
      string,
      { readonly price?: number; readonly pack?: number; readonly replaced?: 'usable' | 'gone' | 'usable-by-one' }
    >
  >;
  readonly kits?: Readonly<
    Record<string, { readonly price?: number; readonly gives: Readonly<Record<string, number>> }>
  >;
  /** Supplies with the specifications they meet, and their packs by size. */
  readonly supplies?: Readonly<
    Record<
      string,
      {
        readonly meets: readonly string[];
        readonly unit?: SupplyUnit;
        readonly use?: Supply['use'];
        /** Kinematic viscosity at 40 °C, held units. */
        readonly at40?: number;
        readonly packs?: Readonly<Record<string, { readonly size: number; readonly price?: number }>>;
      }
    >
  >;
  readonly stock?: Readonly<Record<string, Partial<StockRow>>>;
  /** Bulk supplies: price per so many held units. */
  readonly bulk?: Readonly<Record<string, { readonly price?: number; readonly per: number }>>;
}

const source = { document: null, page: null, record: '' };
const price = (value: number | undefined): Minor | null => (value === undefined ? null : minor(value));

/** For each replacement of a number whether its old stock may be used. */
const oldStock = (replaced: 'usable' | 'gone' | 'usable-by-one' | undefined): readonly boolean[] =>
  replaced === undefined ? [] : replaced === 'usable-by-one' ? [false, true] : [replaced === 'usable'];

/** `crowdedFrom`: from how many kits on that give a number it is crowded. */
export function market(shelf: Shelf, crowdedFrom?: number): Market {
  const parts = Object.entries(shelf.parts ?? {}).map(
    ([sku, part]): Part => ({
      sku,
      maker: 'orlen',
      name: sku,
      role: 'part',
      numbers: {},
      dimensions: new Map(),
      interfaces: new Map(),
      traits: new Map(),
      fits: [],
      needs: [],
      excludes: [],
      doses: new Map(),
      rate: null,
      volume: null,
      air: null,
      replacedBy: oldStock(part.replaced).map((oldStockUsable) => ({
        by: [{ sku: 'NEW', quantity: 1 }],
        families: null,
        generations: null,
        bothWays: false,
        oldStockUsable,
        note: null,
        source,
      })),
      mass: null,
      price: price(part.price),
      pack: part.pack ?? 1,
      source,
    }),
  );
  const isSupply = (sku: string): boolean => shelf.supplies?.[sku] !== undefined;
  const kits = Object.entries(shelf.kits ?? {}).map(([sku, kit]): Kit => {
    const gives = Object.entries(kit.gives);
    return {
      sku,
      maker: 'orlen',
      name: sku,
      numbers: {},
      parts: gives.filter(([one]) => !isSupply(one)).map(([one, quantity]) => ({ sku: one, quantity })),
      supplies: gives.filter(([one]) => isSupply(one)).map(([one, amount]) => ({ sku: one, amount })),
      replacedBy: [],
      price: price(kit.price),
      source,
    };
  });
  const supplies = Object.entries(shelf.supplies ?? {}).map(
    ([sku, { meets, unit, use, at40, packs }]): Supply => ({
      sku,
      maker: 'orlen',
      name: sku,
      use: use ?? 'bath',
      unit: unit ?? 'mL',
      meets,
      viscosity: { at40: at40 === undefined ? null : held('viscosity', at40), at100: null },
      packs: Object.keys(packs ?? {}),
      hazard: null,
      source,
    }),
  );
  const packs = Object.entries(shelf.supplies ?? {}).flatMap(([supply, { packs: sizes }]) =>
    Object.entries(sizes ?? {}).map(
      ([sku, pack]): Pack => ({ sku, supply, numbers: {}, size: pack.size, price: price(pack.price) }),
    ),
  );
  const rows = Object.entries(shelf.stock ?? {}).map(
    ([sku, row]): StockRow => ({
      sku,
      onHand: 0,
      reserved: 0,
      discontinued: false,
      lead: null,
      price: null,
      bin: null,
      ...row,
    }),
  );
  const catalog: Catalog = {
    name: 'shelf',
    currency: 'EUR',
    digits: 2,
    hash: '',
    makers: new Map(),
    documents: new Map(),
    specifications: new Map(),
    families: new Map(),
    chassis: new Map(),
    parts: new Map(parts.map((part) => [part.sku, part])),
    kits: new Map(kits.map((kit) => [kit.sku, kit])),
    supplies: new Map(supplies.map((supply) => [supply.sku, supply])),
    packs: new Map(packs.map((pack) => [pack.sku, pack])),
    tools: new Map(),
    operations: new Map(),
    services: new Map(),
    bikes: new Map(),
    notices: new Map(),
    places: new Map(),
  };
  const stock: Stock = { hash: '', rows: new Map(rows.map((row) => [row.sku, row])) };
  const shop: Shop = {
    hash: '',
    name: 'shop',
    rate: minor(0),
    flat: new Map(),
    tax: null,
    tools: null,
    bulk: new Map(
      Object.entries(shelf.bulk ?? {}).map(([sku, bulk]) => [sku, { price: price(bulk.price), per: bulk.per }]),
    ),
  };
  return makeMarket(catalog, stock, shop, crowdedFrom);
}

/** What a job needs, in short: pieces that may be used ones, fresh pieces, amounts by specification. */
export interface Job {
  readonly pieces?: Readonly<Record<string, number>>;
  readonly fresh?: Readonly<Record<string, number>>;
  readonly supplies?: Readonly<Record<string, number>>;
}

export function demand({ pieces = {}, fresh = {}, supplies = {} }: Job): Demand {
  const skus = new Set([...Object.keys(pieces), ...Object.keys(fresh)]);
  return {
    pieces: new Map([...skus].map((sku) => [sku, { fresh: fresh[sku] ?? 0, any: pieces[sku] ?? 0 }])),
    supplies: new Map(Object.entries(supplies)),
  };
}

export const atHand = (held: { readonly [Kind in keyof AtHand]?: Readonly<Record<string, number>> } = {}): AtHand => ({
  fresh: new Map(Object.entries(held.fresh ?? {})),
  used: new Map(Object.entries(held.used ?? {})),
  supplies: new Map(Object.entries(held.supplies ?? {})),
  kits: new Map(Object.entries(held.kits ?? {})),
});

export const policy = (more: Partial<BuyingPolicy> = {}): BuyingPolicy => ({
  bulk: false,
  substitutes: false,
  useKits: [],
  useSupplies: [],
  usePacks: [],
  ...more,
});

/** `1 K, 2 S = 540, 4 days`: packs, cost, days (`?` where nobody knows), lines without a price, kits taken, doses. */
export function shown({ bought, takenKits, dosed, parts, supplies, unpriced, days }: Purchase): string {
  const packs = [
    ...bought.map(({ offer, packs: count }) => `${count} ${offer.sku}`),
    ...[...takenKits].map(([sku, count]) => `take ${count} ${sku}`),
    ...[...dosed].map(([sku, { amount }]) => `dose ${amount} ${sku}`),
  ];
  const open = unpriced === 0 ? '' : `, ${unpriced} without a price`;
  return `${packs.join(', ')} = ${parts + supplies}, ${Number.isFinite(days) ? days : '?'} days${open}`;
}

/** Every way to buy what a job needs, shown, cheapest first. */
export const waysToBuy = (
  shelf: Shelf,
  job: Job,
  held: Parameters<typeof atHand>[0] = {},
  more: Partial<BuyingPolicy> = {},
): string[] =>
  [...purchases(market(shelf), demand(job), atHand(held), policy(more))]
    .sort((a, b) => a.parts + a.supplies - b.parts - b.supplies)
    .map(shown);
