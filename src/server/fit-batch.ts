import * as z from 'zod';
import { doesFit, fitSchema, type World } from '../plan/index.ts';
import { fitDocument } from '../report/fit-documents.ts';
import { en } from '../report/words/en.ts';
import { say } from '../report/words/say.ts';
import { fitQuestionSchema } from './questions.ts';

/** Most pairs in one request. */
export const MOST_PAIRS = 10_000;

export const fitBatchQuestionSchema = z.strictObject({
  pairs: z.array(fitQuestionSchema).min(1).max(MOST_PAIRS),
});
export type FitBatchQuestion = z.infer<typeof fitBatchQuestionSchema>;

const reasonSchema = fitSchema.shape.reasons.element;
/** Verdicts in the order of the pairs; what decides them stands once in `reasons`, and a pair names it by its index. */
export const fitBatchSchema = z.strictObject({
  format: z.literal(1),
  catalog: z.string(),
  verdicts: z.array(
    z.strictObject({
      /** `at-fault` where the catalogue does not know the part or the chassis: the reasons say which. */
      verdict: z.enum(['fits', 'fits-if', 'no', 'unknown', 'at-fault']),
      conditions: z.array(z.int()),
      reasons: z.array(z.int()),
    }),
  ),
  reasons: z.array(reasonSchema),
});
type FitBatchAnswer = z.infer<typeof fitBatchSchema>;
type Reason = z.infer<typeof reasonSchema>;

/** Works out the verdict on each pair. A pair at fault does not spoil the others. */
export function fitBatch(world: World, { pairs }: FitBatchQuestion): FitBatchAnswer {
  const reasons: Reason[] = [];
  const known = new Map<string, number>();
  const indexOf = (reason: Reason): number => {
    const key = JSON.stringify(reason);
    const at = known.get(key) ?? reasons.push(reason) - 1;
    known.set(key, at);
    return at;
  };
  const verdicts = pairs.map((pair): FitBatchAnswer['verdicts'][number] => {
    const answer = doesFit(world.catalog, pair);
    if ('faults' in answer) {
      const said = answer.faults.map(({ code, params }) =>
        indexOf({
          code,
          params: Object.fromEntries(
            Object.entries(params).map(([name, value]) => [name, typeof value === 'object' ? [...value] : value]),
          ),
          message: say(en, 'faults', { code, params }),
          source: null,
        }),
      );
      return { verdict: 'at-fault', conditions: [], reasons: said };
    }
    const document = fitDocument(answer, en);
    return {
      verdict: document.verdict,
      conditions: document.conditions.map(indexOf),
      reasons: document.reasons.map(indexOf),
    };
  });
  return { format: 1, catalog: world.catalog.hash, verdicts, reasons };
}
