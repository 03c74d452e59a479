import { wheelWords } from '../../../quantity/index.ts';
import type { WordsTable } from '../language.ts';
import type { MemberParams } from '../params.ts';
import { bikeMembers } from './members-bike.ts';
import { roleName, traitName } from './names.ts';
import { andList, mm, orList, rangeWords } from './shared.ts';

/** Who has a say in a refusal. Each sentence states one fact and nothing more. */
export const members: WordsTable<MemberParams> = {
  ...bikeMembers,
  'want-travel': {
    say: ({ travel }) => `${travel} mm of travel`,
    meaning: 'The wish for a travel.',
    way: () => 'Ask for another travel.',
    example: { travel: 180 },
  },
  'toward-travel': {
    say: ({ travel }) => `a travel towards ${travel} mm`,
    meaning: 'What is left of a travel that was given up: another travel on the same side of the one the fork has.',
    way: () => 'Ask for another travel.',
    example: { travel: 180 },
  },
  'want-wheel': {
    say: ({ wheel, wheels }) =>
      `a ${wheelWords(wheel)} wheel${wheels === undefined ? '' : `; forks of this family take ${orList(wheels)}`}`,
    meaning: 'The wish for a wheel, by its bead-seat diameter in mm.',
    way: () => 'Ask for another wheel, or leave the wheel out.',
    example: { wheel: 584 },
  },
  'want-spacers': {
    say: ({ spacers, most }) =>
      `${spacers} volume spacers${most === undefined ? '' : `; the fork takes at most ${most}`}`,
    meaning: 'The wish for a count of volume spacers.',
    way: () => "Leave it out; the maker's standard count is then taken.",
    example: { spacers: 3 },
  },
  'want-use': {
    say: ({ sku, name }) => (sku === name ? `use ${sku}` : `use ${sku}, ${name}`),
    meaning: 'The wish to use a certain part.',
    way: ({ sku }) => `Leave out --use ${sku}.`,
    example: { sku: 'AB-AIR-2', name: 'air cartridge' },
  },
  'want-keep': {
    say: ({ slot }) => `keep the ${roleName(slot)} as it is`,
    meaning: 'The wish to leave a slot as it is.',
    way: ({ slot }) => `Leave out --keep ${slot}.`,
    example: { slot: 'spring' },
  },
  'want-renew': {
    say: ({ slot, possible }) =>
      possible
        ? `renew the ${roleName(slot)}`
        : `renew the ${roleName(slot)}, for which this family has no operation in the catalogue`,
    meaning: 'The wish to have a slot renewed.',
    way: ({ slot }) => `Leave out --renew ${slot}.`,
    example: { slot: 'wipers', possible: true },
  },
  'want-service': {
    say: ({ service }) => `the service ${service}`,
    meaning: 'The wish to have a service done.',
    way: ({ service }) => `Leave out --service ${service}.`,
    example: { service: 'example-lower-leg' },
  },
  'want-onto': {
    say: ({ bike }) => `the fork on the bike ${bike}`,
    meaning: 'The wish that the fork suit a bike.',
    way: () => 'Name another bike, or leave out --onto.',
    example: { bike: 'Example' },
  },
  'kept-trait': {
    say: ({ trait, value }) => `${traitName(trait)} stays ${value}, because the wish does not name another`,
    meaning: 'A plan keeps what the wish does not name: wheel, axle, offset, steerer, brake mount, kind of spring.',
    way: () => 'Name another, or a part that brings another with --use SKU.',
    example: { trait: 'wheel', value: '622' },
  },
  'kept-steerer': {
    say: ({ slot, steerer, uncut }) =>
      `the steerer as it is cut${steerer === null ? '' : `, ${steerer} mm`}; a new ${roleName(slot)} brings one${uncut === null ? '' : ` of ${uncut} mm`}`,
    meaning: 'A steerer is never extended; a new one comes uncut.',
    way: ({ slot }) => `Ask with --renew ${slot}.`,
    example: { slot: 'upper', steerer: 175, uncut: 250 },
  },
  'part-fits': {
    say: ({ slot, complete }) =>
      complete
        ? `the ${roleName(slot)} must be one that is listed for the chassis, and that list is complete`
        : `the ${roleName(slot)} must not be one that a maker says does not fit the chassis`,
    meaning: 'What goes into the fork must fit the chassis it becomes.',
    way: () => 'Another chassis or another part would be needed.',
    example: { slot: 'spring', complete: true },
  },
  'fit-not-known': {
    say: ({ slot }) => `the ${roleName(slot)} must be known to fit, and the catalogue is silent on the rest`,
    meaning: 'The catalogue does not say whether the parts left over fit, and does not claim to be complete there.',
    way: () => 'Ask the maker, or ask again with --allow-unknown to see the plans that rest on it.',
    example: { slot: 'wipers' },
  },
  dimension: {
    say: ({ agreement, part, neighbour, measure }) =>
      `${roleName(part)} and ${roleName(neighbour)} must agree in ${roleName(measure)} (rule ${agreement})`,
    meaning: 'Parts that touch must agree in what they touch with. `legwork explain dimension` lists every such rule.',
    way: () => 'Another part on either side would be needed.',
    example: { agreement: 'wiper-seat', part: 'wipers', neighbour: 'lowers', measure: 'seal-seat' },
  },
  'maker-says-no': {
    say: ({ sku, name, chassis, reason }) =>
      `the maker says that ${name} (${sku}) does not fit ${chassis}${reason === null ? '' : `: ${reason}`}`,
    meaning: "A maker's own no, with its reason. It beats every other clause.",
    way: () => 'Another part would be needed.',
    example: { sku: 'AB-AIR-3', name: 'air cartridge', chassis: 'Example for 584 wheels', reason: 'the shaft touches' },
  },
  'dimension-of-part': {
    say: ({ sku, name, measure, own, neighbour, other, relation }) =>
      `the ${roleName(measure)} of ${name} (${sku}) must be ${relation === 'equal' ? 'that' : 'at most the room'} of the ${roleName(neighbour)}; it is ${own}, and there it is ${other}`,
    meaning:
      'A part goes in only where its measures agree with the body. `legwork explain dimension` lists every such rule.',
    way: () => 'Another part or another chassis would be needed.',
    example: {
      sku: 'AB-DMP-2',
      name: 'a damper',
      measure: 'closed-length',
      own: '270 mm',
      neighbour: 'chassis',
      other: '262 mm',
      relation: 'at-most',
    },
  },
  'other-generation': {
    say: ({ sku, name, generations }) => `${name} (${sku}) is for the generation ${orList(generations ?? [])} only`,
    meaning: 'A statement that names generations speaks of no other.',
    way: () => 'Take the part that is listed for this generation.',
    example: { sku: 'AB-AIR-2', name: 'air cartridge', generations: ['second'] },
  },
  'fit-hangs-on': {
    say: ({ sku, name, on }) => `${name} (${sku}) fits only with ${orList(on)}, which is not known of this fork`,
    meaning: 'A statement hangs on a generation, month or serial number that the question does not settle.',
    way: () => 'Say --serial or --built, or ask again with --allow-unknown to see the plans that rest on it.',
    example: { sku: 'AB-AIR-2', name: 'air cartridge', on: ['generation second'] },
  },
  needs: {
    say: ({ sku, name, slot, reason }) =>
      `${name} (${sku}) needs certain ${roleName(slot)}${reason === null ? '' : `: ${reason}`}`,
    meaning: 'A part needs another beside it.',
    way: ({ sku }) => `Do without ${sku}, or let the other part change too.`,
    example: { sku: 'AB-AIR-3', name: 'air cartridge', slot: 'top-cap', reason: 'the shaft stands higher' },
  },
  excludes: {
    say: ({ sku, name, slot, reason }) =>
      `${name} (${sku}) cannot stand beside some ${roleName(slot)}${reason === null ? '' : `: ${reason}`}`,
    meaning: 'A part excludes another.',
    way: ({ sku }) => `Do without ${sku}, or let the other part change too.`,
    example: { sku: 'AB-AIR-3', name: 'air cartridge', slot: 'volume-spacers', reason: 'the chamber is full' },
  },
  'travel-range': {
    say: ({ chassis, least, greatest }) =>
      `the travel must be within the limits of the chassis; ${chassis} ${rangeWords(least, greatest)}`,
    meaning: 'The maker gives each chassis a least and a greatest travel.',
    way: () => 'Ask for a travel within the limits.',
    example: { chassis: 'Example for 622 wheels', least: 120, greatest: 160 },
  },
  'spring-travel': {
    say: ({ springs, family }) =>
      `travel is what the spring gives in the chassis; ${springs === 1 ? 'the one spring' : `the ${springs} springs`} of the catalogue for ${family} ${springs === 1 ? 'was' : 'were'} gone through`,
    meaning: 'Travel comes from the spring, less the travel spacers on its shaft.',
    way: () => 'Ask for a travel that a listed spring gives.',
    example: { springs: 6, family: 'Example' },
  },
  'damper-stroke': {
    say: ({ sku, stroke }) =>
      sku === null || stroke === null
        ? 'the stroke of the damper must be at least the travel'
        : `the stroke of the damper must be at least the travel; ${sku}, in the fork now, has ${mm(stroke)}`,
    meaning: 'A damper with less stroke than the travel takes the blow itself.',
    way: () => 'Another damper would be needed.',
    example: { sku: 'AB-DMP-1', stroke: 155 },
  },
  'volume-spacer-count': {
    say: () => "the count of volume spacers must be the maker's for that spring and travel, or within the greatest",
    meaning: 'Volume spacers belong to spring and travel: the standard count, or a wished one up to the greatest.',
    way: () => 'Ask for another count, or none.',
    example: {},
  },
  'no-operation': {
    say: ({ slot, family }) => `no operation in the catalogue changes the ${roleName(slot)} of ${family}`,
    meaning: 'A slot can only change where the catalogue describes the work.',
    way: () => 'Leave that slot as it is, or add the operation to the catalogue.',
    example: { slot: 'damper', family: 'Example' },
  },
  'not-obtainable': {
    say: ({ skus, unmet, idle }) =>
      [
        skus.length > 0 ? `${andList(skus)} cannot be bought: not enough on the shelf, and no delivery` : [],
        unmet.length > 0 ? `no supply in the catalogue is ${andList(unmet)}, which the work asks for` : [],
        skus.length + unmet.length === 0 && idle.length > 0 ? `nothing in the job takes ${andList(idle)}` : [],
      ]
        .flat()
        .join('; ') || 'something that the job needs cannot be bought',
    meaning:
      'There is a build that would do, but something it needs is not on the shelf and cannot be ordered, or what is to be used serves nothing in it.',
    way: () => 'Find it elsewhere and say so with --have SKU, or ask the supplier.',
    example: { skus: ['AB-L-559'], unmet: [], idle: [] },
  },
};
