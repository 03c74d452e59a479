import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Ordered, orderOfWork, precedence } from '../../src/work/index.ts';
import { hold } from '../laws/hold.ts';
import { outsideFile } from '../solve/outside.ts';

const step = (id: string, order: number, more: Partial<Ordered> = {}): Ordered => ({
  id,
  order,
  requires: [],
  after: [],
  closedBy: null,
  ...more,
});
const order = (steps: readonly Ordered[]): string | null =>
  orderOfWork(steps)
    ?.map(({ id }) => id)
    .join(' ') ?? null;

describe('order of work', () => {
  it('ties: by the number, then by the id in code units', () => {
    expect(order([step('b', 10), step('a', 10), step('c', 5), step('B', 10)])).toBe('c B a b');
  });

  it('requires and after: what comes first does so whatever its number', () => {
    expect(order([step('x', 1, { requires: ['y'] }), step('y', 9)])).toBe('y x');
    expect(order([step('x', 1, { after: ['y'] }), step('y', 9)])).toBe('y x');
  });

  it('after: an operation that is not needed asks for nothing', () => {
    expect(order([step('x', 1, { after: ['gone'], requires: ['also-gone'], closedBy: 'gone' })])).toBe('x');
  });

  it('closing: what requires the opened, and what closes that in turn, goes before it is closed', () => {
    const nested = [
      step('outer', 10, { closedBy: 'outer-shut' }),
      step('inner', 20, { requires: ['outer'], closedBy: 'inner-shut' }),
      step('work', 30, { requires: ['inner'] }),
      step('inner-shut', 2),
      step('outer-shut', 1),
    ];
    expect(order(nested)).toBe('outer inner work inner-shut outer-shut');
  });

  it('closing: what requires the opened through others goes before it is closed, what requires the closing after', () => {
    const chain = [
      step('open', 10, { closedBy: 'shut' }),
      step('reach', 20, { requires: ['open'] }),
      step('work', 30, { requires: ['reach'] }),
      step('shut', 1),
      step('try', 2, { requires: ['work', 'shut'] }),
    ];
    expect(order(chain)).toBe('open reach work shut try');
  });

  it('closing: one operation may close what is within another that it closes too', () => {
    const shared = [
      step('outer', 10, { closedBy: 'shut' }),
      step('inner', 20, { requires: ['outer'], closedBy: 'shut' }),
      step('shut', 1),
    ];
    expect(order(shared)).toBe('outer inner shut');
  });

  it('cycle: of any kind there is no order', () => {
    expect(order([step('a', 1, { requires: ['b'] }), step('b', 2, { requires: ['a'] })])).toBeNull();
    expect(
      order([
        step('a', 1, { after: ['c'] }),
        step('b', 2, { after: ['a'] }),
        step('c', 3, { closedBy: 'b', after: ['b'] }),
      ]),
    ).toBeNull();
    expect(order([step('a', 1, { requires: ['b'] }), step('b', 2, { closedBy: 'a' })])).toBe('b a');
  });

  it('nothing: no operations are in order', () => {
    expect(order([])).toBe('');
  });

  const NAMES = ['a', 'b', 'c', 'd', 'e'];
  const some = fc
    .tuple(
      ...NAMES.map((id) =>
        fc.record({
          id: fc.constant(id),
          order: fc.integer({ min: 1, max: 3 }),
          requires: fc.subarray(NAMES, { maxLength: 1 }),
          after: fc.subarray(NAMES, { maxLength: 1 }),
          closedBy: fc.option(fc.constantFrom(...NAMES), { nil: null, freq: 2 }),
        }),
      ),
    )
    .map((all): Ordered[] =>
      all.map((one) => ({
        ...one,
        requires: one.requires.filter((id) => id !== one.id),
        after: one.after.filter((id) => id !== one.id),
        closedBy: one.closedBy === one.id ? null : one.closedBy,
      })),
    );

  it('law: of all valid orders the first by (number, id), and none exactly where no order is valid', () => {
    hold('order of work equals brute force', 800, some, (all) => {
      const rank = [...all].sort((a, b) => a.order - b.order || (a.id < b.id ? -1 : 1));
      // permutations come in the order of (number, id), so the first valid one is the one
      const first = permutations(rank).find((sequence) => isValid(sequence));
      expect(order(all)).toBe(first?.map(({ id }) => id).join(' ') ?? null);
    });
  });

  it('law: the order in which operations are listed does not show', () => {
    hold('order of work is one', 300, fc.tuple(some, fc.func(fc.nat())), ([all, dice]) => {
      expect(order([...all].sort((a, b) => dice(a.id) - dice(b.id)))).toBe(order(all));
    });
  });
});

