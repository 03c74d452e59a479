import { describe, expect, it } from 'vitest';
import { smallCatalogue } from '../generator/catalogue.ts';
import { questionsFor } from '../generator/questions.ts';
import { disputed } from './generated.ts';

/**
 * Seeds of which some answer was wrong once. 24, 25, 59: under bulk no pack was bought, though it costs less or has a price. 60, 66, 71: a pack that was asked for
 * was bought and its oil taken from a kit. 94: a damper too short stayed under other lowers. 4, 14, 225, 4656: the oracle misread the model. 1364, 5035: a clip for two parts counted as two
 * lines without a price, and a plan was missing.
 */
const ONCE_WRONG = [4, 14, 24, 25, 59, 60, 66, 71, 94, 225, 1364, 4656, 5035];
const EACH = 10;

describe('engine, oracle and auditor on generated catalogues', () => {
  for (const seed of ONCE_WRONG)
    it(`seed ${seed}: the same answers, sound refusals, nothing found`, () => {
      const catalogue = smallCatalogue(seed);
      expect(disputed(catalogue, questionsFor(catalogue, EACH))).toEqual([]);
    });
});
