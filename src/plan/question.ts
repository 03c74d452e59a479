import { z } from 'zod';

/** A length in millimetres as a person types it, held to the micrometre. */
const mm = z
  .number()
  .min(0)
  .max(2000)
  .refine((value) => Number.isInteger(Math.round(value * 1e6) / 1e3), 'at most three decimals');
const sku = z.string().regex(/^[A-Za-z0-9](?:[A-Za-z0-9._/-]*[A-Za-z0-9])?$/, 'not an SKU');
const id = z.string().regex(/^[a-z0-9]+(?:[-.][a-z0-9]+)*$/, 'not an id');
const slot = z.string().regex(/^[a-z]+(?:-[a-z0-9]+)*$/, 'not a slot name');
const count = z.int().min(1).max(1000);
const date = z.iso.date();

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
  wheel: z.int().min(100).max(800).optional(),
  use: z.array(sku).max(50).default([]),
  keep: z.array(slot).max(50).default([]),
  renew: z.array(slot).max(50).default([]),
  service: z.array(id).max(20).default([]),
  spacers: z.int().min(0).max(100).optional(),
});

/** A question, whole: the fork in front of you, the fork you want, and how to answer. Lengths in mm. */
export const questionSchema = z.strictObject({
  chassis: id,
  travelNow: mm,
  with: z.record(slot, contentSchema.nullable()).default({}),
  wants: wantsSchema.default({ use: [], keep: [], renew: [], service: [] }),
  have: z.array(haveSchema).max(200).default([]),
  prefer: z.enum(['money', 'time', 'wait']).default('money'),
  supplies: z.enum(['packs', 'bulk']).default('packs'),
  allowUnknown: z.boolean().default(false),
  /** The day the question is asked for; stands in the answer so that the same question gives the same bytes. */
  date: date.optional(),
  /** Greatest number of search steps before the answer says "stopped". */
  stepLimit: z.int().min(1).max(1_000_000_000).default(20_000_000),
});
export type Question = z.infer<typeof questionSchema>;
/** A question before defaults are filled in. */
export type QuestionInput = z.input<typeof questionSchema>;
