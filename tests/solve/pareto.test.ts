import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Domains } from '../../src/solve/domains.ts';
import { beats } from '../../src/solve/front.ts';
import {
  type FrontResult,
  leastValue,
  leastVector,
  type Objectives,
  type Problem,
  paretoFront,
  Search,
  StepBudget,
  sameVector,
  type Vector,
} from '../../src/solve/index.ts';
import { runByPromise } from '../../src/solve/pareto.ts';
import { hold } from '../laws/hold.ts';
import { allSolutions, inOrder, randomProblem } from './random-problem.ts';

const UNKNOWN = Number.POSITIVE_INFINITY;

/** A problem with what each assignment costs (often in several ways), how loose floors are, by which variable they are split, and how equals are decided. */
interface Case {
  readonly problem: Problem;
  readonly cost: (values: readonly number[]) => readonly Vector[];
  readonly slack: number;
  readonly split: number | null;
  readonly order: readonly number[];
  readonly counted: readonly number[];
}

const cases: fc.Arbitrary<Case> = randomProblem({ variables: 5, values: 3, members: 0 }).chain((problem) => {
  const all = problem.sizes.map((_size, variable) => variable);
  const part = fc.oneof({ weight: 6, arbitrary: fc.integer({ min: 0, max: 4 }) }, fc.constant(UNKNOWN));
  return fc.record({
    problem: fc.constant(problem),
    cost: fc.func(fc.array(fc.array(part, { minLength: 3, maxLength: 3 }), { maxLength: 3 })),
    slack: fc.integer({ min: 0, max: 5 }),
    split: fc.option(fc.constantFrom(...all), { nil: null }),
    order: fc.shuffledSubarray(all),
    counted: fc.subarray(all),
  });
});

/**
 * The best floor there is, less some slack: the least of every part over the solutions below. Where a variable is named, also one such floor for each of its values: no
 * leaf is under that of its own value.
 */
function objectivesOf({ problem, cost, slack, split }: Case): Objectives {
  const solutions = allSolutions(problem);
  const below = (domains: Domains): (readonly number[])[] =>
    solutions.filter((values) => values.every((value, variable) => domains.has(variable, value)));
  const floor = (leaves: readonly (readonly number[])[]): Vector =>
    [0, 1, 2].map(
      (part) => Math.min(...leaves.flatMap((values) => cost(values)).map((vector) => vector[part] ?? 0)) - slack,
    );
  const bySplit = (domains: Domains, variable: number): Vector[] =>
    [...new Set(below(domains).map((values) => values[variable]))].map((value) =>
      floor(below(domains).filter((values) => values[variable] === value)),
    );
  return {
    floor: (domains) => floor(below(domains)),
    vectors: cost,
    ...(split === null ? {} : { floors: (domains: Domains) => bySplit(domains, split) }),
  };
}

function front(one: Case, limit = 1_000_000): FrontResult & { readonly used: number } {
  const budget = new StepBudget(limit);
  const result = paretoFront(one.problem, objectivesOf(one), { order: one.order, counted: one.counted }, budget);
  return { ...result, used: budget.used };
}

/** By brute force: every unbeaten vector, with the first assignment by (fewest changes, then in the given order). */
function byHand({ problem, cost, order, counted }: Case): readonly { vector: Vector; values: readonly number[] }[] {
  const paid = allSolutions(problem).flatMap((values) => cost(values).map((vector) => ({ vector, values })));
  const unbeaten = paid.filter(({ vector }) => !paid.some((other) => beats(other.vector, vector)));
  const decided = [...order, ...problem.sizes.map((_size, at) => at).filter((at) => !order.includes(at))];
  const rank = (values: readonly number[]): readonly number[] => [
    counted.filter((variable) => values[variable] !== 0).length,
    ...decided.map((variable) => values[variable] ?? 0),
  ];
  return unbeaten.filter(
    ({ vector, values }) =>
      !unbeaten.some((other) => sameVector(other.vector, vector) && inOrder(rank(other.values), rank(values)) < 0),
  );
}

const shown = (entries: readonly { readonly vector: Vector; readonly values: readonly number[] }[]): string[] => [
  ...new Set(entries.map(({ vector, values }) => `${vector.join(' ')}: ${values.join(' ')}`).sort()),
];

