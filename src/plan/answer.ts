import * as z from 'zod';
import { effectsSchema } from './effects-schema.ts';
import { contentSchema, questionSchema, wantsSchema } from './question.ts';

const decimal = z.string().regex(/^-?[0-9]+(?:\.[0-9]+)?$/);
const params = z.record(z.string(), z.union([z.string(), z.number(), z.boolean(), z.null(), z.array(z.string())]));

/** Where a fact stands: document and page where the catalogue names them, and always the record. */
export const sourceSchema = z.strictObject({
  document: z.string().nullable(),
  page: z.string().nullable(),
  record: z.string(),
  /** File and line; only where they were asked for. */
  place: z.string().optional(),
});
export type Source = z.infer<typeof sourceSchema>;

const unit = z.enum(['piece', 'mL', 'g']);
const quantityOf = z.strictObject({ sku: z.string(), name: z.string(), quantity: z.number(), unit });
/** Why a line stands as it does: a code with its values, and the nearest alternative with the one fact against it. */
const whySchema = z.strictObject({
  code: z.string(),
  params,
  against: z.strictObject({ code: z.string(), params }).nullable(),
  message: z.string(),
});

const lineSchema = z.strictObject({
  action: z.enum(['buy', 'take', 'install', 'renew', 'use', 'reuse', 'remove', 'waste']),
  /** Null only for waste whose product nobody knows, such as drained oil. */
  sku: z.string().nullable(),
  name: z.string(),
  role: z.string(),
  quantity: z.number(),
  unit,
  packs: z.int().nullable(),
  unitPrice: decimal.nullable(),
  total: decimal.nullable(),
  leftOver: z.array(quantityOf).nullable(),
  from: z.string().nullable(),
  because: z.array(z.string()),
  why: whySchema.nullable(),
  source: sourceSchema.nullable(),
  /** Shelf in the shop, for lines that are picked. */
  bin: z.string().nullable(),
  /** Days until this line is in hand; null where nobody knows. Only buy lines. */
  days: z.int().nullable(),
});

const fastenerSchema = z.strictObject({
  name: z.string(),
  side: z.enum(['left', 'right']).nullable(),
  function: z.string().nullable(),
  thread: z.string().nullable(),
  /** Of a cap screw: the hex key that its thread asks for, mm across flats (ISO 4762). */
  key: z.number().nullable(),
  tool: z.string().nullable(),
  torque: z.string(),
  state: z.string().nullable(),
  position: z.string().nullable(),
  count: z.int(),
  /** The torque tool that suits best, of the shop's or else of the catalogue's, and how far off it may be there, N·m (ISO 6789). */
  wrench: z.strictObject({ tool: z.string(), deviation: z.number() }).nullable(),
});

const ringSchema = z.strictObject({
  /** mm */
  bore: z.number(),
  tool: z.string().nullable(),
  /** Sizes of inside pliers for that bore (DIN 5256), the strongest first, with the diameter of their tips, mm. */
  pliers: z.array(z.strictObject({ size: z.string(), tip: z.number() })),
});

const stepSchema = z.strictObject({
  id: z.string(),
  title: z.string(),
  text: z.string(),
  minutes: z.int(),
  skill: z.string().nullable(),
  tools: z.array(z.string()),
  fasteners: z.array(fastenerSchema),
  /** Inside retaining rings that come out or go in. */
  rings: z.array(ringSchema),
  amounts: z.array(
    z.strictObject({
      action: z.enum(['use', 'drain']),
      sku: z.string().nullable(),
      name: z.string(),
      specification: z.string(),
      quantity: z.number(),
      unit,
      side: z.enum(['left', 'right']).nullable(),
      note: z.string().nullable(),
    }),
  ),
  /** Slots that the step opens or renews, of those that change or are renewed. */
  slots: z.array(z.string()),
  /** Of all such slots those that hold from this step on what they hold afterwards: filled, or left empty. */
  fills: z.array(z.string()),
  looks: z.array(
    z.strictObject({
      look: z.string(),
      if: z.string(),
      then: z.string(),
      /** Slots that it would have renewed. */
      adds: z.array(z.string()),
      /** What that adds to this plan: money and minutes more, days until all is there; null where it adds nothing or a new piece cannot be had. */
      extra: z
        .strictObject({ money: z.string(), minutes: z.number(), days: z.number().nullable(), atLeast: z.boolean() })
        .nullable(),
    }),
  ),
  cautions: z.array(z.string()),
  source: sourceSchema,
});

/** A flag: `blocks` stops the job, `verify` must be looked up or measured, `advice` is worth knowing. */
export const flagSchema = z.strictObject({
  severity: z.enum(['blocks', 'verify', 'advice']),
  code: z.string(),
  params,
  message: z.string(),
  source: sourceSchema.nullable(),
});

const labelSchema = z.enum(['recommended', 'cheapest', 'quickest', 'soonest']);

