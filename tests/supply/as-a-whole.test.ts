import { describe, expect, it } from 'vitest';
import { purchases } from '../../src/supply/index.ts';
import { atHand, demand, market, policy, type Shelf, shown, waysToBuy } from './shelf.ts';

describe('purchases as a whole', () => {
  // B singly is there today, in the kit in 4 days. Alone the singles beat the kit; beside A, for which 4 days are waited anyway,
  // both come to the same, and the kit is one pack fewer: model.md, section 7.
  it('equals: needs bought apart are canonical as a whole', () => {
    const shelf: Shelf = {
      parts: { A: { price: 40 }, B: { price: 5 } },
      kits: { K: { price: 10, gives: { B: 2 } } },
      stock: { A: { lead: 4 }, B: { onHand: 9 }, K: { lead: 4 } },
    };
    expect(waysToBuy(shelf, { pieces: { A: 1, B: 2 } })).toEqual(['1 A, 1 K = 50, 4 days']);
  });

  const drum: Shelf = {
    parts: { C: { price: 400 } },
    kits: { K: { price: 500, gives: { C: 2, OIL: 20_000 } } },
    supplies: { OIL: { meets: ['bath'], packs: { O: { size: 100_000, price: 800 } } } },
    bulk: { OIL: { price: 10, per: 1000 } },
    stock: { K: { onHand: 9 }, C: { onHand: 9 }, O: { onHand: 9 } },
  };
  const job = { fresh: { C: 2 }, supplies: { bath: 20_000 } };

  // The kit alone costs 500. To leave its oil and dose as much again would be 700.
  it('bulk: the oil in a kit that is bought anyway is used before any is dosed', () => {
    expect(waysToBuy(drum, job, {}, { bulk: true })).toEqual(['1 K = 500, 0 days']);
  });

  it('bulk: the oil in a kit at hand is used before any is dosed', () => {
    expect(waysToBuy(drum, job, { kits: { K: 1 } }, { bulk: true })).toEqual(['take 1 K = 0, 0 days']);
  });

  const kits: Shelf = {
    parts: { A: {}, B: {} },
    kits: {
      K1: { price: 5, gives: { A: 1 } },
      K2: { price: 5, gives: { A: 1, B: 1 } },
      K3: { price: 5, gives: { B: 1 } },
    },
  };
  const three = { kits: { K1: 1, K2: 1, K3: 1 } };

  it('kits at hand: none is taken that nothing needs any more', () => {
    expect(waysToBuy(kits, { pieces: { A: 1, B: 1 } }, three)).toEqual(['take 1 K2 = 0, 0 days']);
  });

  it('kits at hand: the order in which needs are listed does not show', () => {
    expect(waysToBuy(kits, { pieces: { A: 1, B: 1 } }, three)).toEqual(
      waysToBuy(kits, { pieces: { B: 1, A: 1 } }, three),
    );
  });

  // Both buy one pack at one price; by the list of what is bought L comes before O. The kit at hand is no part of the list.
  it('kits at hand: equal purchases are decided by what is bought', () => {
    const shelf: Shelf = {
      parts: { B: {} },
      kits: { K: { price: 5, gives: { B: 1 } }, L: { price: 7, gives: { B: 1, OIL: 20 } } },
      supplies: { OIL: { meets: ['bath'], packs: { O: { size: 30, price: 7 } } } },
      stock: { L: { onHand: 1 }, O: { onHand: 1 } },
    };
    expect(waysToBuy(shelf, { fresh: { B: 1 }, supplies: { bath: 15 } }, { kits: { K: 1 } })).toEqual([
      '1 L = 7, 0 days',
    ]);
  });

  // Both jobs are one in the market's memory.
  it('memory: what was asked before does not show', () => {
    const ask = (on: ReturnType<typeof market>, first: 'A' | 'B'): string[] =>
      purchases(on, demand({ pieces: first === 'A' ? { A: 1, B: 1 } : { B: 1, A: 1 } }), atHand(three), policy()).map(
        shown,
      );
    const shared = market(kits);
    ask(shared, 'A');
    expect(ask(shared, 'B')).toEqual(ask(market(kits), 'B'));
  });
});
