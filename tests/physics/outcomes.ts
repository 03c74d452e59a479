import type { Computed } from '../../src/physics/index.ts';

/** The value of an outcome that must have one. */
export function value<T>(outcome: Computed<T>): T {
  if (!outcome.ok) throw new Error(`no value: ${JSON.stringify(outcome)}`);
  return outcome.value;
}

/** `ok`, or the code of why there is no value. */
export const code = (outcome: Computed<unknown>): string => (outcome.ok ? 'ok' : outcome.code);

/** The quantity that an outcome finds out of range; null where it does not. */
export const quantity = (outcome: Computed<unknown>): string | null =>
  !outcome.ok && outcome.code === 'out-of-range' ? outcome.params.quantity : null;

/** True within half a unit of the last digit printed, given how many digits stand behind the point. */
export const asPrinted = (found: number, printed: number, digits: number): boolean =>
  Math.abs(found - printed) <= 0.5 * 10 ** -digits * (1 + 1e-9);
