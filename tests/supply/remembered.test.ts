import { describe, expect, it } from 'vitest';
import { type BuyingPolicy, purchases } from '../../src/supply/index.ts';
import { atHand, demand, type Job, market, policy, type Shelf, shown } from './shelf.ts';

/** One question to the counter: what is needed, what is at hand, how it is to be bought. */
interface Question {
  readonly job: Job;
  readonly held?: Parameters<typeof atHand>[0];
  readonly more?: Partial<BuyingPolicy>;
}

const shelf: Shelf = {
  parts: { A: { price: 10 }, AB: { price: 100 }, B: { price: 30 }, AC: { price: 7 } },
  kits: {
    K: { price: 12, gives: { A: 1, B: 1 } },
    L: { price: 15, gives: { A: 1, OIL: 40 } },
    M: { price: 99, gives: { A: 1, B: 1 } },
  },
  supplies: {
    OIL: { meets: ['bath', 'damper'], at40: 200, packs: { S: { size: 100, price: 8 }, T: { size: 250, price: 15 } } },
    WAX: { meets: ['bath'], packs: { W: { size: 100, price: 9 } } },
    LIKE: { meets: [], at40: 200, packs: { U: { size: 100, price: 1 } } },
  },
  bulk: { OIL: { price: 1, per: 100 } },
};
const ways = (one: ReturnType<typeof market>, { job, held, more }: Question): string =>
  purchases(one, demand(job), atHand(held), policy(more)).map(shown).sort().join('; ');

const AC = { AC: 1 };
const BOTH = { A: 1, B: 1 };
const OIL = { supplies: { bath: 90 } };
/** Questions that differ in little and have answers of their own: what one is remembered by must tell it from the others of its list. */
const ALIKE: Readonly<Record<string, readonly Question[]>> = {
  'how many of what': [{ A: 1 }, { A: 2 }, { B: 1 }, { A: 2, B: 1 }, { A: 1, B: 2 }, { AC: 1 }].map((pieces) => ({
    job: { pieces },
  })),
  'new and used': [
    { job: { fresh: AC }, held: { used: AC } },
    { job: { pieces: AC }, held: { used: AC } },
    { job: { pieces: { AC: 2 } } },
  ],
  'new at hand': [{ job: { pieces: AC } }, { job: { pieces: AC }, held: { fresh: AC } }],
  'kits at hand': [
    { job: { pieces: BOTH } },
    { job: { pieces: BOTH }, held: { kits: { K: 1 } } },
    { job: { pieces: BOTH }, held: { kits: { M: 1 } } },
  ],
  'kits wanted': [
    { job: { pieces: BOTH } },
    { job: { pieces: BOTH }, more: { useKits: ['M'] } },
    { job: { pieces: BOTH }, more: { useKits: ['L'] } },
    { job: { pieces: BOTH }, more: { useKits: ['L', 'M'] } },
  ],
  'how much oil': [90, 240, 300].map((bath) => ({ job: { supplies: { bath } } })),
  'oil for what': [{ bath: 240, damper: 90 }, { bath: 90, damper: 150 }, { bath: 90 }].map((supplies) => ({
    job: { supplies },
  })),
  'oil at hand': [
    { job: { supplies: { bath: 240 } } },
    { job: { supplies: { bath: 240 } }, held: { supplies: { OIL: 150 } } },
    { job: { supplies: { bath: 240 } }, held: { supplies: { WAX: 200 } } },
  ],
  'several kinds at hand': [
    { job: { pieces: { A: 1 }, supplies: { bath: 90 } } },
    { job: { pieces: { A: 1 }, supplies: { bath: 90 } }, held: { fresh: { A: 1 }, supplies: { OIL: 90 } } },
    { job: { pieces: { A: 1 }, supplies: { bath: 90 } }, held: { fresh: { A: 1 }, used: { B: 1 } } },
    { job: { pieces: { A: 1 }, supplies: { bath: 90 } }, held: { used: { B: 1 }, supplies: { OIL: 90 } } },
  ],
  'how it is bought': [
    { job: OIL },
    { job: OIL, more: { bulk: true } },
    { job: OIL, more: { substitutes: true } },
    { job: OIL, more: { useSupplies: ['WAX'] } },
    { job: OIL, more: { usePacks: ['T'] } },
  ],
  'a kit with oil in it': [
    { job: { pieces: { A: 1 }, supplies: { bath: 30 } }, held: { kits: { L: 1 } } },
    { job: { pieces: { A: 1 }, supplies: { bath: 30 } } },
  ],
};

describe('what a market remembers', () => {
  for (const [name, questions] of Object.entries(ALIKE))
    it(`${name}: each has an answer of its own, and gets it from a market that was asked all of them`, () => {
      const expected = questions.map((question) => ways(market(shelf), question));
      expect(expected).not.toContain('');
      expect(new Set(expected).size).toBe(questions.length);
      for (const order of [questions, [...questions].reverse()]) {
        const one = market(shelf);
        for (const question of order) expect(ways(one, question)).toBe(expected[questions.indexOf(question)]);
        // and once more, now that all are known
        for (const question of order) expect(ways(one, question)).toBe(expected[questions.indexOf(question)]);
      }
    });

  it('the order in which needs, things at hand and wishes are listed does not matter: it is known', () => {
    const one = market(shelf);
    const ask = (question: Question): number => {
      ways(one, question);
      return one.remembered.size;
    };
    const known = ask({
      job: { pieces: { A: 1, B: 1 }, supplies: { bath: 9, damper: 9 } },
      held: { fresh: { A: 1, B: 2 } },
    });
    expect(
      ask({ job: { pieces: { B: 1, A: 1 }, supplies: { damper: 9, bath: 9 } }, held: { fresh: { B: 2, A: 1 } } }),
    ).toBe(known);
    // what is at hand and does not serve is no matter
    const oil = ask({ job: { supplies: { damper: 9 } }, held: { used: { B: 1 } } });
    expect(ask({ job: { supplies: { damper: 9 } }, held: { fresh: { A: 1 }, kits: { K: 1 } } })).toBe(oil);
  });
});
