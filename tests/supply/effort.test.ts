import { describe, expect, it, vi } from 'vitest';
import { StepBudget } from '../../src/solve/index.ts';
import { canonicalCover } from '../../src/supply/canonical-cover.ts';
import type { Dosing } from '../../src/supply/cover.ts';
import { type CoverColumn, cheapestCovers, isCover, leastCover } from '../../src/supply/index.ts';
import type { Programme, ProgrammeColumn } from '../../src/supply/programme.ts';

/** The sets as rows, their members as columns of one pack each: what hits every set. */
const hitting = (sets: readonly (readonly number[])[], costs: readonly number[]): Programme => ({
  needs: sets.map(() => 1),
  columns: costs.map(
    (cost, member): ProgrammeColumn => ({
      gives: sets.flatMap((set, row) => (set.includes(member) ? [[row, 1] as const] : [])),
      cost,
      limit: 1,
    }),
  ),
  caps: [],
});
const upTo = (most: number): number[] => Array.from({ length: most }, (_one, at) => at);

/** The triples of a Steiner system of order 13, made from two by adding 1 modulo 13. */
const triples = upTo(13).flatMap((by) =>
  [
    [0, 1, 4],
    [0, 2, 7],
  ].map((triple) => triple.map((at) => (at + by) % 13)),
);

/** The least cost by trying every choice of at most one pack of each column. */
function byTrying(programme: Programme): number {
  const size = programme.columns.length;
  let least = Number.POSITIVE_INFINITY;
  for (let mask = 0; mask < 1 << size; mask++) {
    const packs = upTo(size).map((at) => (mask >> at) & 1);
    const cost = packs.reduce((sum, count, at) => sum + count * (programme.columns[at]?.cost ?? 0), 0);
    if (cost < least && isCover(programme, packs)) least = cost;
  }
  return least;
}

/** Packs of several sizes for ten rows, one of them dearer than another that does all it does. */
const mixed: Programme = {
  needs: upTo(10).map((row) => 3 + ((row * 5) % 7)),
  columns: upTo(24).map((at) => ({
    gives: [0, 1, 2].flatMap((more) => {
      const row = (at * 3 + more * (1 + (at % 3))) % 10;
      return more <= at % 3 ? [[row, 1 + ((at + more) % 4)] as const] : [];
    }),
    cost: 4 + ((at * 11) % 13) + 3 * (at % 3),
    limit: 4,
  })),
  caps: [],
};

/** The least cost and the nodes that proving it took. */
const proved = (programme: Programme): readonly (number | null)[] => {
  const budget = new StepBudget(Number.POSITIVE_INFINITY);
  const { least, proved: whole } = leastCover(programme, budget);
  expect(whole).toBe(true);
  return [least?.cost ?? null, budget.used];
};

// Nodes are pinned, so that a bound, a fixing or a first cover that has become worse fails a test: a lower number is an improvement to write down here.
describe('effort of a least cover', () => {
  const even = hitting(triples, Array(13).fill(1));
  const uneven = hitting(
    triples,
    upTo(13).map((at) => 5 + ((at * 7) % 9)),
  );

  it('triples of 13: the least hitting set, and the nodes it takes', () => {
    expect([byTrying(even), byTrying(uneven)]).toEqual([proved(even)[0], proved(uneven)[0]]);
    expect([proved(even)[1], proved(uneven)[1]]).toEqual([17, 25]);
  });

  it('packs: with and without a cap', () => {
    const capped = { ...mixed, caps: [{ weights: mixed.columns.map((_one, at) => at % 4), most: 14 }] };
    expect([proved(mixed)[1], proved(capped)[1]]).toEqual([173, 248]);
  });
});