export const planSchema = z.strictObject({
  label: z.array(labelSchema),
  build: z.record(z.string(), contentSchema.nullable()),
  chassis: z.string(),
  /** Settings afterwards, in mm. */
  settings: z.record(z.string(), z.number()),
  changes: z.array(z.strictObject({ slot: z.string(), from: contentSchema.nullable(), to: contentSchema.nullable() })),
  lines: z.array(lineSchema),
  steps: z.array(stepSchema),
  tools: z.array(
    z.strictObject({
      id: z.string(),
      name: z.string(),
      size: z.string().nullable(),
      atHand: z.boolean().nullable(),
      price: decimal.nullable(),
    }),
  ),
  money: z.strictObject({
    parts: decimal,
    supplies: decimal,
    labour: decimal,
    total: decimal,
    currency: z.string(),
    atLeast: z.boolean(),
    unpriced: z.int(),
    /** Tax by the shop file: included in the total, or to be added to it. Null where the shop file is silent. */
    tax: z.strictObject({ rate: z.number(), included: z.boolean(), amount: decimal }).nullable(),
  }),
  minutes: z.int(),
  readyInDays: z.int().nullable(),
  /** Fits that the catalogue neither states nor denies and that this plan rests on. */
  unknowns: z.int(),
  effects: effectsSchema,
  flags: z.array(flagSchema),
});

/** One member of a conflict: a want, a kept trait, a fact, a rule, completeness or stock, with where it stands. */
const memberSchema = z.strictObject({
  kind: z.enum(['want', 'kept', 'now', 'rule', 'listing', 'stock', 'notice']),
  code: z.string(),
  params,
  message: z.string(),
  source: sourceSchema.nullable(),
});

const wayOutSchema = z.strictObject({
  drop: z.array(z.strictObject({ code: z.string(), params, message: z.string() })),
  wants: wantsSchema,
  money: decimal,
  minutes: z.int(),
  days: z.int().nullable(),
});

const refusalSchema = z.strictObject({
  conflicts: z.array(z.array(memberSchema)),
  smallest: z.boolean(),
  instead: z.array(wayOutSchema),
  complete: z.boolean(),
});

const statusSchema = z.enum(['answered', 'nothing-to-do', 'impossible', 'not-known', 'not-obtainable', 'stopped']);

/** What the fork in front of you may be, one row each: the assumed one first. Only where the question names possible contents. */
const casesSchema = z.strictObject({
  rows: z.array(
    z.strictObject({
      contents: z.record(z.string(), contentSchema.nullable()),
      travelNow: z.number(),
      axleToCrownNow: z.number().nullable(),
      status: statusSchema,
      /** The recommended plan of that case. */
      plan: z
        .strictObject({
          money: decimal,
          minutes: z.int(),
          days: z.int().nullable(),
          buy: z.array(z.strictObject({ sku: z.string(), packs: z.int() })),
        })
        .nullable(),
    }),
  ),
  sameInAll: z.boolean(),
  /** Looks and measurements that tell the cases apart, the least effort first; values in the order of the rows. */
  decides: z.array(
    z.strictObject({
      code: z.enum(['measure-axle-to-crown', 'measure-travel', 'look-into-slot']),
      slot: z.string().nullable(),
      values: z.array(z.string()),
    }),
  ),
  /** Packs that cover the recommended plan of every case. */
  covers: z.array(z.strictObject({ sku: z.string(), packs: z.int() })),
});

/** An answer as JSON. Field names are fixed; more may be added under the same `format`. */
export const answerSchema = z.strictObject({
  format: z.literal(1),
  catalog: z.string(),
  stock: z.string(),
  shop: z.string(),
  question: questionSchema,
  status: statusSchema,
  complete: z.boolean(),
  /** The build in front of you, as the catalogue and the question give it. */
  now: z.strictObject({
    chassis: z.string(),
    travel: z.number(),
    build: z.record(z.string(), contentSchema.nullable()),
    /** Settings in mm. */
    settings: z.record(z.string(), z.number()),
    /** The bike that the fork must suit; null where none is named. */
    bike: z.string().nullable(),
  }),
  /** What is true of the question as a whole, whether or not there is a plan. */
  flags: z.array(flagSchema),
  plans: z.array(planSchema),
  /** Services that go well with the job: what each would add to the recommended plan, or would come to where there is nothing else to do. */
  offers: z.array(
    z.strictObject({
      service: z.string(),
      name: z.string(),
      money: decimal,
      minutes: z.int(),
      days: z.int().nullable(),
      atLeast: z.boolean(),
    }),
  ),
  refusal: refusalSchema.nullable(),
  cases: casesSchema.nullable(),
});

export type Unworded<T> = T extends readonly (infer Item)[]
  ? readonly Unworded<Item>[]
  : T extends object
    ? { readonly [Key in keyof T as Key extends 'message' ? never : Key]: Unworded<T[Key]> }
    : T;

/** An answer with words: what JSON prints. */
export type AnswerDocument = z.infer<typeof answerSchema>;
/** An answer before words are put to its codes: what the core computes. */
export type Answer = Unworded<AnswerDocument>;
export type Plan = Answer['plans'][number];
export type Line = Plan['lines'][number];
export type Step = Plan['steps'][number];
export type Flag = Plan['flags'][number];
export type Status = Answer['status'];
export type Label = Plan['label'][number];
export type Refusal = NonNullable<Answer['refusal']>;
export type Member = Refusal['conflicts'][number][number];
export type WayOut = Refusal['instead'][number];
export type Effects = Plan['effects'];
export type GeometryEffects = NonNullable<Effects['geometry']>;
export type SpringEffects = NonNullable<Effects['spring']>;
export type SpringSide = NonNullable<SpringEffects['after']>;
export type SpacerAdvice = NonNullable<SpringEffects['spacers']>;
