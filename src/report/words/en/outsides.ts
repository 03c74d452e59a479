import { gaugePressure, inPressureUnit, type OutsideParams } from '../../../physics/index.ts';
import type { Words, WordsTable } from '../language.ts';
import type { Coded } from '../say.ts';

const millimetres = (metres: number): string => `${Math.round(metres * 10_000) / 10} mm`;
const millilitres = (cubicMetres: number): string => `${Math.round(cubicMetres * 1e7) / 10} mL`;
const newtonsPerMillimetre = (rate: number): string => `${Math.round(rate / 100) / 10} N/mm`;
const rounded = (value: number): number => Number(value.toPrecision(4));
/** A gauge pressure in Pa as both scales of a pump have it. */
const pumped = (pascals: number): string =>
  `${Math.round(inPressureUnit(gaugePressure(pascals), 'psi'))} psi (${Math.round(pascals / 1e4) / 10} bar)`;

/** Why a figure of physics is not worked out, or is not to be. */
export const outsides: WordsTable<OutsideParams> = {
  'out-of-range': {
    say: ({ quantity, unit, found, least, greatest }) =>
      `the ${quantity} is ${rounded(found)} ${unit}; it is worked out from ${rounded(least)} to ${rounded(greatest)} ${unit}`,
    meaning: 'A value is beyond the range that the formula is made for, so no figure is given.',
    way: () => 'See whether the value is right in the catalogue and in the question.',
    example: { quantity: 'rider mass', unit: 'kg', found: 260, least: 15, greatest: 250 },
  },
  'chamber-too-small': {
    say: ({ left, needed }) =>
      `at full travel ${millilitres(left)} would be left of the positive chamber, and ${millilitres(needed)} is the least`,
    meaning: 'The spring as described would press its air to nothing before the fork is at the bottom.',
    way: () => 'See bore, chamber, travel and volume spacers in the catalogue.',
    example: { left: -2e-6, needed: 4e-6 },
  },
  'coil-bind': {
    say: ({ pressed, room }) =>
      `the coil would be pressed by ${millimetres(pressed)}, and its windings touch at ${millimetres(room)}`,
    meaning: 'A coil cannot be pressed further than until its windings touch.',
    way: () => 'Another coil, or less preload.',
    example: { pressed: 0.17, room: 0.16 },
  },
  'no-force-at-sag': {
    say: ({ sag }) => `at ${millimetres(sag)} of sag the spring pushes with no force, whatever its pressure`,
    meaning: 'The negative chamber is so strong that the fork sinks in by itself.',
    way: () => 'See the chambers in the catalogue.',
    example: { sag: 0.03 },
  },
  'no-planar-solution': {
    say: ({ axles, rise }) =>
      `no bike stands on wheels whose axles are ${millimetres(axles)} apart and whose radii differ by ${millimetres(rise)}`,
    meaning: 'With these wheels and this fork the bike does not stand on both wheels.',
    way: () => 'See the drawing and the tyres of the bike in the catalogue.',
    example: { axles: 0.2, rise: 0.25 },
  },
  'below-chart': {
    say: ({ mass, least }) => `${rounded(mass)} kg is below the maker's chart, which starts at ${rounded(least)} kg`,
    meaning: 'The maker prints nothing for so light a rider, and the chart is not carried on below.',
    way: () => 'Ask the maker what suits this rider.',
    example: { mass: 38, least: 50 },
  },
  'above-chart': {
    say: ({ mass, greatest }) =>
      `${rounded(mass)} kg is above the maker's chart, which ends at ${rounded(greatest)} kg`,
    meaning: 'The maker prints nothing for so heavy a rider, and the chart is not carried on above.',
    way: () => 'Ask the maker what suits this rider.',
    example: { mass: 125, greatest: 110 },
  },
  'not-on-chart': {
    say: ({ mass }) => `the maker's chart has no row for ${rounded(mass)} kg`,
    meaning: 'The chart has a gap, and nothing is read into it.',
    way: () => 'Ask the maker what suits this rider.',
    example: { mass: 74 },
  },
  'below-least-pressure': {
    say: ({ wanted, least }) => `the sag asks for ${pumped(wanted)}, and the maker's least is ${pumped(least)}`,
    meaning: 'The wanted sag needs less pressure than the maker allows.',
    way: () => 'Less sag, or ask the maker what suits this rider.',
    example: { wanted: 250_000, least: 300_000 },
  },
  'above-greatest-pressure': {
    say: ({ wanted, greatest }) =>
      `the sag asks for ${pumped(wanted)}, and the maker's greatest is ${pumped(greatest)}`,
    meaning: 'The wanted sag needs more pressure than the maker allows.',
    way: () => 'More sag, or ask the maker what suits this rider.',
    example: { wanted: 1_600_000, greatest: 1_500_000 },
  },
  'no-mark-within-limits': {
    say: ({ unit, least, greatest }) =>
      `no mark of a pump in ${unit} lies between ${pumped(least)} and ${pumped(greatest)}`,
    meaning: "The maker's limits are closer together than two marks of the pump.",
    way: () => 'Use the other scale of the pump.',
    example: { unit: 'psi', least: 300_000, greatest: 302_000 },
  },
  'no-coil-suits': {
    say: ({ wanted, softest, hardest }) =>
      `the sag asks for a coil of ${newtonsPerMillimetre(wanted)}; those of the list go from ${newtonsPerMillimetre(softest)} to ${newtonsPerMillimetre(hardest)}, and none is near enough`,
    meaning: 'The maker has no coil that gives this rider the wanted sag.',
    way: () => 'Another sag, or ask the maker what suits this rider.',
    example: { wanted: 4200, softest: 6000, hardest: 8000 },
  },
  'not-thinning': {
    say: ({ at40, at100 }) => `an oil of ${at40} mm²/s at 40 °C and ${at100} mm²/s at 100 °C does not grow thinner`,
    meaning: 'Every oil grows thinner as it is warmed, so one of the two values is wrong.',
    way: () => 'See the data sheet of the oil.',
    example: { at40: 10, at100: 12 },
  },
  'not-readable': {
    say: ({ text, form }) => `${text} is not written as ${form}`,
    meaning: 'The text is not of the form that a standard gives it.',
    way: ({ form }) => `Write it as ${form}.`,
    example: { text: '29x2.4', form: 'ISO 5775: width-bead seat in mm, such as 60-622' },
  },
  'not-in-table': {
    say: ({ table, found }) => `${table} as it is held here does not list ${found}`,
    meaning: 'The table of the standard is held in part only, for the sizes of forks.',
    way: () => 'Look it up in the standard.',
    example: { table: 'DIN 472', found: '27 mm' },
  },
};

/** Why there is no figure, by a code that is a value of something else. */
export function outsideSentence(code: string, values: Coded['params']): string {
  const table: object = outsides;
  const words = (table as Readonly<Record<string, Words<Coded['params']>>>)[code];
  return words?.say(values) ?? code;
}
