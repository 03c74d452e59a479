import type { WordsTable } from '../language.ts';
import type { FitParams } from '../params-fit.ts';
import { orList } from './shared.ts';

const because = (reason: string | null): string => (reason === null ? '' : ` ${reason}`);
const only = (not: boolean): string => (not ? 'only if the fork is not' : 'only if the fork is');
const plain = (word: string): string => word.replaceAll('-', ' ');

export const fits: WordsTable<FitParams> = {
  clause: {
    say: ({ part, chassis }) => `The catalogue says that ${part} fits ${chassis}.`,
    meaning: 'A maker states that the part fits.',
    way: () => '',
    example: { part: 'an air cartridge', chassis: 'a fork' },
  },
  silent: {
    say: ({ part, family }) =>
      `The catalogue does not say whether ${part} fits ${family} forks, and it does not claim to list everything there.`,
    meaning: 'Nobody states that the part fits, and nobody that it does not. Equal dimensions are not proof.',
    way: () => 'Ask the maker of the part.',
    example: { part: 'a wiper seal', role: 'wipers', family: 'some' },
  },
  denied: {
    say: ({ part, chassis, reason }) => `The maker says that ${part} does not fit ${chassis}: ${reason}`,
    meaning: 'A maker states that the part does not fit, and why.',
    way: () => 'Choose another part.',
    example: { part: 'an air cartridge', chassis: 'a fork', reason: 'The piston would strike the cap.' },
  },
  'dimension-contradicts': {
    say: ({ part, measure, own, neighbour, other, relation }) =>
      relation === 'equal'
        ? `${part}: its ${plain(measure)} is ${own}, but that of the ${plain(neighbour)} is ${other}.`
        : `${part}: its ${plain(measure)} is ${own}, but the ${plain(neighbour)} leaves room for at most ${other}.`,
    meaning: 'A dimension of the part contradicts the fork.',
    way: () => 'Choose a part with that dimension.',
    example: {
      part: 'an air cartridge',
      measure: 'ring-groove',
      own: '1.6 mm',
      neighbour: 'family',
      other: '1.2 mm',
      relation: 'equal',
    },
  },
  'other-generation': {
    say: ({ part, generations }) =>
      `${part} fits generation ${generations.join(', ')} of this family; the fork is of another.`,
    meaning: 'The part is for forks made at another time.',
    way: () => 'Choose the part of this generation.',
    example: { part: 'an air cartridge', generations: ['early'] },
  },
  'not-listed': {
    say: ({ part, role, family }) =>
      `${part} is not among the ${plain(role)} listed for ${family} forks, and that list is complete.`,
    meaning: 'The catalogue lists everything that fits in this role, and the part is not there.',
    way: () => 'Choose a part that is listed.',
    example: { part: 'an air cartridge', role: 'spring', family: 'some' },
  },
  'no-such-slot': {
    say: ({ role, family }) => `A ${family} fork has no place for ${plain(role)}.`,
    meaning: 'The fork has no slot of that role.',
    way: () => '',
    example: { role: 'coil', family: 'some' },
  },
  'body-listed': {
    say: ({ part, role, chassis }) => `${part} is the ${role} that ${chassis} is made with.`,
    meaning: 'An upper or lowers fits where a chassis lists it.',
    way: () => '',
    example: { part: 'lowers', role: 'lowers', chassis: 'a fork' },
  },
  'body-not-listed': {
    say: ({ part, chassis }) =>
      `${part} does not make ${chassis}; with it the fork is another chassis, if the catalogue lists one.`,
    meaning: 'Another upper or other lowers make another chassis.',
    way: () => 'See `legwork reach`: what the fork can become.',
    example: { part: 'lowers', role: 'lowers', chassis: 'a fork' },
  },
  'condition-generation': {
    say: ({ generations, not }) => `${only(not)} of generation ${generations.join(', or ')}.`,
    meaning: 'The fit hangs on the generation.',
    way: () => 'Read the serial number and ask again with --serial, or with --built and the month.',
    example: { generations: ['early built from the first to 2023-06'], not: false },
  },
  'condition-months': {
    say: ({ from, to, not }) =>
      `${only(not)} made ${from === null ? '' : `from ${from} `}${to === null ? 'or later' : `to ${to}`}.`,
    meaning: 'The fit hangs on the month of production.',
    way: () => 'Ask again with --built and the month.',
    example: { from: '2023-07', to: null, not: false },
  },
  'condition-serials': {
    say: ({ from, to, not }) => `${only(not)} numbered ${from} to ${to}.`,
    meaning: 'The fit hangs on the serial number.',
    way: () => 'Read the serial number and ask again with --serial.',
    example: { from: 'AB100', to: 'AB999', not: false },
  },
  'condition-dimension': {
    say: ({ measure, own, other }) =>
      `only if its ${plain(measure)} (${own}) is the fork's; some of these forks have ${other}.`,
    meaning: 'The fit hangs on a dimension that differs between generations.',
    way: () => 'Ask again with --serial or --built.',
    example: { measure: 'ring-groove', own: '1.6 mm', other: '1.2 mm' },
  },
  'condition-needs-slot': {
    say: ({ slot, anyOf, reason }) => `only with ${anyOf.join(' or ')} as ${plain(slot)}.${because(reason)}`,
    meaning: 'The part needs a certain part in another place.',
    way: () => 'A plan brings it along.',
    example: { slot: 'top-cap', anyOf: ['AB-CAP-2'], reason: null },
  },
  'condition-needs-part': {
    say: ({ sku, quantity, reason }) => `only together with ${quantity} x ${sku}.${because(reason)}`,
    meaning: 'The part needs another part.',
    way: () => 'A plan brings it along.',
    example: { sku: 'AB-LEVER', quantity: 1, reason: null },
  },
  'condition-excludes': {
    say: ({ other, reason }) => `only without ${plain(other)}. ${reason}`,
    meaning: 'The part cannot be together with another.',
    way: () => '',
    example: { other: 'volume-spacers', reason: 'They would strike each other.' },
  },
  'condition-neighbour': {
    say: ({ neighbour, measure, value, fitting }) =>
      `only where the ${plain(neighbour)} in the fork has a ${plain(measure)} of ${value}; ${
        fitting.length === 0 ? 'none that the catalogue lists for this fork states it' : `that is ${orList(fitting)}`
      }.`,
    meaning: 'The part must agree with what is in another slot.',
    way: () => 'A plan sees to it.',
    example: {
      agreement: 'spacer-seat',
      neighbour: 'spring',
      measure: 'spacer-seat',
      value: 'clip',
      fitting: ['AB-AIR-2'],
    },
  },
  'condition-replaced': {
    say: ({ by, usable }) =>
      `only from what is left: the number is replaced by ${by.join(' and ')}${usable ? '' : ', and old stock is not to be used'}.`,
    meaning: 'The number is replaced and cannot be ordered.',
    way: ({ by }) => `Ask for ${by.join(' and ')}.`,
    example: { by: ['AB-NEW'], usable: true },
  },
};
