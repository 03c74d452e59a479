import { describe, expect, it } from 'vitest';
import { smallCatalogue } from './catalogue.ts';
import { census } from './census.ts';
import { questionsFor } from './questions.ts';

const SEEDS = Array.from({ length: 100 }, (_, at) => at + 1);
const EACH = 5;

describe('generated catalogues and questions', () => {
  const counts = census(SEEDS, EACH);

  for (const [name, count] of counts)
    it(`census: ${name} is at least one question in a hundred`, () => {
      expect(count).toBeGreaterThanOrEqual((SEEDS.length * EACH) / 100);
    });

  it('seed: the same one makes the same catalogue and the same questions', () => {
    const [one, other] = [smallCatalogue(7), smallCatalogue(7)];
    expect(other).toEqual(one);
    expect(questionsFor(other, 9)).toEqual(questionsFor(one, 9));
    expect(smallCatalogue(8)).not.toEqual(one);
  });
});
