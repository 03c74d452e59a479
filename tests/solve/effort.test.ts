import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { ask, type QuestionInput } from '../../src/plan/index.ts';
import {
  corrections,
  type Oracle,
  type Problem,
  paretoFront,
  Search,
  StepBudget,
  smallestConflict,
  tableOf,
} from '../../src/solve/index.ts';
import { loadCatalogFolder } from '../support/demo.ts';

// Steps and questions asked are counted, never time: a slower search fails here, on any machine. A quicker one too: then lower the number.

const queens = (size: number): Problem => {
  const sizes = Array.from({ length: size }, () => size);
  const pairs = sizes.flatMap((_size, row) => sizes.slice(0, row).map((_other, above) => [above, row] as const));
  const tables = pairs.map(([above, row]) =>
    tableOf(sizes, [above, row], null, ([a = 0, b = 0]) => a !== b && Math.abs(a - b) !== row - above),
  );
  return { sizes, tables, sums: [], members: 0 };
};

/** All ways to give 12 things of weight 1 to 12 to three places so that each holds the same. */
const places: Problem = {
  sizes: Array.from({ length: 12 }, () => 3),
  tables: [],
  sums: [0, 1, 2].map((place) => ({
    scope: Array.from({ length: 12 }, (_one, at) => at),
    weights: Array.from({ length: 12 }, (_one, at) => [0, 1, 2].map((value) => (value === place ? at + 1 : 0))),
    least: 26,
    greatest: 26,
    member: null,
  })),
  members: 0,
};

function solutionsAndSteps(problem: Problem): readonly [number, number] {
  let found = 0;
  const budget = new StepBudget(1_000_000);
  new Search(problem, () => true).run(budget, {
    leaf: () => {
      found++;
      return true;
    },
  });
  return [found, budget.used];
}

/** How often an oracle is asked. */
function counted(oracle: Oracle): { readonly oracle: Oracle; readonly asked: () => number } {
  let calls = 0;
  return {
    oracle: (held) => {
      calls++;
      return oracle(held);
    },
    asked: () => calls,
  };
}

describe('effort', () => {
  it('search: six, seven and eight queens', () => {
    expect([6, 7, 8].map((size) => solutionsAndSteps(queens(size)))).toEqual([
      [4, 30],
      [40, 115],
      [92, 426],
    ]);
  });

  it('search: sums alone', () => {
    expect(solutionsAndSteps(places)).toEqual([612, 14_070]);
  });

  it('front: ten choices of two, dear and quick or cheap and slow, both passes', () => {
    const money = [3, 5, 8, 13, 2, 7, 11, 4, 6, 9];
    const minutes = [5, 4, 9, 6, 8, 3, 10, 7, 2, 12];
    const problem: Problem = { sizes: money.map(() => 2), tables: [], sums: [], members: 0 };
    const sum = (weights: readonly number[], taken: (at: number) => boolean): number =>
      weights.reduce((total, weight, at) => total + (taken(at) ? weight : 0), 0);
    const budget = new StepBudget(1_000_000);
    const { entries, end } = paretoFront(
      problem,
      {
        floor: (domains) => [sum(money, (at) => !domains.has(at, 0)), sum(minutes, (at) => !domains.has(at, 1))],
        vectors: (values) => [[sum(money, (at) => values[at] === 1), sum(minutes, (at) => values[at] === 0)]],
      },
      { order: [], counted: money.map((_one, at) => at) },
      budget,
    );
    expect([entries.length, end, budget.used]).toEqual([24, 'whole', 4920]);
  });

  it('conflicts: three pairs among twenty members', () => {
    const members = Array.from({ length: 20 }, (_one, at) => at);
    const pairs = [
      [3, 17],
      [5, 11],
      [8, 19],
    ];
    const { oracle, asked } = counted((held) => !pairs.some((pair) => pair.every((member) => held.has(member))));
    expect(smallestConflict(members, oracle)).toEqual({ members: [3, 17], smallest: true });
    expect(asked()).toBe(121);
  });

  it('corrections: of six wishes', () => {
    const { oracle, asked } = counted((held) => !(held.has(1) && held.has(2)) && !(held.has(2) && held.has(3)));
    expect(corrections([0], [1, 2, 3, 4, 5, 6], oracle, new StepBudget(99)).found).toEqual([[2], [1, 3]]);
    expect(asked()).toBe(15);
  });
});

describe('effort: questions to the paper catalogue', async () => {
  const { world } = await loadCatalogFolder(fileURLToPath(new URL('../worked/paper', import.meta.url)));

  /** The least step limit under which the question is decided. */
  function stepsFor(question: QuestionInput): number {
    let [low, high] = [1, 4096];
    while (low < high) {
      const middle = (low + high) >> 1;
      const reply = ask(world, { ...question, stepLimit: middle });
      if (reply.kind === 'answer' && reply.answer.complete && (reply.answer.refusal?.complete ?? true)) high = middle;
      else low = middle + 1;
    }
    return low;
  }

  it.each<[string, number, QuestionInput['wants']]>([
    ['a shorter fork', 6, { travel: 100 }],
    ['a longer one that there is not, with conflict and ways out', 22, { travel: 150 }],
    ['another wheel', 1, { wheel: 584, travel: 150 }],
    ['a service', 3, { spacers: 2, service: ['ombry-lower-leg'] }],
  ])('%s: %i steps are needed and enough', (_name, steps, wants) => {
    expect(stepsFor({ chassis: 'ombry-622', travelNow: 120, wants })).toBe(steps);
  });
});
