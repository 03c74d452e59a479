import { describe, expect, it } from 'vitest';
import type { QuestionInput } from '../../src/plan/index.ts';
import { findingsIn, readPart } from '../differential/in-shares.ts';
import {
  everyBikeQuestion,
  everyBuyingQuestion,
  everyQuestion,
  everyTravelNow,
  inOtherManners,
  shuffled,
} from '../differential/questions.ts';
import { loadDemo } from '../differential/share.ts';

const SEED = 20_260_308;
/** Each question in every manner would be seven hundred thousand. */
const MANNERS = 8000;
/** LEGWORK_SHARE=1/2 asks about every second chassis, LEGWORK_LONG_MINUTES ends each kind of question early. */
const PART = readPart(process.env.LEGWORK_SHARE);
const MINUTES = Number(process.env.LEGWORK_LONG_MINUTES ?? Number.POSITIVE_INFINITY);

const demo = loadDemo();

/** Everything that is found against the answers to these questions and against the reasons of the refusals among them. */
async function everythingAgainst(what: string, questions: readonly QuestionInput[]): Promise<readonly string[]> {
  const begun = performance.now();
  const isOver = (): boolean => performance.now() - begun > MINUTES * 60_000;
  const { questions: asked, refusals, found } = findingsIn(await demo, what, questions, PART, isOver);
  console.log(`${what}: ${asked} questions compared, ${refusals} refusals checked, ${found.length} found`);
  expect(asked).toBeGreaterThan(0);
  return found;
}

describe('engine and oracle, the whole demo catalogue: the same answers, and every refusal stands', () => {
  it('forks: every question', async () => {
    expect(await everythingAgainst('forks', everyQuestion((await demo).book))).toEqual([]);
  });

  it('what is bought, named or at hand: every question', async () => {
    expect(await everythingAgainst('what is bought', everyBuyingQuestion((await demo).book))).toEqual([]);
  });

  it('travels never built: every question', async () => {
    expect(await everythingAgainst('travels never built', everyTravelNow((await demo).book))).toEqual([]);
  });

  it('forks on bikes: every question', async () => {
    expect(await everythingAgainst('forks on bikes', everyBikeQuestion((await demo).book))).toEqual([]);
  });

  it('other manners of asking: a great share', async () => {
    const { book } = await demo;
    const questions = shuffled(inOtherManners(book, everyQuestion(book)), SEED).slice(0, MANNERS);
    expect(await everythingAgainst('other manners', questions)).toEqual([]);
  });
});
