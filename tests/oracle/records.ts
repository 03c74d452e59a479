import { z } from 'zod';
import type { Dimension } from '../../src/quantity/brands.ts';
import { parseQuantity } from '../../src/quantity/parse.ts';

/**
 * The records of a catalogue as they stand in its files, with quantities read into whole held units.
 * Only what a plan depends on is read; the rest of a record is passed over.
 */
function heldNumber(dimension: Dimension, text: string): number {
  const read = parseQuantity(dimension, text);
  if (!read.ok) throw new Error(`${text}: ${read.fault}`);
  return read.value;
}

const length = z.string().transform((text) => heldNumber('length', text));
const minutes = z.string().transform((text) => heldNumber('time', text));
const rate = z.string().transform((text) => heldNumber('rate', text));
const price = z.union([z.number(), z.string()]).transform(String);

/** A volume, a mass, or so many pieces. */
const amount = z.union([z.number(), z.string()]).transform((written) => {
  if (typeof written === 'number') return written;
  const volume = parseQuantity('volume', written);
  return volume.ok ? volume.value : heldNumber('mass', written);
});

/** One, or a list of several: always a list. */
const listOf = <T extends z.ZodType>(one: T) => z.union([one.transform((only) => [only]), z.array(one)]);
const words = z.record(z.string(), z.string());
const lengths = z.record(z.string(), length);
const months = z.object({ from: z.string().optional(), to: z.string().optional() });
const serials = z.object({ from: z.string(), to: z.string() });
const limits = z.object({ least: length.optional(), greatest: length.optional() });
export type Limits = z.infer<typeof limits>;
const source = z.object({ document: z.string(), page: z.union([z.string(), z.number()]).optional() });

/** A SKU alone, a SKU with a count, or nothing. */
const content = z.union([
  z.null(),
  z.string().transform((sku) => ({ sku, quantity: null })),
  z.object({ sku: z.string(), quantity: z.number().nullable().default(null) }),
]);
export type WrittenContent = z.infer<typeof content>;
const contents = z.record(z.string(), content).default({});

const dose = z.object({
  specification: z.string(),
  amount: amount.optional(),
  left: amount.optional(),
  right: amount.optional(),
});
const doses = z.record(z.string(), dose).default({});
export type Dose = z.infer<typeof dose>;

const family = z.object({
  id: z.string(),
  name: z.string(),
  'travel-set-by': z.string(),
  'travel-end': z.string(),
  crown: z.enum(['single', 'dual']).default('single'),
  dimensions: lengths.default({}),
  interfaces: words.default({}),
  slots: z.record(
    z.string(),
    z.object({
      pieces: z.number().default(1),
      most: z.number().optional(),
      'may-be-empty': z.boolean().default(false),
      'single-use': z.boolean().default(false),
      wears: z.boolean().default(false),
      role: z.string().optional(),
    }),
  ),
  complete: z.array(z.string()).default([]),
  keeps: z.array(z.string()).default([]),
  settings: z.record(z.string(), z.object({ least: length, greatest: length, step: length })).default({}),
  generations: z
    .array(
      z.object({
        id: z.string(),
        months: months.optional(),
        serials: serials.optional(),
        dimensions: lengths.default({}),
      }),
    )
    .default([]),
  rated: z.object({ 'motor-assisted': z.boolean().optional(), category: z.number().optional() }).default({}),
  source: source.optional(),
});
export type Family = z.infer<typeof family>;

const chassis = z.object({
  id: z.string(),
  family: z.string(),
  name: z.string(),
  wheel: z.number(),
  takes: z.array(z.number()).default([]),
  axle: z.object({ standard: z.string(), spacing: length.optional(), 'rotor-plane': length.optional() }),
  offset: length.optional(),
  steerer: z
    .object({
      kind: z.string(),
      top: length.optional(),
      'crown-race': length.optional(),
      length: length.optional(),
    })
    .optional(),
  brake: z.object({ mount: z.string(), native: length.optional(), greatest: length.optional() }).optional(),
  travel: limits,
  'axle-to-crown': z
    .object({ compressed: length.optional(), extended: length.optional(), measured: z.string() })
    .optional(),
  dimensions: lengths.default({}),
  interfaces: words.default({}),
  doses,
  upper: z.string(),
  lowers: z.string(),
  fitted: contents,
  builds: z.array(
    z.object({
      travel: length,
      usual: z.boolean().default(false),
      slots: contents,
      generations: z.array(z.string()).default([]),
      settings: lengths.default({}),
    }),
  ),
  generations: z.array(z.string()).default([]),
  'tyre-room': z.object({ crown: length.optional(), arch: length.optional(), width: length.optional() }).default({}),
});
export type Chassis = z.infer<typeof chassis>;

const spacerCounts = z.object({
  travel: length.optional(),
  standard: z.number().optional(),
  greatest: z.number().optional(),
});
export type SpacerCounts = z.infer<typeof spacerCounts>;

const clause = z.object({
  family: z.string(),
  chassis: listOf(z.string()).optional(),
  wheel: listOf(z.number()).optional(),
  axle: listOf(z.string()).optional(),
  not: z.boolean().default(false),
  travel: length.optional(),
  travels: z.array(length).optional(),
  'volume-spacers': listOf(spacerCounts).optional(),
  generations: listOf(z.string()).optional(),
  months: months.optional(),
  serials: serials.optional(),
  limits: limits.optional(),
});
export type Clause = z.infer<typeof clause>;

