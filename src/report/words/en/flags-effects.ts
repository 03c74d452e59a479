import type { WordsTable } from '../language.ts';
import type { FlagParams } from '../params.ts';
import { outsideSentence } from './outsides.ts';
import { counted, orList } from './shared.ts';

type EffectCode =
  | 'geometry-not-known'
  | 'tyre-assumed'
  | 'spacers-against-physics'
  | 'no-start-pressure'
  | 'pressure-against-chart';

const LACKING: Readonly<Record<string, string>> = {
  size: 'the question does not say the frame size',
  drawing: 'the catalogue has no drawing of this frame',
  tyre: 'its tyres are not known',
  'drawn-fork': 'with which fork it was drawn is not known',
  'fork-length': 'the axle-to-crown or the offset of the fork is not in the catalogue',
  'no-solution': 'its drawing does not add up to a bike that stands on both wheels',
};

/** Flags about what a change does to spring and bike. */
export const effectFlags: WordsTable<Pick<FlagParams, EffectCode>> = {
  'geometry-not-known': {
    say: ({ bike, lacking }) => `What ${bike} becomes was not worked out: ${LACKING[lacking] ?? lacking}.`,
    meaning: 'Head angle, trail and the rest follow from a drawing of the frame, its tyres and the length of the fork.',
    way: ({ lacking, sizes }) =>
      lacking === 'size'
        ? `Say the frame size: ${orList(sizes)}.`
        : 'Put what is lacking into the record of the bike or the chassis.',
    example: { bike: 'Example trail bike', lacking: 'size', sizes: ['S', 'M', 'L'] },
  },
  'tyre-assumed': {
    say: ({ from, to }) => `The bike was worked out with a tyre ${to} in front, as wide as the ${from} that is there.`,
    meaning: 'Another wheel asks for another tyre, and which one is not said.',
    way: () => 'Say the tyre by its designation, such as --tyre 60-622.',
    example: { from: '60-622', to: '60-584' },
  },
  'spacers-against-physics': {
    say: ({ makers, nearest, keeps, reach, travel }) =>
      `The maker's count at ${travel} mm is ${counted(makers, 'volume spacer')}, and it stands. By the gas law ${
        keeps === null
          ? reach === 'none-is-too-many'
            ? 'even none would be firmer at the end than before'
            : `even ${nearest}, all that go in, would be softer at the end than before`
          : `about ${keeps} would keep the end of the stroke as it was`
      }.`,
    meaning:
      "The maker's count of volume spacers and the one that keeps the end-of-stroke ratio differ by more than one. Makers choose for their own reasons, and practice takes fewer.",
    way: () => 'Leave the count as the maker has it; tell the rider how the end of the stroke will feel.',
    example: { makers: 3, nearest: 5, keeps: 5.2, reach: 'within', travel: 130 },
  },
  'no-start-pressure': {
    say: ({ sku, name, about, ...values }) =>
      `No starting pressure for this rider with ${name} (${sku}): ${outsideSentence(about, values)}.`,
    meaning: "The rider is beyond the maker's chart or limits, and nothing is carried on beyond them.",
    way: () => 'Ask the maker what suits this rider.',
    example: { sku: 'AB-AIR-2', name: 'air cartridge', about: 'below-chart', mass: 38, least: 50 },
  },
  'pressure-against-chart': {
    say: ({ name, least, greatest, workedLeast, workedGreatest, sag }) =>
      `The maker's chart for ${name} says ${least} to ${greatest} psi for this rider, and it comes first. For ${Math.round(sag * 100)} % of sag ${workedLeast} to ${workedGreatest} psi were worked out.`,
    meaning: "The pressure that was worked out for the wanted sag lies outside the row of the maker's chart.",
    way: () => "Start from the maker's chart, read the sag, and set the pressure right by it.",
    example: { name: 'air cartridge', least: 70, greatest: 80, workedLeast: 84, workedGreatest: 92, sag: 0.2 },
  },
};