describe('pareto front', () => {
  it('law: every unbeaten vector once, each with its canonical assignment', () => {
    hold('front and canonical assignments equal brute force', 1200, cases, (one) => {
      const { entries, end } = front(one);
      expect(end).toBe('whole');
      expect(entries.length).toBe(new Set(entries.map(({ vector }) => vector.join(' '))).size);
      expect(shown(entries)).toEqual(shown(byHand(one)));
    });
  });

  it('law: the first vector in an order of its parts is the one of the front that comes first, with the same assignment', () => {
    const asked = fc.tuple(cases, fc.shuffledSubarray([0, 1, 2], { minLength: 3 }), fc.integer({ min: 0, max: 3 }));
    hold('first vector equals the first of brute force', 800, asked, ([one, priority, limit]) => {
      const objectives = objectivesOf(one);
      const canonical = { order: one.order, counted: one.counted };
      const found = (steps: number) => leastVector(one.problem, objectives, priority, canonical, new StepBudget(steps));
      const by = (vector: Vector): readonly number[] => priority.map((part) => vector[part] ?? 0);
      const [first] = [...byHand(one)].sort((a, b) => inOrder(by(a.vector), by(b.vector)));
      expect(found(1_000_000)).toEqual(first ?? 'none');
      // with few steps: the same, or that they ran out
      expect([first ?? 'none', 'stopped']).toContainEqual(found(limit));
    });
  });

  it('law: the first vector is the same from any known solution, and among settled variables the first of those that agree', () => {
    const three = fc.shuffledSubarray([0, 1, 2], { minLength: 3 });
    const asked = fc.tuple(cases, three, fc.nat(), fc.nat(), fc.integer({ min: 0, max: 3 }));
    hold('first vector from a known solution equals brute force', 800, asked, ([one, priority, pick, mask, limit]) => {
      const objectives = objectivesOf(one);
      const all = allSolutions(one.problem);
      const known = all.length === 0 ? null : (all[pick % all.length] ?? null);
      const settled = new Map([...(known ?? []).entries()].filter(([variable]) => (mask >> variable) % 2 === 1));
      const agreeing = all.filter((values) => [...settled].every(([variable, value]) => values[variable] === value));
      const by = (vector: Vector): readonly number[] => priority.map((part) => vector[part] ?? 0);
      const [first] = agreeing.flatMap((values) => one.cost(values)).sort((a, b) => inOrder(by(a), by(b)));
      const found = (steps: number) =>
        leastValue(one.problem, objectives, priority, one, { known, settled }, new StepBudget(steps));
      expect(found(1_000_000)).toEqual(first ?? 'none');
      expect([first ?? 'none', 'stopped']).toContainEqual(found(limit));
    });
  });

  it('law: how tight the floor is does not show in the answer', () => {
    hold('floors change no answer', 300, cases, (one) => {
      const tight = front({ ...one, slack: 0 });
      const loose = front({ ...one, slack: 100 });
      expect(shown(loose.entries)).toEqual(shown(tight.entries));
    });
  });

  it('law: with too few steps it says stopped, and what it shows is part of the true front', () => {
    hold('a stopped front is never called whole', 150, cases, (one) => {
      const whole = front(one);
      for (let limit = 0; limit < Math.min(whole.used, 30); limit++) {
        const short = front(one, limit);
        expect([short.end, short.used]).toEqual(['stopped', limit]);
        const true_ = shown(whole.entries);
        expect(shown(short.entries).filter((entry) => !true_.includes(entry))).toEqual([]);
        expect(short.entries.length).toBeLessThan(whole.entries.length + (whole.entries.length === 0 ? 1 : 0));
      }
    });
  });

  const two: Problem = { sizes: [2, 2], tables: [], sums: [], members: 0 };
  const flat = { floor: () => [0], vectors: () => [[1]] };

  it('equals: fewest counted changes go before the order of the variables', () => {
    const alike = { ...flat, vectors: ([a = 0, b = 0]: readonly number[]) => (a + b > 0 ? [[1]] : [[2]]) };
    const first = (order: readonly number[], counted: readonly number[]): readonly number[] | undefined =>
      paretoFront(two, alike, { order, counted }, new StepBudget(100)).entries[0]?.values;
    expect(first([0, 1], [])).toEqual([0, 1]);
    expect(first([1, 0], [])).toEqual([1, 0]);
    expect(first([0, 1], [1])).toEqual([1, 0]);
  });

  it('enough: a visitor that has enough early ends the search, without a second one', () => {
    const problem: Problem = { sizes: [9], tables: [], sums: [], members: 0 };
    let leaves = 0;
    const leaf = (): boolean => ++leaves < 3;
    const objectives = { floor: () => [0], vectors: () => [] };
    const end = runByPromise(new Search(problem, () => true), objectives, new StepBudget(100), { leaf });
    expect([end, leaves]).toEqual(['enough', 3]);
  });

  it('effort: where a search is short no floor but the plain one is asked for', () => {
    const sums = (values: readonly number[]): Vector[] => [[values.reduce((sum, value) => sum + value, 0), 1]];
    const asked: Domains[] = [];
    const floors = (domains: Domains): Vector[] => {
      asked.push(domains);
      return [[0, 0]];
    };
    const objectives = { floor: () => [0, 0], floors, vectors: sums };
    const canonical = { order: [], counted: [0, 1, 2] };
    // a search is long from its eighth leaf on
    const seven: Problem = { sizes: [7], tables: [], sums: [], members: 0 };
    expect(paretoFront(seven, objectives, canonical, new StepBudget(100)).entries.length).toBe(1);
    expect(leastVector(seven, objectives, [0, 1], canonical, new StepBudget(100))).toMatchObject({ vector: [0, 1] });
    expect(asked).toEqual([]);
    const eight: Problem = { ...seven, sizes: [8] };
    expect(paretoFront(eight, objectives, canonical, new StepBudget(100)).entries.length).toBe(1);
    expect(asked.length).toBeGreaterThan(0);
  });

  it('none: no solution, or none that can be paid for, is a whole search without entries', () => {
    const unpaid = paretoFront(two, { ...flat, vectors: () => [] }, { order: [], counted: [0] }, new StepBudget(100));
    expect(unpaid).toEqual({ entries: [], end: 'whole' });
  });
});
