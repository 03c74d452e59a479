import { createRequire } from 'node:module';
import fc from 'fast-check';
import type { Highs } from 'highs';
import { describe, expect, it, vi } from 'vitest';
import { beats } from '../../src/solve/front.ts';
import { StepBudget } from '../../src/solve/index.ts';
import { type Cover, type CoverColumn, cheapestCovers } from '../../src/supply/index.ts';
import { hold } from '../laws/hold.ts';
import { outsideFile } from '../solve/outside.ts';

const column = (gives: CoverColumn['gives'], cost: number, more: Partial<CoverColumn> = {}): CoverColumn => ({
  gives,
  cost,
  limit: 9,
  unpriced: false,
  free: false,
  ...more,
});

interface Case {
  readonly needs: readonly number[];
  readonly columns: readonly CoverColumn[];
}

/** Up to three rows and five columns, as the market makes them: a limit of packs, some without a price, some at hand. */
function cases(free: boolean): fc.Arbitrary<Case> {
  return fc.array(fc.integer({ min: 1, max: 5 }), { minLength: 1, maxLength: 3 }).chain((needs) => {
    const gives = fc
      .subarray(
        needs.map((_need, row) => row),
        { minLength: 1 },
      )
      .chain((rows) =>
        fc.tuple(...rows.map((row) => fc.integer({ min: 1, max: 4 }).map((amount) => [row, amount] as const))),
      );
    const one = fc
      .tuple(gives, fc.integer({ min: 0, max: 9 }), fc.integer({ min: 0, max: 3 }), fc.integer({ min: 0, max: 9 }))
      .map(([given, cost, limit, kind]): CoverColumn => {
        const [atHand, unpriced] = [free && kind >= 8, kind < 3];
        return column(given, atHand || unpriced ? 0 : cost, { limit, unpriced: unpriced && !atHand, free: atHand });
      });
    return fc.record({ needs: fc.constant(needs), columns: fc.array(one, { minLength: 1, maxLength: 5 }) });
  });
}

/** Every choice of packs within the limits that covers the needs. */
function allCovers({ needs, columns }: Case): Cover[] {
  let choices: (readonly number[])[] = [[]];
  for (const { limit } of columns)
    choices = choices.flatMap((packs) => Array.from({ length: limit + 1 }, (_one, count) => [...packs, count]));
  const covers = choices.filter((packs) =>
    needs.every((need, row) => {
      const given = columns.map(({ gives }, at) => (packs[at] ?? 0) * (gives.find(([to]) => to === row)?.[1] ?? 0));
      return given.reduce((sum, amount) => sum + amount, 0) >= need;
    }),
  );
  return covers.map((packs) => ({
    packs,
    cost: packs.reduce((sum, count, at) => sum + count * (columns[at]?.cost ?? 0), 0),
    unpriced: packs.filter((count, at) => count > 0 && columns[at]?.unpriced).length,
  }));
}

const bought = ({ columns }: Case, { packs }: Cover): number =>
  packs.reduce((sum, count, at) => sum + (columns[at]?.free ? 0 : count), 0);
const list = ({ packs }: Cover): number[] => packs.flatMap((count, at) => (count > 0 ? [at, count] : []));

/** Fewest packs, then the list of (column, packs) element by element. */
function before(one: Case, a: Cover, b: Cover): number {
  if (bought(one, a) !== bought(one, b)) return bought(one, a) - bought(one, b);
  const [mine, theirs] = [list(a), list(b)];
  const at = mine.findIndex((value, place) => value !== theirs[place]);
  return at < 0 ? mine.length - theirs.length : (mine[at] ?? 0) - (theirs[at] ?? -1);
}

/** By brute force: the unbeaten covers, each the first of its vector. */
function byHand(one: Case): Cover[] {
  const all = allCovers(one);
  const vector = ({ cost, unpriced }: Cover): readonly number[] => [cost, unpriced];
  const unbeaten = all.filter((cover) => !all.some((other) => beats(vector(other), vector(cover))));
  return unbeaten
    .filter((cover) => !unbeaten.some((other) => other.cost === cover.cost && before(one, other, cover) < 0))
    .sort((a, b) => a.cost - b.cost);
}

