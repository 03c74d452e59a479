import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { StepBudget } from '../../src/solve/index.ts';
import { canonicalCover } from '../../src/supply/canonical-cover.ts';
import { type CoverColumn, cheapestCovers, coverFront, isCover, leastCover } from '../../src/supply/index.ts';
import { hold } from '../laws/hold.ts';

interface Case {
  readonly needs: readonly number[];
  readonly columns: readonly CoverColumn[];
  readonly most: number;
}

/** Up to four rows and six columns, amounts above 1, some without a price (one pack at most), some at hand. */
const cases: fc.Arbitrary<Case> = fc
  .array(fc.integer({ min: 0, max: 5 }), { minLength: 1, maxLength: 4 })
  .chain((needs) =>
    fc.record({
      needs: fc.constant(needs),
      most: fc.integer({ min: 0, max: 3 }),
      columns: fc.array(
        fc
          .tuple(
            fc.array(fc.integer({ min: 0, max: 4 }), { minLength: needs.length, maxLength: needs.length }),
            fc.integer({ min: 0, max: 6 }),
            fc.integer({ min: 0, max: 3 }),
            fc.constantFrom('priced', 'priced', 'unpriced', 'free'),
          )
          .map(
            ([amounts, cost, limit, kind]): CoverColumn => ({
              gives: amounts.flatMap((amount, row) => (amount > 0 ? [[row, amount] as const] : [])),
              cost: kind === 'priced' ? cost : 0,
              limit: kind === 'unpriced' ? Math.min(1, limit) : limit,
              unpriced: kind === 'unpriced',
              free: kind === 'free',
            }),
          ),
        { minLength: 1, maxLength: 6 },
      ),
    }),
  );

/** Every choice of packs within the limits. */
function* choices(columns: readonly CoverColumn[], packs: readonly number[] = []): Generator<readonly number[]> {
  const column = columns[packs.length];
  if (!column) yield packs;
  else for (let count = 0; count <= column.limit; count++) yield* choices(columns, [...packs, count]);
}

const sum = (packs: readonly number[], each: (at: number) => number): number =>
  packs.reduce((total, count, at) => total + count * each(at), 0);

describe('least cover', () => {
  it('law: the least cost under a cap is the one of brute force, and what is shown is such a cover', () => {
    hold('least covers equal brute force', 1500, cases, ({ needs, columns, most }) => {
      const programme = { needs, columns, caps: [{ weights: columns.map((_one, at) => at % 3), most: most * 2 }] };
      const costs = [...choices(columns)]
        .filter((packs) => isCover(programme, packs))
        .map((packs) => sum(packs, (at) => columns[at]?.cost ?? 0));
      const { least, proved } = leastCover(programme);
      expect(proved).toBe(true);
      expect(least?.cost ?? Number.POSITIVE_INFINITY).toBe(Math.min(...costs));
      if (least)
        expect([isCover(programme, least.packs), sum(least.packs, (at) => columns[at]?.cost ?? 0)]).toEqual([
          true,
          least.cost,
        ]);
    });
  });

  it('law: the canonical cover is the one that the plain search finds', () => {
    hold('canonical covers equal plain ones', 1500, cases, ({ needs, columns }) => {
      const plain = cheapestCovers(needs, columns);
      const found = plain.map(({ unpriced }) => canonicalCover(needs, columns, unpriced));
      expect(found).toEqual(plain);
      if (plain.length === 0) expect(canonicalCover(needs, columns, columns.length)).toBe(null);
    });
  });

  it('law: the front of (cost, packs) is the one of brute force', () => {
    hold('cover fronts equal brute force', 500, cases, ({ needs, columns }) => {
      const programme = { needs, columns, caps: [] };
      const all = [...choices(columns)]
        .filter((packs) => isCover(programme, packs))
        .map((packs) => [sum(packs, (at) => columns[at]?.cost ?? 0), sum(packs, () => 1)] as const);
      const unbeaten = all.filter(
        ([cost, count]) => !all.some(([c, n]) => c <= cost && n <= count && (c < cost || n < count)),
      );
      const expected = [...new Set(unbeaten.map((pair) => pair.join()))].sort();
      const front = coverFront(
        programme,
        columns.map(() => 1),
        (one) => leastCover(one).least,
      );
      expect(front.map(({ cost, weight }) => [cost, weight].join()).sort()).toEqual(expected);
    });
  });

  it('dominated: a column is no better than one that serves more rows, whatever stands beside it', () => {
    const column = (rows: readonly number[], cost: number): CoverColumn => ({
      gives: rows.map((row) => [row, 1] as const),
      cost,
      limit: 1,
      unpriced: false,
      free: false,
    });
    const least = (...columns: readonly CoverColumn[]) => leastCover({ needs: [1, 1], columns, caps: [] }).least?.cost;
    // 3 + 3 apart, 4 together; in any order of the columns
    const [first, second, both] = [column([0], 3), column([1], 3), column([0, 1], 4)];
    expect([least(first, second, both), least(second, first, both), least(both, first, second)]).toEqual([4, 4, 4]);
    expect([least(first, both, second), least(second, both, first), least(both, second, first)]).toEqual([4, 4, 4]);
  });

  it('steps: a search that runs out of them claims nothing', () => {
    const columns = [0, 1, 2].map((at) => ({
      gives: [
        [at, 1],
        [(at + 1) % 3, 1],
      ] as const,
      cost: 1,
      limit: 1,
    }));
    const programme = { needs: [1, 1, 1], columns, caps: [] };
    expect(leastCover(programme, new StepBudget(0))).toEqual({ least: null, proved: false });
    // each column covers two of the three rows: two are needed
    expect(leastCover(programme).least?.cost).toBe(2);
  });
});
