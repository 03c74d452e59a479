import type { QuestionInput } from '../plan/index.ts';
import type { Known } from './records.ts';
import { plain, type Suggestion } from './suggestion.ts';
import { decimalOf } from './words/numbers.ts';
import { words } from './words/words.ts';

const POUND_IN_KILOGRAMS = 0.453_592_37;
/** Widths that a tyre of ISO 5775 is offered with until one is typed, mm. */
const WIDTHS = ['40', '50', '60', '65'];

type Reading = (question: QuestionInput, typed: string, known: Known) => readonly Suggestion[];

/** What no list can hold: a rider by mass ("85 kg", "190 lb"), a month of production, a serial number, a tyre, a length of steerer. */
export const typedSuggestions: Reading = (question, typed, known) =>
  question.chassis === undefined && question.bike === undefined
    ? []
    : READINGS.flatMap((reading) => reading(question, plain(typed), known));

const rider: Reading = (question, typed) => {
  const [, said, unit] = /^(?:rider )?([0-9]{2,3}(?:[.,][0-9])?) ?(kg|lb)$/.exec(typed) ?? [];
  if (said === undefined) return [];
  const mass = Math.round(decimalOf(said) * (unit === 'lb' ? POUND_IN_KILOGRAMS : 1) * 10) / 10;
  if (mass < 15 || mass > 250) return [];
  const next = { ...question, rider: { ...question.rider, mass } };
  return [{ key: 'rider', kind: 'rider', text: words.part.rider(mass), next }];
};

const month: Reading = (question, typed) => {
  const built = /^(?:built )?([0-9]{4}-(?:0[1-9]|1[0-2]))$/.exec(typed)?.[1];
  if (built === undefined) return [];
  return [{ key: 'built', kind: 'built', text: words.part.built(built), next: { ...question, built } }];
};

const serialNumber: Reading = (question, typed) => {
  const serial = /^serial ([a-z-]*[0-9]{1,15})$/.exec(typed)?.[1]?.toUpperCase();
  if (serial === undefined) return [];
  return [{ key: 'serial', kind: 'other', text: words.part.serial(serial), next: { ...question, serial } }];
};

/** A tyre by its designation, "tyre 60-622": what is typed so far is completed with the wheels there are. */
const tyreOf: Reading = (question, typed, { choices }) => {
  const [, named, width = '', dash, seat = ''] = /^(tyre ?)?([1-9][0-9]{0,2})?(-)?([0-9]{0,3})$/.exec(typed) ?? [];
  const seen = width.length >= 2 && (named !== undefined || dash !== undefined);
  if (!seen && (named === undefined || width !== '' || dash !== undefined)) return [];
  const seats = [...new Set([...(seat.length === 3 ? [seat] : []), ...(choices?.wheels ?? []).map(String)])];
  return (seen ? [width] : WIDTHS).flatMap((wide) =>
    seats
      .filter((one) => one.startsWith(seat))
      .map((one): Suggestion => {
        const tyre = `${wide}-${one}`;
        return { key: `tyre ${tyre}`, kind: 'tyre', text: words.part.tyre(tyre), next: { ...question, tyre } };
      }),
  );
};

const steerer: Reading = (question, typed) => {
  const said = /^steerer (?:cut to )?([1-9][0-9]{1,2}(?:[.,][0-9])?)(?: ?mm)?$/.exec(typed)?.[1];
  if (said === undefined) return [];
  const steererLength = decimalOf(said);
  const text = words.part.steerer(steererLength);
  return [{ key: 'steerer', kind: 'steerer', text, next: { ...question, steererLength } }];
};

const READINGS: readonly Reading[] = [rider, month, serialNumber, tyreOf, steerer];