describe('cover', () => {
  it('law: every unbeaten cover in (cost, columns without a price), each the canonical one', () => {
    hold('covers equal brute force', 1500, cases(false), (one) => {
      expect(cheapestCovers(one.needs, one.columns)).toEqual(byHand(one));
    });
  });

  it('law: what is at hand and free is no pack bought; cost, unpriced columns and packs bought are still the least', () => {
    hold('covers with free columns equal brute force', 1000, cases(true), (one) => {
      const shown = (covers: readonly Cover[]): number[][] =>
        covers.map((cover) => [cover.cost, cover.unpriced, bought(one, cover)]);
      expect(shown(cheapestCovers(one.needs, one.columns))).toEqual(shown(byHand(one)));
    });
  });

  it('law: adding a column, or one more pack of one, never makes the cheapest cover dearer', () => {
    hold('more to choose from is never dearer', 300, cases(true), ({ needs, columns }) => {
      const least = (of: readonly CoverColumn[]): number =>
        cheapestCovers(needs, of)[0]?.cost ?? Number.POSITIVE_INFINITY;
      const whole = least(columns);
      expect(least(columns.slice(1))).toBeGreaterThanOrEqual(whole);
      expect(least(columns.map((one) => ({ ...one, limit: one.limit + 1 })))).toBeLessThanOrEqual(whole);
    });
  });

  it('law: what is left of a row may be measured out, half up; without a price it is a line without one', () => {
    const dosing = fc.option(
      fc.record({
        price: fc.option(fc.integer({ min: 0, max: 20 }), { freq: 3 }),
        per: fc.integer({ min: 1, max: 6 }),
      }),
      { freq: 2 },
    );
    const dosed = cases(false).chain((one) =>
      fc.tuple(fc.constant(one), fc.array(dosing, { minLength: one.needs.length, maxLength: one.needs.length })),
    );
    hold('covers with doses equal brute force', 600, dosed, ([one, doses]) => {
      // a row that may be measured out is no need; what the packs leave of it is added
      const { needs, columns } = one;
      const all = allCovers({ needs: needs.map((need, row) => (doses[row] ? 0 : need)), columns }).map((cover) => {
        let { cost, unpriced } = cover;
        for (const [row, need] of needs.entries()) {
          const dose = doses[row];
          const given = columns.map(
            ({ gives }, at) => (cover.packs[at] ?? 0) * (gives.find(([to]) => to === row)?.[1] ?? 0),
          );
          const left = need - given.reduce((sum, amount) => sum + amount, 0);
          if (!dose || left <= 0) continue;
          if (dose.price === null) unpriced++;
          else cost += Math.floor((2 * left * dose.price + dose.per) / (2 * dose.per));
        }
        return { ...cover, cost, unpriced };
      });
      const vector = ({ cost, unpriced }: Cover): readonly number[] => [cost, unpriced];
      const unbeaten = all.filter((cover) => !all.some((other) => beats(vector(other), vector(cover))));
      const first = unbeaten.filter(
        (cover) => !unbeaten.some((other) => other.cost === cover.cost && before(one, other, cover) < 0),
      );
      expect(cheapestCovers(needs, columns, doses)).toEqual(first.sort((a, b) => a.cost - b.cost));
    });
  });

  it('packs: the cheapest mix of sizes is found, not the cheapest size', () => {
    const sizes = [column([[0, 120]], 980), column([[0, 250]], 1550), column([[0, 1000]], 3900)];
    const packs = (need: number): readonly number[] | undefined => cheapestCovers([need], sizes)[0]?.packs;
    expect([packs(28), packs(300), packs(360), packs(620), packs(1100)]).toEqual([
      [1, 0, 0],
      [1, 1, 0],
      [1, 1, 0],
      [0, 0, 1],
      [1, 0, 1],
    ]);
  });

  it('equals: of as many packs the columns that come first, and of these the fewest', () => {
    const packs = (need: number, columns: readonly CoverColumn[]) =>
      cheapestCovers([need], columns).map((cover) => cover.packs);
    const one = column([[0, 1]], 4);
    const free = column([[0, 1]], 0, { limit: 2, free: true });
    expect([packs(1, [one, one, one]), packs(2, [one, one, one]), packs(3, [one, one])]).toEqual([
      [[1, 0, 0]],
      [[1, 1, 0]],
      [[1, 2]],
    ]);
    // three packs for 3 in several ways, whichever is come upon first: one of the first, one of the second, one of the third goes before two of the first and the third
    const rows = (...given: readonly number[]): CoverColumn =>
      column(
        given.map((row) => [row, 1] as const),
        1,
      );
    expect(cheapestCovers([1, 2, 1], [rows(1), rows(0, 1), rows(0, 2), rows(2)]).map((cover) => cover.packs)).toEqual([
      [1, 1, 1, 0],
    ]);
    // what is at hand comes last: bought packs decide first, then what is taken
    expect([packs(1, [free, free]), packs(3, [free, one, free])]).toEqual([[[1, 0]], [[1, 0, 2]]]);
  });

  it('kits: a kit against singles goes both ways', () => {
    const singles = [column([[0, 1]], 40), column([[1, 1]], 3)];
    const kit = (cost: number): CoverColumn =>
      column(
        [
          [0, 1],
          [1, 2],
        ],
        cost,
      );
    const packs = (cost: number): readonly number[] | undefined =>
      cheapestCovers([1, 2], [...singles, kit(cost)])[0]?.packs;
    expect([packs(45), packs(46), packs(47)]).toEqual([
      [0, 0, 1],
      [0, 0, 1],
      [1, 2, 0],
    ]);
  });

  it('limits: what may not be taken often enough is made up by the next; too little of all is no cover', () => {
    const two = [column([[0, 1]], 1, { limit: 2 }), column([[0, 1]], 5, { limit: 1 })];
    expect([2, 3, 4].map((need) => cheapestCovers([need], two).map(({ packs, cost }) => [packs, cost]))).toEqual([
      [[[2, 0], 2]],
      [[[2, 1], 7]],
      [],
    ]);
  });

  it('prices: a cover that is wholly priced is never hidden by one that looks cheaper', () => {
    const both = [column([[0, 1]], 0, { unpriced: true }), column([[0, 1]], 12)];
    expect(cheapestCovers([1], both)).toEqual([
      { packs: [1, 0], cost: 0, unpriced: 1 },
      { packs: [0, 1], cost: 12, unpriced: 0 },
    ]);
  });

  it('nothing: no needs are covered by nothing', () => {
    expect(cheapestCovers([], [column([], 3)])).toEqual([{ packs: [0], cost: 0, unpriced: 0 }]);
    expect(cheapestCovers([0], [column([[0, 1]], 3)])).toEqual([{ packs: [0], cost: 0, unpriced: 0 }]);
    expect(cheapestCovers([0], [column([], 3)])).toEqual([{ packs: [0], cost: 0, unpriced: 0 }]);
    expect(cheapestCovers([1], [column([], 3)])).toEqual([]);
  });
});