/** Programmes of several shapes by a rule: `rows` needs, `columns` packs of up to four rows, the rows of a pack in no order. */
const shaped = (rows: number, columns: number, limit: number, step: number): Programme => ({
  needs: upTo(rows).map((row) => 2 + ((row * step) % 9)),
  columns: upTo(columns).map((at) => ({
    gives: upTo(1 + ((at * step) % 4))
      .map((more) => [(at * 7 + more * (rows - 1) + at * more) % rows, 1 + ((at * 5 + more * 3) % 6)] as const)
      .filter(([row], place, all) => all.findIndex(([other]) => other === row) === place),
    cost: ((at * 13 + step) % 17) + 2 * ((at * step) % 4),
    limit: 1 + ((at + step) % limit),
  })),
  caps: [],
});

describe('effort of least covers of several shapes', () => {
  const shapes = [shaped(8, 20, 4, 5), shaped(9, 26, 4, 7), shaped(11, 34, 5, 4), shaped(10, 40, 6, 13)];
  const capped = (programme: Programme, ...most: readonly number[]): Programme => ({
    ...programme,
    caps: most.map((room, cap) => ({ weights: programme.columns.map((_one, at) => (at * (cap + 3)) % 5), most: room })),
  });

  const nodesOf = (programme: Programme): number | null | undefined => proved(programme)[1];

  it('without caps', () => {
    expect(shapes.map(nodesOf)).toEqual([11, 128, 21, 22]);
  });

  it('with one cap and with two', () => {
    expect(shapes.map((shape) => nodesOf(capped(shape, 20)))).toEqual([8, 210, 63, 53]);
    expect(shapes.map((shape) => nodesOf(capped(shape, 30, 16)))).toEqual([9, 157, 29, 25]);
  });

  it('with a cost that is enough, or that none may pass', () => {
    const bounded = (programme: Programme, most: number, enough: number): number => {
      const budget = new StepBudget(Number.POSITIVE_INFINITY);
      leastCover(programme, budget, { most, enough });
      return budget.used;
    };
    expect(shapes.map((shape) => bounded(shape, 80, 60))).toEqual([12, 153, 27, 1]);
    expect(shapes.map((shape) => bounded(shape, 30, 0))).toEqual([1, 1, 1, 1]);
  });
});

describe('effort of exact covers', () => {
  /** Nodes of every search that something takes. */
  function nodes(work: () => unknown): number {
    const take = vi.spyOn(StepBudget.prototype, 'take');
    work();
    const { length } = take.mock.calls;
    take.mockRestore();
    return length;
  }
  const priced = (one: ProgrammeColumn): CoverColumn => ({ ...one, unpriced: false, free: false });
  const columns = mixed.columns.slice(0, 12).map(priced);
  const needs = mixed.needs.map((need) => Math.min(need, 3));

  it('plain search: packs of several sizes, with doses, and with packs without a price', () => {
    const dose: Dosing = { price: 5, per: 2 };
    const doses = needs.map((_need, row) => (row % 3 === 0 ? dose : null));
    const unpriced = columns.map((one, at) => (at % 5 === 0 ? { ...one, cost: 0, unpriced: true } : one));
    const searches = [
      () => cheapestCovers(needs, columns),
      () => cheapestCovers(needs, columns, doses),
      () => cheapestCovers(needs, columns, [null, { price: null, per: 1 }]),
      () => cheapestCovers(needs, unpriced),
    ];
    expect(searches.map(nodes)).toEqual([132, 206, 312, 216]);
  });

  it('one thing that gives one need: nothing is searched', () => {
    const only = priced({ gives: [[0, 2]], cost: 3, limit: 5 });
    expect([nodes(() => cheapestCovers([7], [only])), nodes(() => cheapestCovers([7], [only, only]))]).toEqual([0, 15]);
  });

  it('canonical cover: one thing settled after the other', () => {
    const held = columns.map((one, at) => (at % 4 === 0 ? { ...one, cost: 0, limit: 1, free: true } : one));
    const unpriced = held.map((one, at) => (at % 4 === 1 ? { ...one, cost: 0, limit: 1, unpriced: true } : one));
    expect([columns, held, unpriced].map((all) => nodes(() => canonicalCover(needs, all, 3)))).toEqual([160, 59, 22]);
  });
});
