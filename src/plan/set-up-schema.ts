import * as z from 'zod';
import { flagSchema } from './answer.ts';
import { outsideSchema, springSideSchema } from './effects-schema.ts';
import { contentSchema, questionSchema, riderSchema } from './question.ts';

/** What is asked: the fork in front of you, as in a plan, and who rides it. */
export const setUpQuestionSchema = questionSchema
  .pick({
    chassis: true,
    bike: true,
    size: true,
    onto: true,
    ontoSize: true,
    travelNow: true,
    serial: true,
    built: true,
    with: true,
    settings: true,
  })
  .extend({
    rider: riderSchema.required({ mass: true }),
    /** Air temperature as the fork is filled, °C. */
    filledAt: z.number().min(-30).max(60).default(20),
  });

export type SetUpQuestion = z.infer<typeof setUpQuestionSchema>;

/** One coil of those that fit, with the sag that it gives as a share of travel. */
const coilSchema = z.strictObject({ sku: z.string(), name: z.string(), rate: z.number(), sag: z.number() });

/**
 * What to set a fork up with for a rider. A starting point: `beyond` says that the rider, or the wanted sag, lies outside what the
 * maker prints, and that nothing was carried on beyond it; `not-known` that the catalogue does not state enough of the spring.
 */
export const setUpSchema = z.strictObject({
  format: z.literal(1),
  catalog: z.string(),
  question: setUpQuestionSchema,
  status: z.enum(['answered', 'beyond', 'not-known']),
  now: z.strictObject({
    chassis: z.string(),
    travel: z.number(),
    spring: contentSchema.nullable(),
    coil: contentSchema.nullable(),
    volumeSpacers: z.int(),
    bike: z.string().nullable(),
  }),
  rider: z.strictObject({
    mass: z.number(),
    frontShare: z.number(),
    headAngle: z.number(),
    sag: z.number(),
    load: z.number(),
    /** Names of what the question does not say, and common practice stands for. */
    assumed: z.array(z.enum(['front-share', 'head-angle', 'sag'])),
  }),
  /** What the spring that is in it does; the maker's chart, where there is one, comes first. */
  spring: springSideSchema.nullable(),
  /** What the catalogue does not state of the spring; empty where all is there. */
  lacking: z.array(z.string()),
  /** Coils for this rider, nearest to the wanted sag first; only for a coil fork. */
  coils: z
    .strictObject({
      wantedRate: z.number().nullable(),
      suit: z.array(coilSchema),
      outside: outsideSchema.nullable(),
    })
    .nullable(),
  /** What a pump would show with the same air at other temperatures; only for air. */
  temperature: z
    .strictObject({
      filled: z.strictObject({ celsius: z.number(), psi: z.number(), bar: z.number() }),
      shows: z.array(z.strictObject({ celsius: z.number(), psi: z.number(), bar: z.number() })),
    })
    .nullable(),
  flags: z.array(flagSchema),
});
export type SetUpDocument = z.infer<typeof setUpSchema>;
