import fc from 'fast-check';
import { type Problem, StepBudget, type Sum, type Table, tableOf } from '../../src/solve/index.ts';
import { enumerate } from '../support/enumerate.ts';

/** How big the problems are. */
export interface Bigness {
  readonly variables: number;
  readonly values: number;
  readonly members: number;
}

/** Small random problems: domains of 0 to `values` values, tables of up to three variables, sums with open and closed bounds. */
export function randomProblem({ variables, values, members }: Bigness): fc.Arbitrary<Problem> {
  const size = fc.oneof({ weight: 20, arbitrary: fc.integer({ min: 1, max: values }) }, fc.constant(0));
  return fc.array(size, { minLength: 1, maxLength: variables }).chain((sizes) => {
    const scope = fc.shuffledSubarray(
      sizes.map((_size, variable) => variable),
      { minLength: 1, maxLength: Math.min(3, sizes.length) },
    );
    const member = fc.option(fc.integer({ min: 0, max: Math.max(0, members - 1) }), { nil: null });
    const table = fc
      .tuple(scope, member, fc.integer({ min: 2, max: 9 }))
      .chain(([over, whose, density]): fc.Arbitrary<Table> => {
        const length = over.reduce((product, variable) => product * (sizes[variable] ?? 0), 1);
        return fc.array(fc.integer({ min: 0, max: 9 }), { minLength: length, maxLength: length }).map((dice) => ({
          scope: over,
          member: whose,
          allowed: Uint8Array.from(dice, (die) => (die < density ? 1 : 0)),
        }));
      });
    const sum = fc.tuple(scope, member, fc.integer({ min: -4, max: 8 }), fc.integer({ min: 0, max: 6 })).chain(
      ([over, whose, least, room]): fc.Arbitrary<Sum> =>
        fc
          .tuple(
            fc.tuple(
              ...over.map((variable) => {
                const length = sizes[variable] ?? 0;
                return fc.array(fc.integer({ min: -3, max: 5 }), { minLength: length, maxLength: length });
              }),
            ),
            fc.constantFrom<readonly [number, number]>(
              [least, least + room],
              [Number.NEGATIVE_INFINITY, least],
              [least, Number.POSITIVE_INFINITY],
              [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY],
            ),
          )
          .map(([weights, [from, to]]) => ({ scope: over, weights, least: from, greatest: to, member: whose })),
    );
    return fc
      .tuple(fc.array(table, { maxLength: 5 }), fc.array(sum, { maxLength: 3 }))
      .map(([tables, sums]) => ({ sizes, tables, sums, members }));
  });
}

/** A sum as the table that says the same: the plain enumerator knows tables only. */
const asTable = (sizes: readonly number[], { scope, weights, least, greatest, member }: Sum): Table =>
  tableOf(sizes, scope, member, (values) => {
    const total = values.reduce((sum, value, at) => sum + (weights[at]?.[value] ?? 0), 0);
    return least <= total && total <= greatest;
  });

/** Every solution by the plain enumerator, in lexicographic order. */
export function allSolutions(problem: Problem, holds: (member: number) => boolean = () => true): readonly number[][] {
  const tables = [...problem.tables, ...problem.sums.map((sum) => asTable(problem.sizes, sum))];
  const found: number[][] = [];
  const end = enumerate({ ...problem, tables, sums: [] }, holds, new StepBudget(1_000_000), (values) => {
    found.push([...values]);
    return true;
  });
  if (end !== 'whole') throw new Error(`the enumerator did not finish: ${end}`);
  return found;
}

/** Compares lists of numbers element by element; Infinity equals itself. */
export function inOrder(a: readonly number[], b: readonly number[]): number {
  const at = a.findIndex((value, place) => value !== b[place]);
  return at < 0 ? 0 : (a[at] ?? 0) < (b[at] ?? 0) ? -1 : 1;
}
