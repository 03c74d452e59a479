import type { Residue } from './residue.ts';

/** Prices for what rows need and for the room under caps, and what they prove. */
export interface Priced {
  /** No cover of the residue costs less. The error of the machine is taken off, so that it is never above the truth. */
  readonly bound: number;
  /** What one pack of a column adds to the bound; below 0: what one pack fewer adds. */
  readonly reduced: Float64Array;
  /** Price of each row's whole need, by the row's number in the programme. */
  readonly rowPrice: Float64Array;
  readonly capPrice: Float64Array;
}

/**
 * A lower bound by Lagrangian relaxation. With prices y >= 0 for the needs and m >= 0 for the caps, every cover x has
 *   cost x >= cost x + y (needs - A x) + m (W x - caps) >= y needs - m caps + sum of limit * min(0, cost - y A + m W),
 * whatever the prices; the subgradient step of Held, Wolfe and Crowder looks for good ones. Stops as soon as the bound passes `goal`.
 * Ref: M. Held, P. Wolfe, H. Crowder, "Validation of subgradient optimization", Mathematical Programming 6 (1974);
 * J. E. Beasley, "An algorithm for set covering problem", European Journal of Operational Research 31 (1987).
 */
export function priced(
  residue: Residue,
  from: { readonly rowPrice: Float64Array; readonly capPrice: Float64Array },
  goal: number,
  rounds: number,
  seen: (reduced: Float64Array) => void = () => {},
): Priced {
  const { need, start, row, cost, limit, rows, caps } = residue;
  const share = sharesOf(residue);
  const price = Float64Array.from(rows, (name) => from.rowPrice[name] ?? 0);
  const capPrice = from.capPrice.slice();
  const reduced = new Float64Array(cost.length);
  const [lack, over] = [new Float64Array(need.length), new Float64Array(caps.length)];
  let best = { bound: Number.NEGATIVE_INFINITY, reduced, price: price.slice(), capPrice: capPrice.slice() };
  let [stride, idle] = [1, 0];
  for (let round = 0; ; round++) {
    lack.fill(1);
    let [bound, size] = [0, 0];
    for (let at = 0; at < price.length; at++) bound += price[at] ?? 0;
    for (let at = 0; at < caps.length; at++) {
      bound -= (capPrice[at] ?? 0) * (caps[at]?.left ?? 0);
      over[at] = -(caps[at]?.left ?? 0);
    }
    size = Math.abs(bound) * 2;
    for (let place = 0; place < cost.length; place++) {
      let left = cost[place] ?? 0;
      for (let at = 0; at < caps.length; at++) left += (capPrice[at] ?? 0) * (caps[at]?.weight[place] ?? 0);
      const gross = left;
      const end = start[place + 1] ?? 0;
      for (let at = start[place] ?? 0; at < end; at++) left -= (share[at] ?? 0) * (price[row[at] ?? 0] ?? 0);
      reduced[place] = left;
      if (left >= 0) continue;
      const packs = limit[place] ?? 0;
      bound += packs * left;
      size += packs * (2 * gross - left);
      for (let at = start[place] ?? 0; at < end; at++) {
        const to = row[at] ?? 0;
        lack[to] = (lack[to] ?? 0) - packs * (share[at] ?? 0);
      }
      for (let at = 0; at < caps.length; at++) over[at] = (over[at] ?? 0) + packs * (caps[at]?.weight[place] ?? 0);
    }
    bound -= size * UNSURE;
    if (bound > best.bound + Math.abs(best.bound) * 1e-5) idle = 0;
    else if (++idle >= PATIENCE) [stride, idle] = [stride / 2, 0];
    if (bound > best.bound)
      best = { bound, reduced: reduced.slice(), price: price.slice(), capPrice: capPrice.slice() };
    if (round % SHOWN === 0) seen(reduced);
    if (bound > goal || round >= rounds || stride < 1e-3) break;
    const aim = Number.isFinite(goal) ? goal + 1 : best.bound + Math.abs(best.bound) * 0.1 + 1;
    let norm = 0;
    for (let at = 0; at < lack.length; at++) {
      if ((price[at] ?? 0) <= 0 && (lack[at] ?? 0) < 0) lack[at] = 0;
      norm += (lack[at] ?? 0) ** 2;
    }
    const capScale = caps.map(({ left }) => 1 / Math.max(1, left));
    for (let at = 0; at < caps.length; at++) {
      if ((capPrice[at] ?? 0) <= 0 && (over[at] ?? 0) < 0) over[at] = 0;
      norm += ((over[at] ?? 0) * (capScale[at] ?? 1)) ** 2;
    }
    if (norm === 0) break;
    const step = (stride * (aim - bound)) / norm;
    for (let at = 0; at < price.length; at++) price[at] = Math.max(0, (price[at] ?? 0) + step * (lack[at] ?? 0));
    for (let at = 0; at < caps.length; at++)
      capPrice[at] = Math.max(0, (capPrice[at] ?? 0) + step * (over[at] ?? 0) * (capScale[at] ?? 1) ** 2);
  }
  const rowPrice = from.rowPrice.slice();
  for (let at = 0; at < rows.length; at++) rowPrice[rows[at] ?? 0] = best.price[at] ?? 0;
  return { bound: best.bound, reduced: best.reduced, rowPrice, capPrice: best.capPrice };
}
/** Rounds without a better bound after which the step is halved. */
const PATIENCE = 12;
/** Every so many rounds the reduced costs are shown, for covers that may be built on them. */
const SHOWN = 8;
/** More than the rounding of a sum of some 100,000 terms, as a share of their absolute sum. */
const UNSURE = 1e-10;

/** What a pack gives to a row, as a share of what the row needs: rows of millilitres and rows of pieces are then alike. */
function sharesOf({ row, amount, need }: Residue): Float64Array {
  return amount.map((one, at) => one / (need[row[at] ?? 0] ?? 1));
}

/** Prices to begin with: each column's cost shared evenly among the rows that it serves. */
export function evenPrices(residue: Residue, rows: number): { rowPrice: Float64Array; capPrice: Float64Array } {
  const { start, row, cost } = residue;
  const share = sharesOf(residue);
  const rowPrice = new Float64Array(rows);
  const least = new Float64Array(residue.need.length).fill(Number.POSITIVE_INFINITY);
  for (let place = 0; place < cost.length; place++) {
    const [from, end] = [start[place] ?? 0, start[place + 1] ?? 0];
    for (let at = from; at < end; at++) {
      const to = row[at] ?? 0;
      least[to] = Math.min(least[to] ?? 0, (cost[place] ?? 0) / (end - from) / (share[at] ?? 1));
    }
  }
  residue.rows.forEach((name, at) => {
    rowPrice[name] = least[at] ?? 0;
  });
  return { rowPrice, capPrice: new Float64Array(residue.caps.length) };
}
