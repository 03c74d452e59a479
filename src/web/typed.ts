import type { QuestionInput } from '../plan/index.ts';
import type { Known } from './records.ts';
import { plain, type Suggestion } from './suggestion.ts';
import { decimalOf } from './words/numbers.ts';
import { words } from './words/words.ts';

const POUND_AN_INCH_IN_NEWTONS_A_MILLIMETRE = 0.175_126_835;
const POUND_IN_KILOGRAMS = 0.453_592_37;
/** Widths that a tyre of ISO 5775 is offered with until one is typed, mm. */
const WIDTHS = ['40', '50', '60', '65'];

type Reading = (question: QuestionInput, typed: string, known: Known) => readonly Suggestion[];

/** What no list can hold: a rider by mass ("85 kg", "190 lb"), a month of production, a serial number, a tyre, a length of steerer, a rate of a coil, bounds of a measure. */
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
  return [{ key: 'serial', kind: 'serial', text: words.part.serial(serial), next: { ...question, serial } }];
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

/** "coil 9 N/mm", "coil of 50 lb/in". */
const coil: Reading = (question, typed) => {
  const [, said, unit] =
    /^(?:with a )?coil (?:of )?([1-9][0-9]{0,2}(?:[.,][0-9]+)?) ?(n\/mm|lb\/in)?$/.exec(typed) ?? [];
  if (said === undefined) return [];
  const newtons = decimalOf(said) * (unit === 'lb/in' ? POUND_AN_INCH_IN_NEWTONS_A_MILLIMETRE : 1);
  const coilRate = Math.round(newtons * 100) / 100;
  return [{ key: 'coil', kind: 'coil', text: words.part.coil(coilRate), next: wanting(question, { coilRate }) }];
};

/** A measure within bounds: "offset 42 to 46", "axle-to-crown 530 mm"; one number is both of them. */
function within(name: 'offset' | 'axleToCrown', kind: 'offset' | 'axle-to-crown', called: RegExp): Reading {
  return (question, typed) => {
    const [, rest] = called.exec(typed) ?? [];
    const [, from, to = from] =
      /^([1-9][0-9]{0,3}(?:[.,][0-9]+)?)(?: ?mm)?(?: ?(?:to|-|–|\.\.) ?([1-9][0-9]{0,3}(?:[.,][0-9]+)?)(?: ?mm)?)?$/.exec(
        rest ?? '',
      ) ?? [];
    if (from === undefined || to === undefined) return [];
    const [least, greatest] = [decimalOf(from), decimalOf(to)];
    if (least > greatest) return [];
    const text = words.part[name](least, greatest);
    return [{ key: kind, kind, text, next: wanting(question, { [name]: { least, greatest } }) }];
  };
}

const wanting = (question: QuestionInput, more: QuestionInput['wants']): QuestionInput => ({
  ...question,
  wants: { ...question.wants, ...more },
});

const READINGS: readonly Reading[] = [
  rider,
  month,
  serialNumber,
  tyreOf,
  steerer,
  coil,
  within('offset', 'offset', /^offset (.+)$/),
  within('axleToCrown', 'axle-to-crown', /^axle[- ]to[- ]crown (.+)$/),
];
