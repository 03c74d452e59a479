import type { WordsTable } from '../language.ts';
import type { MemberParams } from '../params.ts';
import { roleName, traitName } from './names.ts';
import { boundWords, orList, rangeWords } from './shared.ts';

type BikeCode =
  | 'want-coil-rate'
  | 'want-axle-to-crown'
  | 'want-offset'
  | 'want-trait'
  | 'coil-rate-not-known'
  | 'trait-not-known'
  | 'chassis-trait-not-known'
  | 'frame-travel'
  | 'frame-axle-to-crown'
  | 'part-travel-limit'
  | 'not-rated-motor'
  | 'not-rated-motor-not-known'
  | 'not-rated-category'
  | 'not-rated-category-not-known'
  | 'dual-crown-not-approved'
  | 'dual-crown-not-approved-not-known'
  | 'wheel-of-bike'
  | 'tyre-room'
  | 'standard-not-known'
  | 'rotor-size'
  | 'rotor-greatest'
  | 'steerer-length'
  | 'notice-blocks';

const askTheMaker = 'Ask the maker, or ask again with --allow-unknown to see the plans that rest on it.';

const quoted = (values: readonly string[]): readonly string[] => values.map((value) => `"${value}"`);

/** Wishes about measures, and what a bike, a maker of parts or a notice has to say. */
export const bikeMembers: WordsTable<Pick<MemberParams, BikeCode>> = {
  'want-coil-rate': {
    say: ({ rate, rates }) =>
      `a coil of ${rate} N/mm${rates === undefined ? '' : `; coils of this family have ${orList(rates)}${rates.length === 0 ? ' stated' : ' N/mm'}`}`,
    meaning: 'The wish for a coil of a certain rate.',
    way: () => 'Ask for another rate.',
    example: { rate: 7.5 },
  },
  'want-axle-to-crown': {
    say: ({ least, greatest }) => `an axle-to-crown ${boundWords(least, greatest)}`,
    meaning: 'The wish for an axle-to-crown within bounds.',
    way: () => 'Ask for wider bounds.',
    example: { least: 510, greatest: 525 },
  },
  'want-offset': {
    say: ({ least, greatest, offsets }) =>
      `an offset ${boundWords(least, greatest)}${offsets === undefined || offsets.length === 0 ? '' : `; forks of this family have ${orList(offsets)} mm`}`,
    meaning: 'The wish for an offset within bounds.',
    way: () => 'Ask for wider bounds.',
    example: { least: 42, greatest: 46 },
  },
  'want-trait': {
    say: ({ trait, value, values, traits }) =>
      `${traitName(trait)}: ${value}${values === undefined || values.length === 0 ? '' : `; parts there have ${orList(quoted(values))}`}${traits === undefined ? '' : `, which no part states; stated there is ${orList(traits)}`}`,
    meaning: 'The wish for a part with a certain trait.',
    way: () => 'Ask for another trait, or leave it out.',
    example: { trait: 'damper.lockout', value: 'none' },
  },
  'coil-rate-not-known': {
    say: ({ sku, name }) => `of ${name} (${sku}) the rate must be stated, and the catalogue is silent`,
    meaning: 'A coil of a certain rate is wished for. Whether this coil has it nobody says: not a yes, and not a no.',
    way: () => askTheMaker,
    example: { sku: 'AB-COIL-X', name: 'coil' },
  },
  'trait-not-known': {
    say: ({ sku, name, trait }) =>
      `of ${name} (${sku}) the ${traitName(trait)} must be stated, and the catalogue is silent`,
    meaning: 'A trait is wished for or kept. Whether this part has it nobody says: not a yes, and not a no.',
    way: () => askTheMaker,
    example: { sku: 'AB-DMP-1', name: 'damper', trait: 'damper.lockout' },
  },
  'chassis-trait-not-known': {
    say: ({ chassis, trait }) => `of ${chassis} the ${traitName(trait)} must be stated, and the catalogue is silent`,
    meaning: 'A measure of the fork is wished for or kept. That of this chassis nobody says: not a yes, and not a no.',
    way: () => askTheMaker,
    example: { chassis: 'Example for 622 wheels', trait: 'offset' },
  },
  'frame-travel': {
    say: ({ bike, least, greatest }) =>
      `the travel must be within what the maker of the frame allows; ${bike} ${rangeWords(least, greatest)}`,
    meaning: 'The maker of a frame limits the travel of the fork in it.',
    way: () => 'Ask for a travel within the limits of the frame.',
    example: { bike: 'Example trail bike', least: 130, greatest: 150 },
  },
  'frame-axle-to-crown': {
    say: ({ bike, least, greatest }) =>
      `the axle-to-crown must be within what the maker of the frame allows; ${bike} ${rangeWords(least, greatest)}`,
    meaning: 'The maker of a frame limits the length of the fork in it.',
    way: () => 'Ask for a shorter fork.',
    example: { bike: 'Example trail bike', least: null, greatest: 540 },
  },
  'part-travel-limit': {
    say: ({ name, chassis, least, greatest }) =>
      `the maker of ${name} allows in ${chassis} a travel of ${[least === null ? '' : `at least ${least} mm`, greatest === null ? '' : `at most ${greatest} mm`].filter((one) => one !== '').join(' and ')}`,
    meaning: 'The maker of a spring or damper limits the travel too; the stricter limit holds.',
    way: () => 'Another part or another travel would be needed.',
    example: { slot: 'spring', name: 'an air cartridge', chassis: 'a fork', least: null, greatest: 150 },
  },
  'not-rated-motor': {
    say: ({ family, bike }) => `${bike} is motor-assisted, and ${family} is not rated for that`,
    meaning: 'A fork on a motor-assisted bike must be rated for it by its maker.',
    way: () => 'Another fork would be needed.',
    example: { family: 'Example', bike: 'Example motor bike' },
  },
  'not-rated-motor-not-known': {
    say: ({ family, bike }) =>
      `${bike} is motor-assisted, and the catalogue does not say that ${family} is rated for it`,
    meaning: 'A fork on a motor-assisted bike must be rated for it. Silence is not a yes.',
    way: () => askTheMaker,
    example: { family: 'Example', bike: 'Example motor bike' },
  },
  'not-rated-category': {
    say: ({ family, bike, category, rated }) =>
      `${bike} is of category of use ${category}, and ${family} is rated${rated === null ? ' lower' : ` up to ${rated}`}`,
    meaning: 'A fork must be rated for the category of use of the bike.',
    way: () => 'Another fork would be needed.',
    example: { family: 'Example', bike: 'Example park bike', category: 5, rated: 4 },
  },
  'not-rated-category-not-known': {
    say: ({ family, bike, category }) =>
      `${bike} is of category of use ${category}, and the catalogue does not say what ${family} is rated for`,
    meaning: 'A fork must be rated for the category of use of the bike. Silence is not a yes.',
    way: () => askTheMaker,
    example: { family: 'Example', bike: 'Example park bike', category: 5, rated: null },
  },
  'dual-crown-not-approved': {
    say: ({ family, bike }) => `${family} has two crowns, and the maker of ${bike} does not allow that`,
    meaning: 'A frame must be approved for a dual-crown fork.',
    way: () => 'A fork with one crown would be needed.',
    example: { family: 'Example', bike: 'Example park bike' },
  },
  'dual-crown-not-approved-not-known': {
    say: ({ family, bike }) =>
      `${family} has two crowns, and the catalogue does not say that ${bike} is approved for that`,
    meaning: 'A frame must be approved for a dual-crown fork. Silence is not a yes.',
    way: () => askTheMaker,
    example: { family: 'Example', bike: 'Example park bike' },
  },
  'wheel-of-bike': {
    say: ({ bike, wheel }) => `the ${wheel} wheel of ${bike} must go into the fork`,
    meaning: 'A fork must take the wheel of the bike, unless another wheel is wished for.',
    way: ({ wheel }) => `Ask for another wheel with --wheel, or for a fork that takes ${wheel}.`,
    example: { bike: 'Example trail bike', wheel: 622 },
  },
  'tyre-room': {
    say: ({ tyre, place, size, room }) => {
      const left = room === null ? '' : `; the chassis of now leaves ${room} mm`;
      return place === 'width'
        ? `the tyre ${tyre} must pass between the legs, ${size} mm wide${left}`
        : `the tyre ${tyre} must clear the ${place} at full compression, ${size} mm from the axle${left}`;
    },
    meaning: 'The tyre must clear crown, arch and legs when the fork is at the bottom.',
    way: () => 'A smaller tyre, or another chassis, would be needed.',
    example: { tyre: '60-622', place: 'crown', size: 371, room: 375 },
  },
  'standard-not-known': {
    say: ({ part, neighbour, measure }) =>
      `${roleName(part)} and ${roleName(neighbour)} must state the same standard of ${roleName(measure)}, and the catalogue is silent on one side`,
    meaning: 'Whether two parts go together shows only where both state their standard. Silence is not a yes.',
    way: () => askTheMaker,
    example: { agreement: 'hub-axle', part: 'hub', neighbour: 'chassis', measure: 'axle' },
  },
  'rotor-size': {
    say: ({ rotor, native }) =>
      `the rotor must be the size that the mount and its adaptor make room for${rotor === null || native === null ? '' : `; now it is ${rotor} mm on a mount for ${native} mm`}`,
    meaning: 'A brake mount is made for one rotor size; an adaptor makes room for a greater one. 200 mm is not 203 mm.',
    way: () => 'Another adaptor or rotor would be needed.',
    example: { rotor: 203, native: 180 },
  },
  'rotor-greatest': {
    say: ({ greatest }) =>
      `the rotor must be within the greatest that the fork allows${greatest === null ? '' : `; now that is ${greatest} mm`}`,
    meaning: 'The maker of a fork gives the greatest rotor.',
    way: () => 'A smaller rotor would be needed.',
    example: { greatest: 203 },
  },
  'steerer-length': {
    say: ({ bike, steerer, needed, uncut, renew }) =>
      `the steerer must reach through the head tube of ${bike} and the stem, ${needed} mm and what cups and spacers add${steerer === null ? '' : `; it is ${steerer} mm`}${uncut === null || steerer === null || uncut <= steerer ? '' : ` and is never extended; a new one comes ${uncut} mm long (--renew ${renew})`}`,
    meaning: 'A steerer is never extended. Spacers under the stem may come out.',
    way: () => 'Take spacers out, or another upper would be needed.',
    example: { bike: 'Example trail bike', steerer: 170, needed: 165, uncut: 260, renew: 'upper' },
  },
  'notice-blocks': {
    say: ({ title, text }) => `${title}: ${text}`,
    meaning: 'A recall or safety notice applies to this fork. It comes before any plan.',
    way: () => 'Do what the notice says, before any other work.',
    example: { notice: 'example-recall', title: 'Recall', text: 'The crown is replaced by the maker.' },
  },
};
