import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { StepBudget } from '../../src/solve/index.ts';
import { countOrders, type Ordered, precedence } from '../../src/work/index.ts';
import { hold } from '../laws/hold.ts';

/** Operations by number; `after[at]` are those that come before `at`. */
const operations = (after: readonly (readonly number[])[]): Ordered[] =>
  after.map((first, at) => ({
    id: `o${at}`,
    order: 1,
    requires: [],
    after: first.map((one) => `o${one}`),
    closedBy: null,
  }));
const upTo = (most: number): number[] => Array.from({ length: most }, (_one, at) => at);
const chain = (length: number): (readonly number[])[] => upTo(length).map((at) => (at === 0 ? [] : [at - 1]));
/** Two sets of operations side by side. */
const beside = (one: readonly (readonly number[])[], other: readonly (readonly number[])[]): (readonly number[])[] => [
  ...one,
  ...other.map((first) => first.map((at) => at + one.length)),
];

/** The number of orders, and the steps that counting took. */
function counted(after: readonly (readonly number[])[]): { readonly orders: bigint | null; readonly steps: number } {
  const budget = new StepBudget(Number.POSITIVE_INFINITY);
  return { orders: countOrders(operations(after), budget), steps: budget.used };
}

/** The number of valid orders by trying each operation next that waits for none. */
function byTrying(all: readonly Ordered[]): number {
  const before = precedence(all);
  const from = (left: readonly string[]): number =>
    left.length === 0
      ? 1
      : left
          .filter((id) => !left.some((other) => before.get(id)?.has(other)))
          .reduce((sum, id) => sum + from(left.filter((other) => other !== id)), 0);
  return from(all.map(({ id }) => id));
}

describe('number of orders', () => {
  const factorial = (of: number): bigint => upTo(of).reduce((product, at) => product * BigInt(at + 1), 1n);

  it('nothing, one: there is one order', () => {
    expect([counted([]), counted([[]])]).toEqual([
      { orders: 1n, steps: 0 },
      { orders: 1n, steps: 0 },
    ]);
  });

  it('nothing tied: every order will do, and no set has to be gone through', () => {
    expect(counted(upTo(5).map(() => []))).toEqual({ orders: 120n, steps: 0 });
    // 40 are more than one word of bits holds
    expect(counted(upTo(40).map(() => []))).toEqual({ orders: factorial(40), steps: 0 });
  });

  it('chain: one order; each rest of two or more is one step', () => {
    expect(counted(chain(5))).toEqual({ orders: 1n, steps: 4 });
    expect(counted(chain(70))).toEqual({ orders: 1n, steps: 69 });
  });

  it('chains side by side: shuffled, each counted apart', () => {
    // 3 places of 5 for the longer one
    expect(counted(beside(chain(3), chain(2)))).toEqual({ orders: 10n, steps: 2 + 1 });
    // 20 of 40: 40! / (20! 20!)
    expect(counted(beside(chain(20), chain(20)))).toEqual({
      orders: factorial(40) / (factorial(20) * factorial(20)),
      steps: 19 + 19,
    });
  });

  it('alike: of those that stand alike one is tried, and each counts', () => {
    // ten before one: all ten first, in any order; one step for each rest of two or more
    const before = [...upTo(10).map(() => []), upTo(10)];
    expect(counted(before)).toEqual({ orders: factorial(10), steps: 10 });
    // 0 and 1 are alike, and 2 and 3 are, however they list what comes before them: 0 1 2 3 4, 1 2 3 4, 2 3 4, 3 4
    expect(counted([[], [], [0, 1], [1, 0], [2, 3]])).toEqual({ orders: 4n, steps: 4 });
    // one before ten: the ten are then tied by nothing
    const after = [[], ...upTo(10).map(() => [0])];
    expect(counted(after)).toEqual({ orders: factorial(10), steps: 1 });
    // the same before them, but another after: not alike. 0, 1 and 2 before 3, 2 also before 4
    expect(counted([[], [], [], [0, 1, 2], [2]]).orders).toBe(
      BigInt(byTrying(operations([[], [], [], [0, 1, 2], [2]]))),
    );
  });

  // a: 0 1 2, b: 3 4 5, each of a before its like of b. What is left by (done of a, done of b), of two and more that hang together:
  // (0,0) (1,0) (1,1) (2,0) (2,1) (2,2) (3,0) (3,1). Of (3,2) one is left.
  it('memory: a rest that is reached in two ways is one step', () => {
    expect(counted([[], [0], [1], [0], [1, 3], [2, 4]])).toEqual({ orders: 5n, steps: 8 });
  });

  it('cycle: no order', () => {
    expect(counted([[1], [0]]).orders).toBe(0n);
    expect(counted([[1], [0], [], [2]]).orders).toBe(0n);
  });

  it('steps: where they run out nothing is claimed', () => {
    const tried = (steps: number): bigint | null => countOrders(operations(chain(5)), new StepBudget(steps));
    expect([tried(0), tried(3), tried(4)]).toEqual([null, null, 1n]);
    // the second part of two
    expect(countOrders(operations(beside(chain(2), chain(3))), new StepBudget(1))).toBeNull();
  });

  it('law: as many as trying finds', () => {
    const some = fc
      .array(fc.array(fc.nat(5), { maxLength: 2 }), { minLength: 1, maxLength: 6 })
      .map((after) => after.map((first, at) => [...new Set(first)].filter((one) => one < after.length && one !== at)));
    hold('numbers of orders equal trying', 500, some, (after) => {
      expect(counted(after).orders).toBe(BigInt(byTrying(operations(after))));
    });
  });

  it('law: the same wherever the operations stand in the words of bits', () => {
    const some = fc
      .array(fc.array(fc.nat(4), { maxLength: 2 }), { minLength: 5, maxLength: 5 })
      .map((after) => after.map((first, at) => [...new Set(first)].filter((one) => one < at)));
    hold(
      'numbers of orders do not hang on places',
      60,
      fc.tuple(some, fc.integer({ min: 27, max: 33 })),
      ([after, before]) => {
        // a chain before all of them adds no order
        const late = [...chain(before), ...after.map((first) => [before - 1, ...first.map((at) => at + before)])];
        expect(counted(late).orders).toBe(counted(after).orders);
      },
    );
  });
});
