import { describe, expect, it } from 'vitest';
import {
  everyBikeQuestion,
  everyBuyingQuestion,
  everyQuestion,
  everyTravelNow,
  inOtherManners,
  shuffled,
} from '../differential/questions.ts';
import { disagreements, loadDemo, tell } from '../differential/share.ts';

const SEED = 20_260_308;
/** Each question in every manner would be a hundred thousand. */
const MANNERS = 8000;

const demo = loadDemo();

describe('engine and oracle, the whole demo catalogue', () => {
  it('forks: every question has the same answer', async () => {
    const questions = everyQuestion((await demo).book);
    expect(disagreements(await demo, questions)).toEqual([]);
    tell('forks', questions.length);
  });

  it('forks on bikes: every question has the same answer', async () => {
    const questions = everyBikeQuestion((await demo).book);
    expect(disagreements(await demo, questions)).toEqual([]);
    tell('forks on bikes', questions.length);
  });

  it('other manners of asking: a great share has the same answers', async () => {
    const { book } = await demo;
    const questions = shuffled(inOtherManners(book, everyQuestion(book)), SEED).slice(0, MANNERS);
    expect(disagreements(await demo, questions)).toEqual([]);
    tell('other manners', questions.length);
  });

  it('what is bought, named or at hand: every question has the same answer', async () => {
    const questions = everyBuyingQuestion((await demo).book);
    expect(disagreements(await demo, questions)).toEqual([]);
    tell('what is bought', questions.length);
  });

  it('travels never built: every question has the same answer', async () => {
    const questions = everyTravelNow((await demo).book);
    expect(disagreements(await demo, questions)).toEqual([]);
    tell('travels never built', questions.length);
  });
});
