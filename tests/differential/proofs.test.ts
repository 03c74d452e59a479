import { describe, expect, it } from 'vitest';
import { type Answer, ask, type QuestionInput } from '../../src/plan/index.ts';
import { checkProof, missingWays, restsOnSilence } from '../oracle/index.ts';
import { byChassis } from './by-chassis.ts';
import { everyBikeQuestion, everyQuestion, shuffled } from './questions.ts';
import { type Demo, loadDemo, tell } from './share.ts';

const SEED = 20_260_309;
const SHARE = { forks: 150, bikes: 40 };

const quennet = { chassis: 'quennet-622', travelNow: 150 };
const stiff = { chassis: 'quennet-584-20x110', travelNow: 170 };
const brastle = { chassis: 'brastle-622', travelNow: 130 };
const odrun = { chassis: 'odrun-584', travelNow: 180 };

const deep = {
  ...stiff,
  travelNow: 180,
  with: {
    spring: { sku: 'QN-AIR-232', quantity: 1 },
    'top-cap': { sku: 'QN-CAP-DEEP', quantity: 1 },
    'volume-spacers': null,
  },
  onto: 'dallowick-querrel',
  ontoSize: 'xl',
};
const wideRing = {
  chassis: 'fennock-622',
  travelNow: 140,
  with: {
    spring: { sku: 'FN-AIR-140-W', quantity: 1 },
    'volume-spacers': { sku: 'FN-VS', quantity: 2 },
    'retaining-ring': { sku: 'FN-RING-W', quantity: 1 },
  },
};

const refused: readonly (readonly [string, QuestionInput])[] = [
  ['more travel than the chassis allows', { ...quennet, wants: { travel: 170 } }],
  ['travel that only another axle allows', { ...quennet, wants: { travel: 180 } }],
  ['travel that no spring gives', { ...odrun, wants: { travel: 190 } }],
  ['travel between two springs', { ...quennet, wants: { travel: 135 } }],
  ['another travel and the same spring', { ...quennet, wants: { travel: 130, keep: ['spring'] } }],
  ['another travel and the same travel spacers', { ...brastle, wants: { travel: 160, keep: ['travel-spacers'] } }],
  ['more travel and the same damper', { ...quennet, wants: { travel: 160, keep: ['damper'] } }],
  ['another wheel and the same lowers', { ...quennet, wants: { wheel: 559, keep: ['lowers'] } }],
  ['a wheel with another axle', { ...quennet, wants: { wheel: 559 } }],
  ['more spacers than the spring takes', { ...stiff, wants: { travel: 180, spacers: 1 } }],
  ['a cap that leaves no room for spacers', { ...stiff, travelNow: 180, wants: { keep: ['top-cap'], travel: 150 } }],
  ['a spring that needs another cap', { ...stiff, wants: { travel: 180, keep: ['top-cap'] } }],
  ['a damper that is too long', { chassis: 'quennet-584', travelNow: 160, wants: { use: ['QN-DMP-185'] } }],
  ['a spring that its maker denies', { chassis: 'quennet-559', travelNow: 150, wants: { use: ['QN-AIR-212'] } }],
  ['a damper with too little stroke', { ...stiff, wants: { travel: 180, use: ['QN-DMP-155'] } }],
  ['a part that nobody speaks of', { ...quennet, wants: { use: ['VH-W-33-FL'] } }],
  ['a coil that is not made', { ...odrun, wants: { coilRate: 6.25 } }],
  ['an offset that is not made', { ...quennet, wants: { offset: { least: 50, greatest: 60 } } }],
  ['two conflicts: travel and axle', { ...quennet, wants: { travel: 135, wheel: 559, spacers: 5 } }],
  ['two conflicts: travel and spacers', { chassis: 'quennet-559', travelNow: 150, wants: { travel: 170, spacers: 5 } }],
  ['a bike with a narrower tube', { ...quennet, onto: 'dallowick-pelter' }],
  ['a bike with a smaller wheel', { ...quennet, onto: 'dallowick-wimbrel' }],
  ['a wheel that another axle takes, onto a frame that allows less travel', { ...deep, wants: { wheel: 559 } }],
  ['a spring that is to be renewed and cannot be had', { ...wideRing, wants: { renew: ['spring'] } }],
  ['a frame that allows less travel', { ...quennet, onto: 'dallowick-querrel', ontoSize: 'm', wants: { travel: 130 } }],
];

const demo = loadDemo();

type Refused = Pick<Answer, 'question' | 'status' | 'refusal'>;

/** Answers that refuse; what is answered otherwise is passed over. */
const refusals = ({ loaded }: Demo, questions: readonly QuestionInput[]): readonly Refused[] =>
  questions.flatMap((question) => {
    const reply = ask(loaded.world, question);
    return reply.kind === 'answer' && reply.answer.refusal !== null ? [reply.answer] : [];
  });

const findings = ({ book }: Demo, answers: readonly Refused[]): readonly string[] =>
  answers.flatMap((answer) =>
    checkProof(book, answer, 'what is listed').map((finding) => `${JSON.stringify(answer.question)}: ${finding}`),
  );

describe('reasons of a refusal, checked by the oracle', () => {
  for (const [name, question] of refused) {
    it(`${name}: each reason is true and needed, together they suffice, and each way out is as said`, async () => {
      const answers = refusals(await demo, [question]);
      expect(answers.length).toBe(1);
      expect(findings(await demo, answers)).toEqual([]);
    });
  }

  it('a share of all questions: every refusal stands', async () => {
    const { book } = await demo;
    const answers = refusals(await demo, [
      ...byChassis(shuffled(everyQuestion(book), SEED).slice(0, SHARE.forks)).flat(),
      ...byChassis(shuffled(everyBikeQuestion(book), SEED).slice(0, SHARE.bikes)).flat(),
    ]);
    expect(findings(await demo, answers)).toEqual([]);
    tell('refusals', answers.length);
  });

  it('complete: no least way out is missing', async () => {
    const { book } = await demo;
    const answers = refusals(await demo, [
      ...refused.map(([, question]) => question),
      { ...stiff, wants: { travel: 120, use: ['QN-U-40'] } },
      { ...stiff, travelNow: 180, wants: { travel: 140, wheel: 559 } },
      { chassis: 'quennet-584', travelNow: 160, wants: { wheel: 559, use: ['QN-DMP-185'] } },
    ]);
    const missing = answers
      .filter(({ question }) => question.onto === undefined)
      .flatMap((answer) => missingWays(book, answer).map((way) => `${JSON.stringify(answer.question.wants)}: ${way}`));
    expect(missing).toEqual([]);
  });

  it('impossible: no reason is only that nobody says', async () => {
    const { book } = await demo;
    const answers = refusals(await demo, [
      { ...brastle, onto: 'dallowick-stobbart', wants: { travel: 130 } },
      { ...stiff, travelNow: 180, onto: 'hennivar-osker', ontoSize: 'l', wants: { wheel: 584 } },
      { chassis: 'fennock-622', travelNow: 160, wants: { travel: 150, use: ['FN-AIR-140-N'] } },
    ]);
    expect(answers.flatMap((answer) => restsOnSilence(book, answer))).toEqual([]);
  });
});
