import type { RawFile, RawShop } from '../../src/catalog/raw.ts';
import { type Dice, dice } from './dice.ts';
import { generatedFamily, TWIN } from './family.ts';
import { pricesOf } from './plan.ts';
import { type FamilyShape, smallShape } from './shape.ts';

/** A generated catalogue as its records, with the rows of a stock file and a shop. */
export interface Generated {
  readonly seed: number;
  readonly records: RawFile;
  readonly stock: readonly string[];
  readonly shop: RawShop;
}

/** A small catalogue: one family to ask about, now and then a second one whose parts are in the way. */
export function smallCatalogue(seed: number): Generated {
  const throwing = dice(seed);
  const families = throwing.percent(30) ? 2 : 1;
  return generated(
    seed,
    throwing,
    Array.from({ length: families }, () => smallShape(throwing)),
  );
}

/** A catalogue of families of given shapes. */
export const catalogueOf = (seed: number, shapes: readonly FamilyShape[]): Generated =>
  generated(seed, dice(seed), shapes);

/** A catalogue with further families beside its own, which bring their own parts, kits and stock; of what all share nothing changes. */
export function inCompany(own: Generated, shapes: readonly FamilyShape[]): Generated {
  if (shapes.length === 0) return own;
  const others = generated(own.seed, dice(own.seed ^ 0x2c0ffee), shapes, own.records.families?.length ?? 0);
  const { makers, specifications, supplies, ...records } = others.records;
  return {
    ...own,
    records: merged([own.records, records]),
    stock: [...own.stock, ...others.stock.filter((row) => !row.startsWith('OS-'))],
  };
}

function generated(seed: number, throwing: Dice, shapes: readonly FamilyShape[], from = 0): Generated {
  const families = shapes.map((shape, at) => generatedFamily(throwing, shape, idOf(from + at)));
  const records = merged([head(throwing), ...families]);
  return { seed, records, stock: stockOf(throwing, records), shop: shopOf(throwing, records) };
}

/** Letters and a number, so that no id is the beginning of another. */
const idOf = (at: number): string => (at < 10 ? `g${at}` : `f${10_000 + at}`);

const merged = (files: readonly RawFile[]): RawFile => ({
  catalog: { name: 'Generated', currency: 'EUR' },
  ...Object.fromEntries(
    (
      [
        'makers',
        'specifications',
        'families',
        'chassis',
        'parts',
        'kits',
        'supplies',
        'operations',
        'services',
      ] as const
    ).map((kind) => [kind, files.flatMap((file) => [...(file[kind] ?? [])])]),
  ),
});

/** Makers, specifications and supplies, which all families share. One oil may meet both specifications of oil. */
const head = (throwing: Dice): RawFile => ({
  makers: [{ id: 'ostrel', name: 'Ostrel' }],
  specifications: [
    { id: 'bath', name: 'bath oil', use: 'bath', unit: 'mL' },
    { id: 'bath-2', name: 'heavier bath oil', use: 'bath', unit: 'mL' },
    { id: 'grease', name: 'grease', use: 'grease', unit: 'g' },
    { id: 'thread', name: 'threadlocker', use: 'threadlocker', unit: 'g' },
    { id: 'glove', name: 'gloves', use: 'consumable', unit: 'piece' },
  ],
  supplies: [
    supply('OS-BATH', 'bath', 'mL', throwing.percent(50) ? ['bath', 'bath-2'] : ['bath'], [
      pack(throwing, 'OS-BATH-50', '50 mL', 6),
      pack(throwing, 'OS-BATH-120', '120 mL', 11),
    ]),
    supply('OS-HEAVY', 'bath', 'mL', ['bath-2'], [pack(throwing, 'OS-HEAVY-250', '250 mL', 14)]),
    ...(throwing.percent(40)
      ? [supply('OS-BATH-B', 'bath', 'mL', ['bath'], [pack(throwing, 'OS-BATH-B-30', '30 mL', 4)])]
      : []),
    supply('OS-GREASE', 'grease', 'g', ['grease'], [pack(throwing, 'OS-GREASE-10', '10 g', 5)]),
    supply('OS-THREAD', 'threadlocker', 'g', ['thread'], [pack(throwing, 'OS-THREAD-5', '5 g', 7)]),
    supply('OS-GLOVE', 'consumable', 'piece', ['glove'], [pack(throwing, 'OS-GLOVE-2', 2, 1)]),
  ],
});

type Supply = NonNullable<RawFile['supplies']>[number];

const supply = (
  sku: string,
  use: Supply['use'],
  unit: Supply['unit'],
  meets: readonly string[],
  packs: Supply['packs'],
): Supply => ({ sku, maker: 'ostrel', name: sku.toLowerCase(), use, unit, meets, packs });

const pack = (throwing: Dice, sku: string, size: string | number, near: number): Supply['packs'][number] => ({
  sku,
  size,
  ...pricesOf(throwing, near),
});

/** Most of what is sold has a row; some is reserved, withdrawn, not ordered, or comes on a day that nobody knows. A twin has its brother's row. */
function stockOf(throwing: Dice, { parts = [], kits = [], supplies = [] }: RawFile): readonly string[] {
  const skus = [
    ...parts.map(({ sku }) => sku),
    ...kits.map(({ sku }) => sku),
    ...supplies.flatMap(({ packs }) => packs.map(({ sku }) => sku)),
  ];
  const rows = new Map<string, string>();
  for (const sku of skus) {
    const brother = sku.endsWith(TWIN) ? rows.get(sku.slice(0, -TWIN.length)) : undefined;
    if (sku.endsWith(TWIN)) {
      if (brother !== undefined) rows.set(sku, brother);
    } else if (throwing.percent(88)) rows.set(sku, stockRow(throwing, sku.startsWith('OS-')));
  }
  return [...rows].map(([sku, row]) => `${sku},${row}`);
}

function stockRow(throwing: Dice, isSupply: boolean): string {
  const onHand = throwing.pick(isSupply ? [0, 3, 6] : [0, 0, 1, 1, 2, 3, 6]);
  const reserved = throwing.percent(15) ? throwing.whole(0, onHand) : 0;
  const state = throwing.percent(isSupply ? 2 : 7) ? 'discontinued' : 'active';
  const lead = throwing.pick(['1', '2', '3', '3', '5', '8', isSupply ? '2' : '', isSupply ? '4' : 'unknown']);
  const price = throwing.percent(5) ? (throwing.whole(200, 4000) / 100).toFixed(2) : '';
  return [onHand, reserved, state, lead, price, '', ''].join(',');
}

/** A rate that does not always divide by minutes, a flat price for one service, and oil from the drum. */
const shopOf = (throwing: Dice, { services = [] }: RawFile): RawShop => ({
  name: 'Generated workshop',
  currency: 'EUR',
  labour: {
    rate: throwing.pick(['60.00', '57.50', '64.10']),
    ...(throwing.percent(50) && services[0] ? { flat: { [services[0].id]: '34.90' } } : {}),
  },
  bulk: [
    { supply: 'OS-BATH', per: '1 L', ...(throwing.percent(85) ? { price: '96.30' } : {}) },
    { supply: 'OS-GREASE', price: '0.15', per: '1 g' },
  ],
});
