import type { Params } from './member.ts';

/** A least and a greatest length in micrometres, both allowed; null where nobody says. */
interface Range {
  readonly least: number | null;
  readonly greatest: number | null;
}

/** True where a length lies in a range; an end that nobody says does not bind. */
export const within = ({ least, greatest }: Range, length: number): boolean =>
  (least === null || length >= least) && (greatest === null || length <= greatest);

/** A range as a member shows it, in millimetres. */
export const shownRange = ({ least, greatest }: Range): Params => ({
  least: least === null ? null : least / 1000,
  greatest: greatest === null ? null : greatest / 1000,
});
