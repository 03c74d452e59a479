/** What a purchase costs: minor units, days (Infinity where nobody knows), and lines without a price. */
export interface Cost {
  readonly money: number;
  readonly days: number;
  readonly unpriced: number;
}
export const FREE: Cost = { money: 0, days: 0, unpriced: 0 };

export const plus = (a: Cost, b: Cost): Cost => ({
  money: a.money + b.money,
  days: Math.max(a.days, b.days),
  unpriced: a.unpriced + b.unpriced,
});

export const isSameCost = (a: Cost, b: Cost): boolean =>
  a.money === b.money && a.days === b.days && a.unpriced === b.unpriced;

const isAsGood = (a: Cost, b: Cost): boolean => a.money <= b.money && a.days <= b.days && a.unpriced <= b.unpriced;

/** Each cost that no other one is as good as in all parts; of equal ones the first. */
export function unbeatenCosts(costs: readonly Cost[]): readonly Cost[] {
  const kept: Cost[] = [];
  for (const cost of costs) {
    if (kept.some((other) => isAsGood(other, cost))) continue;
    kept.splice(0, kept.length, ...kept.filter((other) => !isAsGood(cost, other)), cost);
  }
  return kept;
}
