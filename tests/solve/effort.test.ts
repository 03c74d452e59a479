import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { ask, type QuestionInput } from '../../src/plan/index.ts';
import {
  corrections,
  type Domains,
  disputeOf,
  type FrontResult,
  leastValue,
  leastVector,
  type Objectives,
  type Oracle,
  type Problem,
  paretoFront,
  Search,
  StepBudget,
  smallestConflict,
  tableOf,
  type Vector,
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

/** Ten choices, each the dear and quick one or the cheap and slow one: nothing ties them, only the sums do. */
const choices: Problem = { sizes: Array.from({ length: 10 }, () => 2), tables: [], sums: [], members: 0 };
const MONEY = [3, 5, 8, 13, 2, 7, 11, 4, 6, 9];
const MINUTES = [5, 4, 9, 6, 8, 3, 10, 7, 2, 12];
const sumOf = (weights: readonly number[], taken: (at: number) => boolean): number =>
  weights.reduce((total, weight, at) => total + (taken(at) ? weight : 0), 0);
const vectors = (values: readonly number[]): readonly Vector[] => [
  [sumOf(MONEY, (at) => values[at] === 1), sumOf(MINUTES, (at) => values[at] === 0)],
];
const coarse = (domains: Domains): Vector => [
  sumOf(MONEY, (at) => !domains.has(at, 0)),
  sumOf(MINUTES, (at) => !domains.has(at, 1)),
];
/** One that leaves out the last three choices. */
const loose = (domains: Domains): Vector => [
  sumOf(MONEY, (at) => at < 7 && !domains.has(at, 0)),
  sumOf(MINUTES, (at) => at < 7 && !domains.has(at, 1)),
];
/** A floor for each way to decide the last three choices; how often they were asked for is counted. */
const finer =
  (asked: { floors: number }) =>
  (domains: Domains): readonly Vector[] => {
    asked.floors++;
    return Array.from({ length: 8 }, (_one, bits) => (at: number) => (at < 7 ? null : (bits >> (at - 7)) & 1))
      .filter((decided) => [7, 8, 9].every((at) => domains.has(at, decided(at) ?? 0)))
      .map((decided) => [
        sumOf(MONEY, (at) => (decided(at) ?? (domains.has(at, 0) ? 0 : 1)) === 1),
        sumOf(MINUTES, (at) => (decided(at) ?? (domains.has(at, 1) ? 1 : 0)) === 0),
      ]);
  };
function frontOf(objectives: Objectives): FrontResult & { readonly steps: number } {
  const budget = new StepBudget(1_000_000);
  const canonical = { order: [], counted: choices.sizes.map((_size, at) => at) };
  return { ...paretoFront(choices, objectives, canonical, budget), steps: budget.used };
}

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
    const { entries, end, steps } = frontOf({ floor: coarse, vectors });
    expect([entries.length, end, steps]).toEqual([24, 'whole', 4920]);
  });

  it('front: the same with a floor for each value of a variable, asked for only where the search is long', () => {
    const asked = { floors: 0 };
    const { entries, end, steps } = frontOf({ floor: coarse, floors: finer(asked), vectors });
    expect([entries.length, end, steps, asked.floors]).toEqual([24, 'whole', 2702, 2032]);
    expect(frontOf({ floor: loose, vectors }).steps).toBe(7989);
    expect(frontOf({ floor: loose, floors: finer({ floors: 0 }), vectors }).steps).toBe(2495);
  });

  it('first vector: the quickest of the cheapest, the cheapest of the quickest, with and without finer floors', () => {
    const steps = (priority: readonly number[], objectives: Objectives): readonly number[] => {
      const budget = new StepBudget(1_000_000);
      const canonical = { order: [], counted: choices.sizes.map((_size, at) => at) };
      const first = leastVector(choices, objectives, priority, canonical, budget);
      const shown = typeof first === 'string' ? [] : first.vector;
      const again = new StepBudget(1_000_000);
      const known = choices.sizes.map((_size, at) => at % 2);
      leastValue(choices, objectives, priority, canonical, { known }, again);
      return [...shown, budget.used, again.used];
    };
    const asked = { floors: 0 };
    const fine = { floor: loose, floors: finer(asked), vectors };
    expect(
      [
        [0, 1],
        [1, 0],
      ].map((priority) => [steps(priority, { floor: loose, vectors }), steps(priority, fine)]),
    ).toEqual([
      [
        [0, 66, 59, 49],
        [0, 66, 45, 35],
      ],
      [
        [68, 0, 581, 443],
        [68, 0, 355, 273],
      ],
    ]);
    expect(asked.floors).toBe(538);
  });

  it('disputes: a ring of wishes that differ, going through assignments and asking about sets', () => {
    const ring = (points: number, colours: number, more: number): readonly number[] => {
      const sizes = [...Array.from({ length: points }, () => colours), ...Array.from({ length: more }, () => 2)];
      const differ = Array.from({ length: points }, (_one, at) =>
        tableOf(sizes, [at, (at + 1) % points], at, ([a, b]) => a !== b),
      );
      const ties = Array.from({ length: more }, (_one, at) =>
        tableOf(sizes, [at === 0 ? 0 : points + at - 1, points + at], null, () => true),
      );
      const budget = new StepBudget(1_000_000);
      const { conflicts, corrections: given } = disputeOf(
        { sizes, tables: [...differ, ...ties], sums: [], members: points },
        budget,
      );
      return [conflicts.length, given.length, budget.used];
    };
    // an odd ring cannot have two colours, and gives up any one difference
    expect([ring(7, 2, 0), ring(7, 2, 22), ring(9, 2, 0)]).toEqual([
      [1, 7, 138],
      [1, 7, 349],
      [1, 9, 247],
    ]);
  });

  it('disputes: things in order round a table, a sum that is too small, and what always holds', () => {
    const less = (values: number, points: number): Problem => {
      const sizes = Array.from({ length: points }, () => values);
      const all = sizes.map((_size, at) => at);
      const around = all.map((at) => tableOf(sizes, [at, (at + 1) % points], at, ([a = 0, b = 0]) => a < b));
      const three = tableOf(sizes, [0, 1, 2], points, ([a = 0, b = 0, c = 0]) => a + b === c);
      const always = tableOf(sizes, [points - 1], null, ([value]) => value !== 1);
      const weights = all.map((at) => Array.from({ length: values }, (_one, value) => value * (at + 1)));
      const sum = (least: number, greatest: number, member: number) => ({
        scope: all,
        weights,
        least,
        greatest,
        member,
      });
      const sums = [
        sum(points * 4, Number.POSITIVE_INFINITY, points + 1),
        sum(Number.NEGATIVE_INFINITY, points, points + 2),
      ];
      return { sizes, tables: [...around, three, always], sums, members: points + 3 };
    };
    const stepsOf = (problem: Problem): readonly number[] => {
      const budget = new StepBudget(1_000_000);
      const { conflicts, corrections: given } = disputeOf(problem, budget);
      return [conflicts.length, given.length, budget.used];
    };
    const both = (one: Problem, other: Problem): Problem => {
      const moved = <T extends { readonly scope: readonly number[]; readonly member: number | null }>(
        constraint: T,
      ): T => ({
        ...constraint,
        scope: constraint.scope.map((variable) => variable + one.sizes.length),
        member: constraint.member === null ? null : constraint.member + one.members,
      });
      return {
        sizes: [...one.sizes, ...other.sizes],
        tables: [...one.tables, ...other.tables.map(moved)],
        sums: [...one.sums, ...other.sums.map(moved)],
        members: one.members + other.members,
      };
    };
    // apart: as many steps as both by themselves, one for each pair of corrections, and some to begin with
    expect(stepsOf(both(less(3, 4), less(4, 4)))).toEqual([24, 99, 429]);
    expect([less(3, 4), less(4, 4), less(3, 6)].map(stepsOf)).toEqual([
      [13, 9, 109],
      [11, 11, 233],
      [24, 22, 373],
    ]);
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