/** model.md, section 5, "Order", sentence by sentence. */
function isValid(sequence: readonly Ordered[]): boolean {
  const at = new Map(sequence.map(({ id }, place) => [id, place]));
  const byId = new Map(sequence.map((operation) => [operation.id, operation]));
  const before = (first: string, second: string | null): boolean =>
    second === null || first === second || (at.get(first) ?? -1) < (at.get(second) ?? 99);
  const needs = (one: Ordered, other: string, depth = sequence.length): boolean =>
    one.requires.some((required) => {
      const between = byId.get(required);
      return required === other || (depth > 0 && between !== undefined && needs(between, other, depth - 1));
    });
  return sequence.every(
    (operation) =>
      [...operation.requires, ...operation.after].every((first) => before(first, operation.id)) &&
      before(operation.id, operation.closedBy) &&
      sequence
        .filter(
          ({ id, closedBy }) =>
            closedBy !== null && closedBy !== operation.id && needs(operation, id) && !needs(operation, closedBy),
        )
        .every(
          (opened) =>
            before(operation.id, opened.closedBy) &&
            (operation.closedBy === null || before(operation.closedBy, opened.closedBy)),
        ),
  );
}

function permutations<T>(items: readonly T[]): T[][] {
  if (items.length === 0) return [[]];
  return items.flatMap((item, at) =>
    permutations(items.filter((_one, place) => place !== at)).map((rest) => [item, ...rest]),
  );
}

type Edges = readonly (readonly [number, number])[];

/** The number of valid orders, and of sets of operations that can be done first, from our precedence. */
function count(names: readonly number[], edges: Edges): { readonly orders: number; readonly states: number } {
  // every second edge is stated by `after`, so that both are held against the counts
  const steps = names.map((name) => {
    const first = edges.flatMap(([from, to], at) => (to === name ? [{ id: String(from), even: at % 2 === 0 }] : []));
    const [requires, after] = [true, false].map((even) =>
      first.filter((edge) => edge.even === even).map(({ id }) => id),
    );
    return step(String(name), 10, { requires: requires ?? [], after: after ?? [] });
  });
  const before = precedence(steps);
  const needs = steps.map(({ id }) =>
    [...(before.get(id) ?? [])].reduce((mask, first) => mask | (1 << steps.findIndex((one) => one.id === first)), 0),
  );
  let layer = new Map([[0, 1]]);
  let states = 1;
  for (let done = 0; done < steps.length; done++) {
    const next = new Map<number, number>();
    for (const [mask, ways] of layer)
      for (const [at, needed] of needs.entries())
        if ((mask & (1 << at)) === 0 && (needed & ~mask) === 0)
          next.set(mask | (1 << at), (next.get(mask | (1 << at)) ?? 0) + ways);
    layer = next;
    states += layer.size;
  }
  return { orders: [...layer.values()].reduce((sum, ways) => sum + ways, 0), states };
}

const upTo = (most: number): number[] => Array.from({ length: most }, (_one, at) => at);
const orders = (size: number, edges: Edges): number => count(upTo(size), edges).orders;

const lattice = (bits: number): number =>
  orders(
    1 << bits,
    upTo(1 << bits).flatMap((set) =>
      upTo(bits).flatMap((bit): Edges => ((set & (1 << bit)) === 0 ? [[set, set | (1 << bit)]] : [])),
    ),
  );
const zigzag = (size: number): number =>
  orders(
    size,
    upTo(Math.max(0, size - 1)).map((at): readonly [number, number] => (at % 2 === 0 ? [at, at + 1] : [at + 1, at])),
  );
const grid = (rows: number, columns: number): number =>
  orders(
    rows * columns,
    upTo(rows * columns).flatMap(
      (at): Edges => [
        ...(at % columns < columns - 1 ? [[at, at + 1] as const] : []),
        ...(at + columns < rows * columns ? [[at, at + columns] as const] : []),
      ],
    ),
  );
const chains: Edges = [0, 3, 6].flatMap(
  (at): Edges => [
    [at, at + 1],
    [at + 1, at + 2],
  ],
);

describe('outside data: numbers of valid orders', () => {
  it('precedence: leaves as many orders as are known', () => {
    const text = outsideFile('orders/precedence-counts.json', 'known numbers of valid orders');
    if (text === null) return;
    const { jackson11, counts_of_valid_orders: known } = JSON.parse(text) as {
      readonly jackson11: { readonly edges: Edges; readonly valid_orders: number; readonly reachable_states: number };
      readonly counts_of_valid_orders: Readonly<Record<string, number | readonly number[]>>;
    };
    expect(
      count(
        upTo(11).map((at) => at + 1),
        jackson11.edges,
      ),
    ).toEqual({
      orders: jackson11.valid_orders,
      states: jackson11.reachable_states,
    });
    expect({
      boolean_lattice_B1_to_B4: [1, 2, 3, 4].map(lattice),
      zigzag_n1_to_n9: upTo(9).map((at) => zigzag(at + 1)),
      grid_2xn_n1_to_n7: upTo(7).map((at) => grid(2, at + 1)),
      grid_3x3: grid(3, 3),
      grid_3x4: grid(3, 4),
      three_chains_of_3: orders(9, chains),
    }).toEqual(known);
  });
});
