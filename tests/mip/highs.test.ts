import { describe, expect, it } from 'vitest';
import { ask } from '../../src/plan/index.ts';
import { smallCatalogue } from '../generator/catalogue.ts';
import { loaded } from '../generator/load.ts';
import { questionsFor } from '../generator/questions.ts';
import { heldAgainst } from './against.ts';
import { modelOf } from './model.ts';
import { shareOf, told, upFrom } from './share.ts';
import { highsSolver } from './solver.ts';

/** 500 questions about 50 small catalogues; `npm run test:long` goes on from there. */
const FIRST_SEED = 1;
const CATALOGUES = 50;

const solver = highsSolver();

describe('engine and mixed-integer solver, generated catalogues', () => {
  it('the same feasibility, the same least total, minutes and days, and no plan missing from the front; oracle and auditor agree', async () => {
    const share = shareOf(upFrom(FIRST_SEED, CATALOGUES), await solver);
    console.log(told('mixed-integer solver', share));
    expect(share.differences).toEqual([]);
    expect(share.questions).toBe(CATALOGUES * 10);
    expect(share.noVerdict).toBeLessThan(share.questions / 100);
  }, 300_000);

  it('what its presolve calls infeasible though there is a plan is asked again without', async () => {
    const generated = smallCatalogue(5742);
    const question = questionsFor(generated, 10).find(
      ({ prefer, wants }) => prefer === 'wait' && wants?.renew?.length === 3,
    );
    if (question === undefined) throw new Error('the generator makes other questions now: find another such programme');
    const { programme, parts } = modelOf(generated, question);
    const highs = await solver;
    expect([highs(programme, parts[1]).kind, highs(programme, parts[1], true).kind]).toEqual(['none', 'least']);
    expect(shareOf([5742], highs).differences).toEqual([]);
  });

  it('a wrong answer is caught: a plan left out, a total too high, a refusal of what can be had', async () => {
    const generated = smallCatalogue(FIRST_SEED);
    const { world } = loaded(generated);
    const cases = questionsFor(generated, 5).flatMap((question) => {
      const reply = ask(world, question);
      if (reply.kind === 'faults' || reply.answer.status !== 'answered') return [];
      return [{ answer: reply.answer, model: modelOf(generated, question) }];
    });
    expect(cases.length).toBeGreaterThan(0);
    const highs = await solver;
    for (const { answer, model } of cases) {
      const [first, ...rest] = answer.plans;
      if (first === undefined) throw new Error('an answer without a plan');
      const dearer = { ...first, money: { ...first.money, total: (Number(first.money.total) + 0.01).toFixed(2) } };
      const wrong = [
        { ...answer, plans: rest },
        { ...answer, plans: [dearer, ...rest] },
        { ...answer, status: 'impossible' as const, plans: [] },
      ];
      for (const one of wrong) expect(heldAgainst(one, model, highs).differences).not.toEqual([]);
    }
  });
});
