import * as z from 'zod';
import { KINDS } from '../cli/kinds.ts';
import { questionSchema } from '../plan/index.ts';

const shape = questionSchema.shape;
const sku = shape.wants.unwrap().shape.use.unwrap().element;

/** One part and one fork: what `legwork fit` asks. */
export const fitQuestionSchema = z.strictObject({
  part: sku,
  chassis: shape.chassis.unwrap(),
  serial: shape.serial.unwrap().exactOptional(),
  built: shape.built.unwrap().exactOptional(),
});
export const usesQuestionSchema = z.strictObject({ part: sku });

export const kindSchema = z.enum(KINDS);
export type Kind = z.infer<typeof kindSchema>;

/** A number as a parameter writes it, without sign or exponent. */
export const numberParameter = <Inner extends z.ZodType<number, number>>(inner: Inner) =>
  z
    .string()
    .regex(/^[0-9]{1,9}(?:\.[0-9]{1,9})?$/, 'not a number')
    .transform(Number)
    .pipe(inner);

/** Most ways that an answer can be asked a picture of. */
const MOST_WAYS = 1_000;
/** A question as for a plan, and which of the ways of its answer is drawn; 1 is the recommended one. */
export const pictureQuestionSchema = z.strictObject({
  question: questionSchema,
  way: numberParameter(z.int().min(1).max(MOST_WAYS)).default(1),
});
export type PictureQuestion = z.infer<typeof pictureQuestionSchema>;