// its types speak of the default export of the CommonJS build
const loadHighs = createRequire(import.meta.url)('highs') as () => Promise<Highs>;

/** The least cost by a mixed-integer solver; null where it says that there is no cover. */
function byHighs(highs: Highs, { needs, columns }: Case): number | null {
  const row = (need: number, at: number): string => {
    const terms = columns.flatMap(({ gives }, name) =>
      gives.filter(([to]) => to === at).map(([, amount]) => `${amount} x${name}`),
    );
    return ` r${at}: ${terms.length > 0 ? terms.join(' + ') : '0 x0'} >= ${need}`;
  };
  const model = [
    'Minimize',
    ` cost: ${columns.map(({ cost }, at) => `${cost} x${at}`).join(' + ')}`,
    'Subject To',
    ...needs.map(row),
    'Bounds',
    ...columns.map(({ limit }, at) => ` 0 <= x${at} <= ${limit}`),
    'Generals',
    ` ${columns.map((_one, at) => `x${at}`).join(' ')}`,
    'End',
  ].join('\n');
  const { Status, ObjectiveValue } = highs.solve(model, {
    output_flag: false,
    random_seed: 0,
    mip_rel_gap: 0,
    mip_abs_gap: 0.999,
  });
  return Status === 'Optimal' ? Math.round(ObjectiveValue) : null;
}