const replacement = z.object({
  by: z.array(z.object({ sku: z.string(), quantity: z.number().default(1) })),
  families: z.array(z.string()).optional(),
  generations: z.array(z.string()).optional(),
  'both-ways': z.boolean().default(false),
  'old-stock': z.enum(['usable', 'not-usable']).default('usable'),
});

const part = z.object({
  sku: z.string(),
  role: z.string(),
  dimensions: lengths.default({}),
  interfaces: words.default({}),
  traits: words.default({}),
  fits: z.array(clause).default([]),
  needs: z
    .array(
      z.union([
        z.object({ slot: z.string(), 'any-of': z.array(z.string()) }),
        z.object({ sku: z.string(), quantity: z.number().default(1), 'with-renewal': z.boolean().default(false) }),
      ]),
    )
    .default([]),
  excludes: z.array(z.object({ sku: z.string().optional(), slot: z.string().optional() })).default([]),
  doses,
  price: price.optional(),
  pack: z.number().default(1),
  rate: rate.optional(),
  'replaced-by': z.array(replacement).default([]),
});
export type Part = z.infer<typeof part>;

const kit = z.object({
  sku: z.string(),
  contents: z.array(z.object({ sku: z.string(), quantity: z.number().optional(), amount: amount.optional() })),
  price: price.optional(),
  'replaced-by': z.array(replacement).default([]),
});
export type Kit = z.infer<typeof kit>;

const supply = z.object({
  sku: z.string(),
  unit: z.enum(['mL', 'g', 'piece']),
  meets: z.array(z.string()).default([]),
  packs: z.array(z.object({ sku: z.string(), size: amount, price: price.optional() })),
});
export type Supply = z.infer<typeof supply>;

const used = z.object({
  specification: z.string().optional(),
  amount: amount.optional(),
  dose: z.string().optional(),
  of: z.string().default('chassis'),
  side: z.enum(['left', 'right']).optional(),
});
export type Used = z.infer<typeof used>;

const operation = z.object({
  id: z.string(),
  families: z.array(z.string()),
  order: z.number().default(0),
  changes: z.array(z.string()).default([]),
  requires: z.array(z.string()).default([]),
  after: z.array(z.string()).default([]),
  'closed-by': z.string().optional(),
  renews: z.array(z.object({ slot: z.string(), when: z.enum(['always', 'with-service']) })).default([]),
  uses: z.array(used).default([]),
  minutes,
});
export type Operation = z.infer<typeof operation>;

const service = z.object({ id: z.string(), families: z.array(z.string()), operations: z.array(z.string()) });
export type Service = z.infer<typeof service>;

const bike = z.object({
  id: z.string(),
  name: z.string(),
  sizes: z.array(z.string()).default([]),
  forks: z
    .array(
      z.object({
        sizes: z.array(z.string()).optional(),
        months: months.optional(),
        chassis: z.string(),
        travel: length,
        with: contents,
        'steerer-length': length.optional(),
      }),
    )
    .default([]),
  wheel: z.number(),
  tyre: z.string().optional(),
  'motor-assisted': z.boolean().optional(),
  category: z.number().optional(),
  'dual-crown': z.boolean().optional(),
  'head-tube': z
    .object({
      lower: z.string().optional(),
      length: z.union([length, lengths]).optional(),
      'upper-stack': length.optional(),
      'stem-clamp': length.optional(),
    })
    .default({}),
  slots: contents,
  limits: z
    .array(
      z.object({
        wheel: z.number().optional(),
        sizes: z.array(z.string()).optional(),
        crown: z.enum(['single', 'dual']).optional(),
        travel: limits.optional(),
        'axle-to-crown': limits.extend({ measured: z.string() }).optional(),
      }),
    )
    .default([]),
});
export type Bike = z.infer<typeof bike>;

const notice = z.object({
  id: z.string(),
  families: z.array(z.string()).optional(),
  chassis: z.array(z.string()).optional(),
  parts: z.array(z.string()).optional(),
  months: months.optional(),
  serials: serials.optional(),
  effect: z.enum(['blocks', 'flags']),
});
export type Months = z.infer<typeof months>;
export type Serials = z.infer<typeof serials>;

export const catalogSchema = z.object({
  catalog: z.object({ currency: z.string() }),
  families: z.array(family).default([]),
  chassis: z.array(chassis).default([]),
  parts: z.array(part).default([]),
  kits: z.array(kit).default([]),
  supplies: z.array(supply).default([]),
  specifications: z.array(z.object({ id: z.string(), unit: z.enum(['mL', 'g', 'piece']) })).default([]),
  operations: z.array(operation).default([]),
  services: z.array(service).default([]),
  bikes: z.array(bike).default([]),
  notices: z.array(notice).default([]),
});
export type Catalog = z.infer<typeof catalogSchema>;

export const shopSchema = z.object({
  labour: z.object({ rate: price, flat: z.record(z.string(), price).default({}) }),
  bulk: z.array(z.object({ supply: z.string(), price: price.optional(), per: amount })).default([]),
});
export type Shop = z.infer<typeof shopSchema>;

/** A row of the stock file: columns by name, as text. */
export type StockRow = Readonly<Record<string, string>>;
