import type { Plan } from './answer.ts';
import type { Finding } from './finding.ts';
import { price } from './measure.ts';

/** (total, minutes, readyInDays, unpriced, unknowns), each smaller is better; null days rank after every number. */
type Vector = readonly [number, number, number, number, number];

const LAST = Number.POSITIVE_INFINITY;

const vectorOf = (plan: Plan, digits: number): Vector => [
  price(plan.money.total, digits) ?? LAST,
  plan.minutes ?? LAST,
  plan.readyInDays ?? LAST,
  typeof plan.money.unpriced === 'number' ? plan.money.unpriced : LAST,
  plan.unknowns ?? LAST,
];

/** Across plans: none beats or equals another, they stand in order, and the labels are right (section 7). */
export function* checkFront(plans: readonly Plan[], prefer: string, digits: number): Iterable<Finding> {
  const vectors = plans.map((plan) => vectorOf(plan, digits));
  for (const [a, one] of vectors.entries()) {
    for (const [b, other] of vectors.entries()) {
      if (a !== b && noWorse(other, one) && (a > b || !noWorse(one, other))) {
        yield { code: 'beaten', plan: a, detail: `plan ${b} is as good or better: ${other.join(', ')}` };
      }
    }
    const before = vectors[a - 1];
    if (before && inOrder(before, one, prefer) > 0) {
      yield { code: 'not-sorted', plan: a, detail: `should stand before plan ${a - 1} by ${prefer}` };
    }
  }
  for (const [index, plan] of plans.entries()) {
    const right = labelsOf(index, vectors);
    if ([...right].sort().join() !== [...plan.labels].sort().join()) {
      yield { code: 'label', plan: index, detail: `should be ${right.join(', ') || 'without a label'}` };
    }
  }
}

const noWorse = (a: Vector, b: Vector): boolean => a.every((value, index) => value <= (b[index] ?? 0));

/** The preferred part of the vector first, then the others as they stand. */
function inOrder(a: Vector, b: Vector, prefer: string): number {
  const first = prefer === 'time' ? 1 : prefer === 'wait' ? 2 : 0;
  for (const index of [first, 0, 1, 2, 3, 4]) {
    const [x, y] = [a[index] ?? 0, b[index] ?? 0];
    if (x !== y) return x < y ? -1 : 1;
  }
  return 0;
}

function labelsOf(index: number, vectors: readonly Vector[]): readonly string[] {
  const priced = vectors.map((vector) => vector[3] === 0);
  const isFirstLeast = (part: 0 | 1 | 2, among: (i: number) => boolean): boolean => {
    const values = vectors.map((vector, i) => (among(i) ? vector[part] : null));
    const known = values.filter((value) => value !== null);
    return known.length > 0 && values.indexOf(Math.min(...known)) === index;
  };
  return [
    ...(index === 0 ? ['recommended'] : []),
    ...(isFirstLeast(0, (i) => priced[i] === true) ? ['cheapest'] : []),
    ...(isFirstLeast(1, () => true) ? ['quickest'] : []),
    ...(isFirstLeast(2, () => true) ? ['soonest'] : []),
  ];
}
