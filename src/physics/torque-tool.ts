import { type Computed, computed, firstOutside } from './outcome.ts';
import { type NewtonMetres, newtonMetres } from './units.ts';

/** An adjustable torque wrench that clicks, with a scale: ISO 6789 type II class A. */
export interface SettingWrench {
  readonly id: string;
  readonly greatest: NewtonMetres;
  /** Its lowest marked value; null where not known. */
  readonly lowestMark: NewtonMetres | null;
}
export interface WrenchVerdict {
  readonly kind: 'suits' | 'below-its-range' | 'above-its-range';
  /** Where its range starts, and by what: the lowest mark (2017 edition), else 20 % of its greatest (2003 edition). */
  readonly from: NewtonMetres;
  readonly by: 'lowest-mark' | 'twenty-per-cent';
  /** How far off a good one may be at this torque, to either side. */
  readonly deviation: NewtonMetres;
}

/**
 * Whether a setting wrench suits a torque, and how far off it may be there: 4 % if its greatest torque is above 10 N·m,
 * else 6 %. Source: ISO 6789, type II class A, through tool makers' summaries; 2003 edition (range from 20 % of the
 * greatest) and 2017 edition (range from the lowest mark). Range: 0.1 to 1000 N·m. Left out: a wrench out of calibration
 * (5000 cycles or 12 months), extensions and crowfeet, how it is pulled.
 */
export function wrenchVerdict(wrench: SettingWrench, torque: NewtonMetres): Computed<WrenchVerdict> {
  const found = firstOutside([
    ['greatest torque', 'N·m', wrench.greatest, 0.1, 1000],
    ['lowest mark', 'N·m', wrench.lowestMark ?? 0, 0, wrench.greatest],
    ['torque', 'N·m', torque, 0.1, 1000],
  ]);
  if (found) return found;
  const from = wrench.lowestMark ?? newtonMetres(wrench.greatest * 0.2);
  // A thousandth of a millinewton metre of slack: 20 % of 35 N·m is 7.000000000000001 in floating point.
  const kind = torque < from - 1e-9 ? 'below-its-range' : torque > wrench.greatest + 1e-9 ? 'above-its-range' : 'suits';
  return computed({
    kind,
    from,
    by: wrench.lowestMark === null ? 'twenty-per-cent' : 'lowest-mark',
    deviation: newtonMetres(torque * (wrench.greatest > 10 ? 0.04 : 0.06)),
  });
}

/** The wrenches that suit a torque: least permitted deviation first, then the smallest, then by id. */
export function wrenchesFor(
  wrenches: readonly SettingWrench[],
  torque: NewtonMetres,
): Computed<readonly (WrenchVerdict & { readonly id: string })[]> {
  const suit: (WrenchVerdict & { readonly id: string; readonly greatest: number })[] = [];
  for (const wrench of wrenches) {
    const verdict = wrenchVerdict(wrench, torque);
    if (!verdict.ok) return verdict;
    if (verdict.value.kind === 'suits') suit.push({ ...verdict.value, id: wrench.id, greatest: wrench.greatest });
  }
  suit.sort((a, b) => a.deviation - b.deviation || a.greatest - b.greatest || (a.id < b.id ? -1 : Number(a.id > b.id)));
  return computed(suit.map(({ greatest: _, ...verdict }) => verdict));
}
