import { describe, expect, it } from 'vitest';
import {
  everyBikeQuestion,
  everyBuyingQuestion,
  everyQuestion,
  everyTravelNow,
  inOtherManners,
  shuffled,
} from './questions.ts';
import { disagreements, loadDemo, tell } from './share.ts';

/** A share that is the same in every run. All questions are put by `npm run test:long`. */
const SEED = 20_260_307;
const SHARE = { forks: 300, bikes: 70, manners: 140, buying: 120, travels: 120 };

const demo = loadDemo();

describe('engine and oracle, demo catalogue', () => {
  it('forks: the same status, vectors, builds, steps and packs', async () => {
    const questions = shuffled(everyQuestion((await demo).book), SEED).slice(0, SHARE.forks);
    expect(disagreements(await demo, questions)).toEqual([]);
    tell('forks', questions.length);
  });

  it('forks on bikes: the same status, vectors, builds, steps and packs', async () => {
    const questions = shuffled(everyBikeQuestion((await demo).book), SEED).slice(0, SHARE.bikes);
    expect(disagreements(await demo, questions)).toEqual([]);
    tell('forks on bikes', questions.length);
  });

  it('a wheel wanted beside a bike: what is rated stays a fact, and limits speak of the wanted wheel', async () => {
    const other = {
      spring: { sku: 'QN-AIR-222', quantity: 1 },
      damper: { sku: 'QN-DMP-175', quantity: 1 },
      'volume-spacers': null,
    };
    const questions = [
      { bike: 'hennivar-tarric', size: 's', wants: { wheel: 584 } },
      { bike: 'hennivar-tarric', size: 'm', wants: { wheel: 584 } },
      {
        chassis: 'quennet-622',
        travelNow: 160,
        with: other,
        onto: 'dallowick-brannig',
        ontoSize: 'xl',
        wants: { wheel: 584 },
      },
    ];
    expect(disagreements(await demo, questions)).toEqual([]);
    tell('a wheel beside a bike', questions.length);
  });

  it('other manners of asking: the same status, vectors, builds, steps and packs', async () => {
    const { book } = await demo;
    const questions = shuffled(inOtherManners(book, everyQuestion(book)), SEED).slice(0, SHARE.manners);
    expect(disagreements(await demo, questions)).toEqual([]);
    tell('other manners', questions.length);
  });

  it('what is bought, named or at hand: the same status, vectors, builds, steps and packs', async () => {
    const questions = shuffled(everyBuyingQuestion((await demo).book), SEED).slice(0, SHARE.buying);
    expect(disagreements(await demo, questions)).toEqual([]);
    tell('what is bought', questions.length);
  });

  it('travels never built: the same fork is taken for now, and the same answer given', async () => {
    const questions = shuffled(everyTravelNow((await demo).book), SEED).slice(0, SHARE.travels);
    expect(disagreements(await demo, questions)).toEqual([]);
    tell('travels never built', questions.length);
  });
});
