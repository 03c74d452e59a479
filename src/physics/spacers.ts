import { forceAt } from './air-force.ts';
import type { AirSpring } from './air-spring.ts';
import { sagBound } from './end-of-stroke.ts';
import { type Computed, computed, firstOutside } from './outcome.ts';
import { pressureForForce } from './sag.ts';
import { type AbsolutePressure, type GaugePressure, metres, type Newtons } from './units.ts';

export interface SpacerQuestion {
  /** The spring as it is, with the volume spacers that are in it. */
  readonly before: AirSpring;
  /** The spring afterwards; its own count of spacers is not looked at. */
  readonly after: AirSpring;
  /** The force at sag, the same before and after: the rider is. */
  readonly load: Newtons;
  /** Sag as a share of travel, the same before and after. */
  readonly sag: number;
  readonly ambient: AbsolutePressure;
  /** Exponent of the hit that uses the whole travel. */
  readonly exponent: number;
  /** The maker's greatest count for the spring afterwards. */
  readonly greatest: number;
}

/** What one count would do: the end-of-stroke ratio, and the pressure that gives the sag. */
export interface SpacerCountEffect {
  readonly count: number;
  readonly ratio: number;
  readonly pressure: GaugePressure;
}

export interface SpacerAnswer {
  /** End-of-stroke ratio as it is. */
  readonly before: number;
  /** Every count from 0 to the greatest that the chamber has room for. */
  readonly counts: readonly SpacerCountEffect[];
  /** The count, not whole, that keeps the ratio; null where no count within the limits does. */
  readonly keeps: number | null;
  /** The whole count whose ratio comes nearest; of two, the smaller. */
  readonly nearest: number;
  /** Why `keeps` is null: even none is too many, or even the greatest too few. */
  readonly reach: 'within' | 'none-is-too-many' | 'greatest-is-too-few';
}

/** How far a maker's count may lie from the one that keeps the end of the stroke: further apart they disagree. */
const COUNTS_APART = 1;

/** True where a maker's count and the whole one that keeps the end of the stroke are more than one apart, to either side. */
export const countsDisagree = (makers: number, nearest: number): boolean => Math.abs(makers - nearest) > COUNTS_APART;

/**
 * How many volume spacers keep the end-of-stroke behaviour when travel changes, with the pressure set anew for the same
 * sag. To be shown beside the maker's count, never instead of it: makers choose for their own reasons, and practice takes
 * fewer (common practice, no source). Source: `pressureForForce` at sag (n = 1), `airForce` at full travel. Range and what
 * is left out: as there; the damper and the bumper share the work at the end.
 */
export function spacersKeepingEnd(question: SpacerQuestion): Computed<SpacerAnswer> {
  const { before, after, sag, exponent, greatest } = question;
  const found = firstOutside([
    sagBound(sag),
    ['polytropic exponent', '', exponent, 1, 1.67],
    ['greatest count', 'pieces', greatest, 0, 30],
    ['force', 'N', question.load, 10, 1e5],
  ]);
  if (found) return found;
  const then = ratioWith(question, before, before.spacers);
  if (!then.ok) return then;
  const first = ratioWith(question, after, 0);
  if (!first.ok) return first;
  const counts = [first.value];
  for (let count = 1; count <= greatest; count += 1) {
    const one = ratioWith(question, after, count);
    if (!one.ok) break;
    counts.push(one.value);
  }
  const target = then.value.ratio;
  const nearest = counts.reduce((best, one) =>
    Math.abs(one.ratio - target) < Math.abs(best.ratio - target) ? one : best,
  );
  const keeps = keepingCount(question, counts, target);
  const reach = keeps !== null ? 'within' : first.value.ratio > target ? 'none-is-too-many' : 'greatest-is-too-few';
  return computed({ before: target, counts, keeps, nearest: nearest.count, reach });
}

/** Between the first two neighbouring counts whose ratios lie on either side of the wanted one. */
function keepingCount(question: SpacerQuestion, counts: readonly SpacerCountEffect[], target: number): number | null {
  for (const [index, { count, ratio }] of counts.entries()) {
    if (ratio === target) return count;
    const next = counts[index + 1];
    if (!next || ratio < target === next.ratio < target) continue;
    return between({ count, off: ratio - target }, { count: next.count, off: next.ratio - target }, (middle) => {
      const one = ratioWith(question, question.after, middle);
      return one.ok ? one.value.ratio - target : null;
    });
  }
  return null;
}

interface Side {
  readonly count: number;
  /** How far the ratio is off, above zero or below. */
  readonly off: number;
}

/**
 * False position, with the weight of a side that stays halved (the Illinois rule): the ratio is nearly straight between two counts, so
 * a handful of steps reach the last float digit where halving takes fifty.
 */
function between(one: Side, other: Side, off: (count: number) => number | null): number {
  let [a, b] = [one, other];
  for (let turn = 0; turn < 60 && Math.abs(b.count - a.count) > 1e-13; turn += 1) {
    const count = b.count - (b.off * (b.count - a.count)) / (b.off - a.off);
    const found = off(count);
    if (found === null || found === 0) return count;
    a = found < 0 === b.off < 0 ? { count: a.count, off: a.off / 2 } : b;
    const step = Math.abs(count - b.count);
    b = { count, off: found };
    if (step < 1e-13) break;
  }
  return b.count;
}

function ratioWith(question: SpacerQuestion, spring: AirSpring, count: number): Computed<SpacerCountEffect> {
  const { sag, load, ambient, exponent } = question;
  const fitted = { ...spring, spacers: count };
  const filled = pressureForForce(fitted, ambient, metres(sag * spring.travel), load);
  if (!filled.ok) return filled;
  const end = forceAt(fitted, { pump: filled.value, ambient, exponent }, spring.travel);
  return computed({ count, ratio: end / load, pressure: filled.value });
}
