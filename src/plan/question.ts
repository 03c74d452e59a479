import * as z from 'zod';

/** A number within bounds that are said with their unit. */
const between = (least: number, greatest: number, unit: string) =>
  z.number().min(least, `it must be at least ${least}${unit}`).max(greatest, `it must be at most ${greatest}${unit}`);

/** A length in millimetres as a person types it, held to the micrometre. */
const mm = between(0, 2000, ' mm').refine(
  (value) => Number.isInteger(Math.round(value * 1e6) / 1e3),
  'it must have at most three decimals',
);
const sku = z.string().regex(/^[A-Za-z0-9](?:[A-Za-z0-9._/-]*[A-Za-z0-9])?$/, 'not an SKU');
const id = z.string().regex(/^[a-z0-9]+(?:[-.][a-z0-9]+)*$/, 'not an id');
/** What names a chassis, bike or service: any words, so that a name or other capitals are answered with the ids that come near. */
const name = z.string().min(1).max(100);
const BY_BEAD_SEAT =
  'a wheel is named by its bead-seat diameter in mm, from 100 to 800: 622 is 29 in, 584 is 27.5 in, 559 is 26 in';
const wheel = z.int(BY_BEAD_SEAT).min(100, BY_BEAD_SEAT).max(800, BY_BEAD_SEAT);
const slot = z.string().regex(/^[a-z]+(?:-[a-z0-9]+)*$/, 'not a slot name');
const count = z.int().min(1).max(1000);
const date = z.iso.date();

/** A range in mm, both ends included. */
const bounds = z
  .strictObject({ least: mm, greatest: mm })
  .refine(({ least, greatest }) => least <= greatest, 'least is above greatest');

/** What a slot holds: so many of one SKU, or nothing. */
export const contentSchema = z.strictObject({ sku, quantity: count });
export type Content = z.infer<typeof contentSchema>;

/** Something at hand: pieces, or an amount of a supply in its own unit (mL or g). */
const haveSchema = z.strictObject({
  sku,
  quantity: count.optional(),
  amount: z.strictObject({ value: z.number().positive(), unit: z.enum(['mL', 'g']) }).optional(),
  used: z.boolean().default(false),
});

/** What the fork should become. Everything left out stays as it is. */
export const wantsSchema = z.strictObject({
  travel: mm.optional(),
  wheel: wheel.optional(),
  use: z.array(sku).max(50).default([]),
  keep: z.array(slot).max(50).default([]),
  renew: z.array(slot).max(50).default([]),
  service: z.array(name).max(20).default([]),
  spacers: z.int().min(0).max(100).optional(),
  /** Traits that a part must have afterwards, such as damper.lockout: none or spring.kind: coil. */
  traits: z
    .record(z.string().regex(/^[a-z]+(?:-[a-z0-9]+)*\.[a-z]+(?:-[a-z0-9]+)*$/, 'not SLOT.TRAIT'), id)
    .default({}),
  /** Rate of the coil, N/mm. */
  coilRate: z.number().positive().max(1000).optional(),
  axleToCrown: bounds.optional(),
  offset: bounds.optional(),
});

/** Who rides: for force, sag and a first pressure. What is left out is taken from common practice, and said. */
export const riderSchema = z.strictObject({
  /** With clothes, shoes, helmet, pack and water, kg. */
  mass: between(15, 250, ' kg').optional(),
  /** Share of the weight on the front wheel in the posture in which sag is read. */
  frontShare: between(0.05, 1, ' of the weight').optional(),
  /** Steering angle from the horizontal, degrees, where the bike's drawing is not known. */
  headAngle: between(45, 90, '°').optional(),
  /** Wanted sag as a share of travel. */
  sag: between(0.05, 0.5, ' of the travel').optional(),
  /** How far the rear axle moves up as the rider sits on the bike, mm. */
  rearSag: between(0, 150, ' mm').optional(),
});

/** A question, whole: the fork in front of you, the fork you want, and how to answer. Lengths in mm. */
export const questionSchema = z.strictObject({
  /** The chassis, or else the bike it left the works with. */
  chassis: name.optional(),
  bike: name.optional(),
  /** Frame size of `bike`. */
  size: z.string().min(1).max(40).optional(),
  /** Travel now; with a bike that of the fork it left the works with, if left out. */
  travelNow: mm.optional(),
  /** Serial number of the fork, and its month of production as YYYY-MM. */
  serial: z
    .string()
    .regex(/^[A-Za-z-]*[0-9]{1,15}$/, 'it must be letters, then digits')
    .optional(),
  built: z
    .string()
    .regex(/^[0-9]{4}-(?:0[1-9]|1[0-2])$/, 'it must be a month written as YYYY-MM, such as 2024-05')
    .optional(),
  /** The bike that the fork must suit afterwards, and its frame size. */
  onto: name.optional(),
  ontoSize: z.string().min(1).max(40).optional(),
  /** Tyre by its ISO 5775 designation, where it is not the bike's. */
  tyre: z
    .string()
    .regex(/^[1-9][0-9]{1,2}-[1-9][0-9]{2}$/, 'it must be a designation such as 60-622')
    .optional(),
  /** Length of the steerer of the fork in front of you, in mm. */
  steererLength: mm.optional(),
  /** Settings of the fork in front of you, in mm. */
  settings: z.record(slot, mm).default({}),
  /** What slots may hold instead of what is assumed: the answer is worked out for each. */
  maybe: z.record(slot, z.array(contentSchema.nullable()).min(1).max(20)).default({}),
  with: z.record(slot, contentSchema.nullable()).default({}),
  wants: wantsSchema.default({ use: [], keep: [], renew: [], service: [], traits: {} }),
  rider: riderSchema.optional(),
  have: z.array(haveSchema).max(200).default([]),
  prefer: z.enum(['money', 'time', 'wait']).default('money'),
  supplies: z.enum(['packs', 'bulk']).default('packs'),
  /** True where a supply that equals the specified one may be used instead of it. */
  substitutes: z.boolean().default(false),
  /** True where every line of the bill is to say why it stands there. */
  why: z.boolean().default(false),
  allowUnknown: z.boolean().default(false),
  /** The day the question is asked for; stands in the answer so that the same question gives the same bytes. */
  date: date.optional(),
  /** Greatest number of search steps before the answer says "stopped". */
  stepLimit: z.int().min(1).max(1_000_000_000).default(20_000_000),
});
export type Question = z.infer<typeof questionSchema>;
/** A question before defaults are filled in. */
export type QuestionInput = z.input<typeof questionSchema>;
