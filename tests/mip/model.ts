import type { QuestionInput } from '../../src/plan/index.ts';
import type { Generated } from '../generator/catalogue.ts';
import { buildModel } from './build.ts';
import { buyingModel } from './buying.ts';
import { deskOf } from './desk.ts';
import type { Expression, Programme } from './programme.ts';
import { wants } from './wants.ts';
import { workModel } from './work.ts';

/**
 * A question about a generated catalogue as an integer programme, written from docs/model.md and the raw records alone. Its points are the plans of the question,
 * and plans that buy or count more than they must; no such plan is better in any part, so that least values and unbeaten vectors are those of the question.
 */
export interface Model {
  readonly programme: Programme;
  /** Total (minor units), minutes, days as a rank, lines without a price, unknown fits. */
  readonly parts: readonly [Expression, Expression, Expression, Expression, Expression];
  /** Days by rank; null where nobody knows. */
  readonly days: readonly (number | null)[];
}

export function modelOf(generated: Generated, question: QuestionInput): Model {
  const build = buildModel(deskOf(generated, question));
  const notStated = wants(build);
  const work = workModel(build);
  const { cost, rank, days, unpriced } = buyingModel(build, work);
  return {
    programme: build.programme,
    days,
    parts: [
      { terms: [...cost.terms, ...work.labour.terms], plus: cost.plus + work.labour.plus },
      work.minutes,
      { terms: [[1, rank]], plus: 0 },
      { terms: unpriced, plus: 0 },
      { terms: [...build.unknowns, ...notStated].map((one) => [1, one]), plus: 0 },
    ],
  };
}
