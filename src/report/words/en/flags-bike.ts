import type { WordsTable } from '../language.ts';
import type { FlagParams } from '../params.ts';
import { andList, orList } from './shared.ts';

type BikeCode =
  | 'frame-limit-not-known'
  | 'size-not-known'
  | 'tyre-not-known'
  | 'tyre-room-not-known'
  | 'steerer-length-not-known'
  | 'limits-disagree'
  | 'replaced'
  | 'last-of-old-number'
  | 'substitute-used'
  | 'equal-offered'
  | 'notice'
  | 'notice-check';

/** How an equal oil stands to the specified one where a ride in winter starts. */
function inTheCold({ cold, coldRatio }: { readonly cold: string; readonly coldRatio: number | null }): string {
  switch (cold) {
    case 'equal':
      return 'It is equal in the cold too.';
    case 'thicker':
    case 'thinner':
      return `It is ${cold} in the cold: ${coldRatio ?? '?'} times as thick at 0 °C.`;
    default:
      return 'How thick it is in the cold is not known.';
  }
}

/** Flags about the bike, about replaced numbers and equal supplies, and about notices. */
export const bikeFlags: WordsTable<Pick<FlagParams, BikeCode>> = {
  'frame-limit-not-known': {
    say: ({ bike, to, wheel }) =>
      `The catalogue does not say what travel or length the frame of ${bike} allows with such a fork and a ${wheel} wheel. This plan gives the fork ${to} mm of travel.`,
    meaning: 'A longer fork loads the head tube, and the limit of this frame is not in the catalogue.',
    way: () => 'Ask the maker of the frame for its greatest travel or axle-to-crown.',
    example: { bike: 'Example trail bike', to: 150, wheel: 622 },
  },
  'size-not-known': {
    say: ({ bike, sizes }) =>
      `The limits of ${bike} depend on the frame size (${sizes.join(', ')}), and the question gives none. Every one of them was held.`,
    meaning: 'Some limits hold for some frame sizes only.',
    way: ({ sizes }) => `Say the frame size: ${orList(sizes)}.`,
    example: { bike: 'Example trail bike', sizes: ['S', 'M', 'L'] },
  },
  'tyre-not-known': {
    say: ({ bike }) => `Which tyre is on ${bike} is not known, so its room in the fork was not worked out.`,
    meaning: 'The tyre must clear crown, arch and legs when the fork is at the bottom.',
    way: () => 'Say the tyre by its designation, such as --tyre 60-622, and measure the gap at the bottom.',
    example: { bike: 'Example trail bike' },
  },
  'tyre-room-not-known': {
    say: ({ chassis, tyre }) =>
      `How much room ${chassis} leaves for a tyre is not in the catalogue, so ${tyre} could not be checked.`,
    meaning: 'The tyre must clear crown, arch and legs when the fork is at the bottom.',
    way: () => 'Ask the maker of the fork, and measure the gap at the bottom.',
    example: { chassis: 'Example for 622 wheels', tyre: '60-622' },
  },
  'steerer-length-not-known': {
    say: ({ bike, chassis }) => `Whether the steerer of ${chassis} is long enough for ${bike} is not known.`,
    meaning: 'Head tube, stem and steerer must be known to tell whether the steerer reaches.',
    way: () => 'Measure head tube, spacers, stem and steerer.',
    example: { bike: 'Example trail bike', chassis: 'Example for 622 wheels' },
  },
  'limits-disagree': {
    say: ({ part, chassis, partLeast, partGreatest, chassisLeast, chassisGreatest }) =>
      `Two makers state different limits of travel: for ${part} least ${partLeast}, greatest ${partGreatest}; for ${chassis} least ${chassisLeast}, greatest ${chassisGreatest}. The stricter was held.`,
    meaning: 'The maker of the fork and the maker of a part do not agree on the travel it may have.',
    way: () => 'Ask both makers which limit is the newer one.',
    example: {
      part: 'air cartridge',
      chassis: 'Example for 622 wheels',
      partLeast: '120 mm',
      partGreatest: '150 mm',
      chassisLeast: '120 mm',
      chassisGreatest: '160 mm',
    },
  },
  replaced: {
    say: ({ sku, by }) => `${sku} is replaced by ${andList(by)}; the plan uses that.`,
    meaning: 'An old number was asked for, and its last replacement stands for it.',
    way: () => 'Nothing; check that the new number is what you want.',
    example: { sku: 'AB-CAP', by: ['AB-CAP-2'] },
  },
  'last-of-old-number': {
    say: ({ sku }) => `${sku} is an old number that is bought from what is left on the shelf.`,
    meaning: 'A replaced number can be bought while there is stock, and not ordered again.',
    way: () => 'Set it aside now.',
    example: { sku: 'AB-CAP' },
  },
  'substitute-used': {
    say: ({ specification, sku, name, ...cold }) =>
      `${name} (${sku}) is used for ${specification}, because the question allows an equal in its place. ${inTheCold(cold)}`,
    meaning: 'A supply that is said to be equal stands in for the specified one.',
    way: () => 'See that the customer and the maker of the fork agree to it.',
    example: {
      specification: 'light bath oil',
      sku: 'CD-BATH-L',
      name: 'bath oil',
      cold: 'thicker',
      coldRatio: 1.3,
    },
  },
  'equal-offered': {
    say: ({ specification, sku, name, price, days, ...cold }) =>
      `Instead of waiting for ${specification}: ${name} (${sku}) is said to be equal, costs ${price} and is ${days === 0 ? 'on the shelf' : `there in ${days} days`}. ${inTheCold(cold)}`,
    meaning: 'What is specified cannot be had at once, and an equal can. It is offered, never chosen silently.',
    way: () => 'Ask again with --substitutes to have it used.',
    example: {
      specification: 'light bath oil',
      sku: 'CD-BATH-L',
      name: 'bath oil',
      price: '9.80',
      days: 0,
      cold: 'equal',
      coldRatio: 1.02,
    },
  },
  notice: {
    say: ({ title, text }) => `${title}: ${text}`,
    meaning: 'A recall or safety notice speaks of this fork.',
    way: () => 'Read it whole and do what it says, before any other work.',
    example: {
      notice: 'example-notice',
      title: 'Safety notice',
      text: 'Check the crown.',
      serials: null,
      months: null,
    },
  },
  'notice-check': {
    say: ({ title, text, serials, months }) =>
      `A notice may speak of this fork${serials === null && months === null ? '' : ` (${[serials === null ? '' : `serial ${serials}`, months === null ? '' : `built ${months}`].filter((one) => one !== '').join(', ')})`}. ${title}: ${text}`,
    meaning:
      'Whether a notice applies depends on the serial number or the month of production, which the question does not give.',
    way: () => 'Read the serial number off the fork, and ask again with --serial, or with --built YYYY-MM.',
    example: {
      notice: 'example-recall',
      title: 'Recall',
      text: 'The crown is replaced by the maker.',
      serials: 'AB1000 to AB1999',
      months: null,
    },
  },
};