describe('cover against a mixed-integer solver', async () => {
  const highs = await loadHighs();

  const rows = [0, 1, 2, 3, 4, 5, 6, 7];
  const one = fc
    .tuple(
      fc.subarray(rows, { minLength: 1, maxLength: 4 }),
      fc.array(fc.integer({ min: 1, max: 6 }), { minLength: 8, maxLength: 8 }),
      fc.integer({ min: 1, max: 60 }),
      fc.integer({ min: 1, max: 6 }),
    )
    .map(([given, amounts, cost, limit]) =>
      column(
        given.map((row) => [row, amounts[row] ?? 1]),
        cost,
        { limit },
      ),
    );
  const big = fc.record({
    needs: fc.array(fc.integer({ min: 1, max: 12 }), { minLength: 8, maxLength: 8 }),
    columns: fc.array(one, { minLength: 10, maxLength: 16 }),
  });

  it('law: the least cost is the same on covers too big for brute force', () => {
    hold('covers equal a mixed-integer solver', 60, big, (each) => {
      expect(cheapestCovers(each.needs, each.columns)[0]?.cost ?? null).toBe(byHighs(highs, each));
    });
  });

  it('law: to measure out at a whole price is to buy packs of 1', () => {
    const prices = fc.array(fc.option(fc.integer({ min: 3, max: 30 }), { freq: 1 }), { minLength: 8, maxLength: 8 });
    hold('doses equal packs of 1', 20, fc.tuple(big, prices), ([{ needs, columns }, each]) => {
      const ones = each.flatMap((price, row) => (price === null ? [] : [column([[row, 1]], price, { limit: 12 })]));
      const doses = each.map((price) => (price === null ? null : { price, per: 1 }));
      const expected = byHighs(highs, { needs, columns: [...columns, ...ones] });
      expect(cheapestCovers(needs, columns, doses)[0]?.cost ?? null).toBe(expected);
    });
  });

  it('law: of what has no price several packs may be taken', () => {
    hold('unpriced packs equal packs for nothing', 20, big, ({ needs, columns }) => {
      const unpriced = columns.map((one, at) => (at < 3 ? { ...one, cost: 0, unpriced: true } : one));
      expect(cheapestCovers(needs, unpriced)[0]?.cost ?? null).toBe(byHighs(highs, { needs, columns: unpriced }));
    });
  });
});

/** A set cover as the OR-Library and the Steiner triples are written: rows, columns, costs (1 where left out), then each row's columns. */
function setCover(text: string, withCosts: boolean): Case {
  const numbers = text.trim().split(/\s+/).map(Number);
  const [rows = 0, columns = 0] = withCosts ? numbers : [numbers[1], numbers[0]];
  let at = 2;
  const costs = Array.from({ length: columns }, () => (withCosts ? (numbers[at++] ?? 0) : 1));
  const gives: [number, number][][] = costs.map(() => []);
  for (let row = 0; row < rows; row++) {
    const count = withCosts ? (numbers[at++] ?? 0) : 3;
    for (let place = 0; place < count; place++) gives[(numbers[at++] ?? 1) - 1]?.push([row, 1]);
  }
  return {
    needs: Array.from({ length: rows }, () => 1),
    columns: costs.map((cost, each) => column(gives[each] ?? [], cost, { limit: 1 })),
  };
}

