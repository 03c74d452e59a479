import type { FitAnswer, FitDocument, ReachAnswer, ReachDocument } from '../plan/index.ts';
import type { Language } from './words/language.ts';
import { type Coded, say } from './words/say.ts';

type Params = Readonly<Record<string, string | number | boolean | null | readonly string[]>>;
const values = (params: Params): Record<string, string | number | boolean | null | string[]> =>
  Object.fromEntries(
    Object.entries(params).map(([key, value]) => [
      key,
      Array.isArray(value) ? [...value] : (value as string | number | boolean | null),
    ]),
  );

/** Puts words to the verdict on one part and one chassis. */
export function fitDocument(answer: FitAnswer, language: Language): FitDocument {
  const worded = ({ code, params, source }: FitAnswer['reasons'][number]): FitDocument['reasons'][number] => ({
    code,
    params: values(params),
    message: say(language, 'fits', { code, params } satisfies Coded),
    source,
  });
  return { ...answer, conditions: answer.conditions.map(worded), reasons: answer.reasons.map(worded) };
}

/** Puts words to the reasons of a reach map. */
export function reachDocument(answer: ReachAnswer, language: Language): ReachDocument {
  return {
    ...answer,
    travels: [...answer.travels],
    rows: answer.rows.map(({ wheel, cells }) => ({
      wheel,
      cells: cells.map(({ travel, status, plan, why }) => ({
        travel,
        status,
        plan: plan === null ? null : { ...plan, changes: [...plan.changes] },
        why: why.map(({ kind, code, params, source }) => ({
          kind,
          code,
          params: values(params),
          message: say(language, 'members', { code, params }),
          source,
        })),
      })),
    })),
  };
}
