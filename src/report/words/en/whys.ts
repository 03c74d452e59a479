import type { WordsTable } from '../language.ts';
import type { AgainstParams, WhyParams } from '../params.ts';
import { roleName } from './names.ts';
import { andList, counted } from './shared.ts';

const none = (): string => '';

/** Why a line stands as it does. */
export const whys: WordsTable<WhyParams> = {
  'asked-for': {
    say: ({ sku }) => `${sku} was asked for`,
    meaning: 'The question says that it is to be used.',
    way: none,
    example: { sku: 'AB-KIT' },
  },
  'cheapest-cover': {
    say: ({ sku }) => `with ${sku} the needs are covered at the least cost within the same days`,
    meaning: 'What is bought covers the needs at the least cost of all the ways to buy that are ready as soon.',
    way: none,
    example: { sku: 'AB-KIT' },
  },
  'only-offer': {
    say: ({ sku }) => `nothing else that can be bought covers what ${sku} covers`,
    meaning: 'Without it, the needs cannot be covered.',
    way: none,
    example: { sku: 'AB-AIR-2' },
  },
  'soonest-cover': {
    say: ({ sku }) => `without ${sku} the needs are covered later`,
    meaning: 'What is bought is there sooner than without it.',
    way: none,
    example: { sku: 'AB-KIT' },
  },
  'meets-specification': {
    say: ({ sku }) => `${sku} meets what the work specifies`,
    meaning: 'Supplies are chosen by the specification that the work names.',
    way: none,
    example: { sku: 'CD-BATH' },
  },
  'only-listed': {
    say: ({ slot, sku }) => `${sku ?? 'nothing'} is the only part to choose from for the ${roleName(slot)} here`,
    meaning: 'There is no other part to choose from for that slot.',
    way: none,
    example: { slot: 'top-cap', sku: 'AB-CAP', others: 0 },
  },
  unbeaten: {
    say: ({ slot, sku, others }) =>
      `of ${counted(others + 1, 'part')} for the ${roleName(slot)}, none leads to a better plan than ${sku ?? 'none'}`,
    meaning: 'Another part would do too, and its best plan is not better.',
    way: none,
    example: { slot: 'spring', sku: 'AB-AIR-2', others: 3 },
  },
  'only-one-that-goes': {
    say: ({ slot, sku, others }) =>
      `of ${counted(others + 1, 'part')} for the ${roleName(slot)}, ${sku ?? 'none'} is the only one that meets the wishes and the rules`,
    meaning: 'No other part in that slot leads to a plan.',
    way: none,
    example: { slot: 'spring', sku: 'AB-AIR-2', others: 5 },
  },
};

/** The nearest alternative, and the one fact against it. */
export const against: WordsTable<AgainstParams> = {
  'without-it-dearer': {
    say: ({ by, buys }) => `without it ${by} more${buys.length === 0 ? '' : `, buying ${andList(buys)}`}`,
    meaning: 'The cheapest way to buy without it, within the same days.',
    way: none,
    example: { by: '3.10', buys: ['AB-CW', 'CD-BATH-120'] },
  },
  'without-it-later': {
    say: ({ days, buys }) =>
      `without it ${days === null ? 'nobody knows when it is ready' : `ready in ${counted(days, 'day')}`}${buys.length === 0 ? '' : `, buying ${andList(buys)}`}`,
    meaning: 'The soonest way to buy without it.',
    way: none,
    example: { days: 5, buys: ['AB-AIR-2'] },
  },
  'alternative-plan': {
    say: ({ sku, money, more, minutes, days }) =>
      `with ${sku} the best plan costs ${money} (${more.startsWith('-') ? `${more.slice(1)} less` : `${more} more`}), takes ${minutes} min and is ready ${days === null ? 'nobody knows when' : days === 0 ? 'at once' : `in ${counted(days, 'day')}`}`,
    meaning: 'The best plan with the nearest alternative.',
    way: none,
    example: { sku: 'AB-AIR-3', money: '210.40', more: '10.10', minutes: 60, days: 0 },
  },
};