/** Sixteen things of several sizes for eight needs: a search that takes thousands of nodes. */
const large: Case = {
  needs: [0, 1, 2, 3, 4, 5, 6, 7].map((row) => 3 + ((row * 5) % 7)),
  columns: Array.from({ length: 16 }, (_one, at) =>
    column(
      [0, 1, 2].flatMap((more) =>
        more <= at % 3 ? [[(at * 3 + more * (1 + (at % 3))) % 8, 1 + ((at + more) % 4)] as const] : [],
      ),
      4 + ((at * 11) % 13) + 3 * (at % 3),
      { limit: 4 },
    ),
  ),
};

describe('covers that take more nodes than the plain search is given', async () => {
  const highs = await loadHighs();

  /** Nodes of all searches for a cover. */
  function nodesOf(work: () => readonly Cover[]): readonly [covers: readonly Cover[], nodes: number] {
    const take = vi.spyOn(StepBudget.prototype, 'take');
    const covers = work();
    const { length } = take.mock.calls;
    take.mockRestore();
    return [covers, length];
  }

  it('whole packs with prices: what the plain search had found when it ended is no answer', () => {
    const [covers, nodes] = nodesOf(() => cheapestCovers(large.needs, large.columns));
    expect(nodes).toBeGreaterThan(5000);
    expect(covers.map(({ cost }) => cost)).toEqual([byHighs(highs, large)]);
  });

  it('doses: the plain search goes on, for no other knows them', () => {
    const { needs, columns } = large;
    // of every fourth need what is left may be measured out, or of all
    for (const [price, every] of [
      [6, 4],
      [9, 4],
      [10, 1],
    ] as const) {
      const doses = needs.map((_need, row) => (row % every === 0 ? { price, per: 1 } : null));
      const ones = doses.flatMap((dose, row) => (dose ? [column([[row, 1]], price, { limit: 12 })] : []));
      const [covers, nodes] = nodesOf(() => cheapestCovers(needs, columns, doses));
      expect(nodes).toBeGreaterThan(5000);
      expect(covers.map(({ cost }) => cost)).toEqual([byHighs(highs, { needs, columns: [...columns, ...ones] })]);
    }
  });

  it('no price: a thing of which several are taken is one line', () => {
    const isUnpriced = (at: number): boolean => at < 3;
    const columns = large.columns.map((one, at) => (isUnpriced(at) ? { ...one, cost: 0, unpriced: true } : one));
    // the least cost with each choice of the three, by number of lines
    const least = [Infinity, Infinity, Infinity, Infinity];
    for (let mask = 0; mask < 8; mask++) {
      const lines = [0, 1, 2].filter((at) => (mask >> at) % 2 === 1).length;
      const allowed = columns.map((one, at) => (isUnpriced(at) && (mask >> at) % 2 === 0 ? { ...one, limit: 0 } : one));
      least[lines] = Math.min(
        least[lines] ?? Infinity,
        byHighs(highs, { needs: large.needs, columns: allowed }) ?? Infinity,
      );
    }
    const unbeaten = least
      .map((cost, lines) => [cost, lines])
      .filter(([cost = 0], lines) => least.slice(0, lines).every((other) => other > cost));
    const [covers, nodes] = nodesOf(() => cheapestCovers(large.needs, columns));
    expect(nodes).toBeGreaterThan(5000);
    expect(covers.map(({ cost, unpriced }) => [cost, unpriced])).toEqual(unbeaten.reverse());
  });
});

describe('outside data: set covers', () => {
  it('optimum: Steiner triples come to the published number of columns', () => {
    const expected = outsideFile('cover/expected.tsv', 'published optima of set covers');
    for (const name of expected === null ? [] : ['stn9', 'stn15']) {
      const text = outsideFile(`cover/${name}.txt`, name);
      const [, , , published] = (expected?.split('\n').find((line) => line.startsWith(`${name}\t`)) ?? '').split('\t');
      if (text === null) continue;
      const { needs, columns } = setCover(text, false);
      expect([name, cheapestCovers(needs, columns)[0]?.cost]).toEqual([name, Number(published)]);
      console.log(`${name}: ${published} columns, as published`);
    }
  });
});
