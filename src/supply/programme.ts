/** A thing of which whole packs may be taken, at a cost each. Amounts, costs and limits are whole numbers that are not negative. */
export interface ProgrammeColumn {
  /** What one pack gives to rows, each row once. */
  readonly gives: readonly (readonly [row: number, amount: number])[];
  readonly cost: number;
  readonly limit: number;
}

/** A column as the market makes it. */
export interface CoverColumn extends ProgrammeColumn {
  /** True where taking any of it makes a line without a price. */
  readonly unpriced: boolean;
  /** True where taking it buys nothing: it is at hand and counts as no pack. */
  readonly free: boolean;
}

/** How many packs of each column; the sum of their costs; how many columns without a price are used. */
export interface Cover {
  readonly packs: readonly number[];
  readonly cost: number;
  readonly unpriced: number;
}

/** At most so much in all, counted by a weight for each pack of each column. */
export interface Cap {
  readonly weights: readonly number[];
  readonly most: number;
}

/** A cover as a whole-number programme: the least cost at which every row gets what it needs, within limits and caps. */
export interface Programme {
  readonly needs: readonly number[];
  readonly columns: readonly ProgrammeColumn[];
  readonly caps: readonly Cap[];
}

/** True where so many packs of each column meet every need, limit and cap. */
export function isCover({ needs, columns, caps }: Programme, packs: readonly number[]): boolean {
  const left = [...needs];
  for (const [at, { gives, limit }] of columns.entries()) {
    const count = packs[at] ?? 0;
    if (count < 0 || count > limit) return false;
    if (count > 0) for (const [row, amount] of gives) left[row] = (left[row] ?? 0) - count * amount;
  }
  return left.every((need) => need <= 0) && caps.every(({ weights, most }) => weighed(weights, packs) <= most);
}

/** The sum of weights over packs. */
export const weighed = (weights: readonly number[], packs: readonly number[]): number =>
  packs.reduce((sum, count, at) => sum + count * (weights[at] ?? 0), 0);
