import type { FaultParams } from '../../../plan/index.ts';
import type { WordsTable } from '../language.ts';
import { roleName } from './names.ts';
import { andList, nearestHint, orList } from './shared.ts';

/** What is wrong with a question before anything is worked out. */
export const faults: WordsTable<FaultParams> = {
  'bad-question': {
    say: ({ path, reason }) => `${path === '' ? 'The question' : path} is not right: ${reason}.`,
    meaning: 'A value of the question is not one that can be asked.',
    way: () => '`legwork help plan` shows how each value is written.',
    example: { path: '--travel', reason: 'at most three decimals' },
  },
  'unknown-chassis': {
    say: ({ id }) => `The catalogue has no chassis ${id}.`,
    meaning: 'A chassis is named by its id in the catalogue.',
    way: ({ nearest }) => `${nearestHint(nearest).trim()} \`legwork catalog list chassis\` shows them all.`.trim(),
    example: { id: 'exmaple-622', nearest: ['example-622', 'example-584'] },
  },
  'unknown-bike': {
    say: ({ id }) => `The catalogue has no bike ${id}.`,
    meaning: 'A bike is named by its id in the catalogue.',
    way: ({ nearest }) => nearestHint(nearest).trim() || 'Name the fork itself by its chassis.',
    example: { id: 'exmaple-trail', nearest: ['example-trail'] },
  },
  'unknown-size': {
    say: ({ bike, size }) => `${bike} has no frame size ${size}.`,
    meaning: 'Frame sizes are named as the maker of the bike names them.',
    way: ({ known }) => (known.length === 0 ? 'Leave the size out.' : `Sizes there: ${orList(known)}.`),
    example: { bike: 'example-trail', size: 'XXL', known: ['S', 'M', 'L'] },
  },
  'chassis-or-bike': {
    say: () => 'The question does not say which fork is in front of you.',
    meaning: 'The fork is named by its chassis, or by the bike it left the works with, not both.',
    way: ({ example }) => `Say it once: ${example}`,
    example: { example: '--chassis example-622' },
  },
  'travel-now-missing': {
    say: ({ chassis }) => `The question does not say what travel ${chassis} has now.`,
    meaning: 'A chassis comes with several travels. Only a bike says by itself which one its fork had.',
    way: ({ travels }) =>
      `Measure it or read the label, and add ${orList(travels.map((travel) => `--travel-now "${travel}"`))}.`,
    example: { chassis: 'example-622', travels: ['150 mm', '160 mm'] },
  },
  'bike-without-fork': {
    say: ({ bike }) => `The catalogue does not say which fork ${bike} left the works with.`,
    meaning: 'A bike can stand in for its fork only where the catalogue names that fork.',
    way: () => 'Name the fork itself: --chassis ID --travel-now LENGTH.',
    example: { bike: 'example-trail' },
  },
  'several-forks-of-bike': {
    say: ({ bike }) => `${bike} left the works with different forks.`,
    meaning: 'The fork of a bike can depend on frame size and month of production.',
    way: ({ sizes, built, choices }) => {
      const settle = [
        ...(sizes.length === 0 ? [] : [`--size ${orList(sizes)}`]),
        ...(built.length === 0 ? [] : [`--built YYYY-MM, ${orList(built)}`]),
      ];
      const named = `the fork itself: ${orList(choices)}.`;
      return settle.length === 0 ? `Name ${named}` : `Add ${andList(settle)}; or name ${named}`;
    },
    example: {
      bike: 'example-trail',
      sizes: ['m', 'l'],
      built: [],
      choices: ['--chassis example-622 --travel-now 140 (size m)', '--chassis example-622 --travel-now 150 (size l)'],
    },
  },
  'unknown-setting': {
    say: ({ setting, family }) => `${family} has no setting ${setting}.`,
    meaning: 'A setting is a length that is set when the fork is put together. Families name their settings.',
    way: ({ known }) => (known.length === 0 ? 'It has none.' : `Settings there: ${orList(known)}.`),
    example: { setting: 'stanchion', family: 'Example', known: ['stanchion-height'] },
  },
  'too-many-cases': {
    say: ({ cases, most }) => `What may be in the fork makes ${cases} cases; at most ${most} are worked out.`,
    meaning: 'Every combination of what slots may hold is a case of its own.',
    way: () => 'Look at one of the slots first, and say what is in it with --with.',
    example: { cases: 128, most: 64 },
  },
  'unknown-sku': {
    say: ({ sku }) => `The catalogue has no part, kit, pack or supply ${sku}.`,
    meaning: 'Everything that is bought or used is named by its SKU in the catalogue.',
    way: ({ nearest }) =>
      `${nearestHint(nearest).trim()} \`legwork catalog list parts\` shows the parts; kits and supplies are kinds of their own.`.trim(),
    example: { sku: 'AB-AIR-22', nearest: ['AB-AIR-2'] },
  },
  'gtin-mistyped': {
    say: ({ number, digit }) =>
      `${number} is no number of the catalogue, and no GTIN: after the other digits its last one would be ${digit}.`,
    meaning: 'A GTIN has 8, 12, 13 or 14 digits, and the last one checks the others.',
    way: () => 'Read the number again from the label.',
    example: { number: '6291041500214', digit: '3' },
  },
  'not-a-part': {
    say: ({ sku, kind }) => `${sku} is a ${kind}, and this asks about a part.`,
    meaning: 'Fit and use are stated for parts. Kits, packs and supplies have none of their own.',
    way: ({ parts }) => (parts.length === 0 ? 'Ask about a part.' : `Ask about what is in it: ${orList(parts)}.`),
    example: { sku: 'AB-KIT-2', kind: 'kit', parts: ['AB-AIR-2'] },
  },
  'unknown-service': {
    say: ({ id, family }) => `There is no service ${id} for ${family}.`,
    meaning: 'A service is named by its id, and belongs to families.',
    way: ({ known }) =>
      known.length === 0 ? 'The catalogue has no service for it.' : `Services there: ${orList(known)}.`,
    example: { id: 'lower-service', family: 'Example', known: ['example-lower-leg-service'] },
  },
  'unknown-slot': {
    say: ({ slot, family }) => `${family} has no slot ${slot}.`,
    meaning: 'A slot is a place in the fork that holds one part, once or several times. Families name their slots.',
    way: ({ known }) => `Slots there: ${known.join(', ')}.`,
    example: { slot: 'springs', family: 'Example', known: ['upper', 'lowers', 'spring'] },
  },
  'wrong-slot': {
    say: ({ sku, role, slot }) => `${sku} goes into ${role}, not into ${slot}.`,
    meaning: 'A part goes into the slot that is its role.',
    way: ({ sku, role }) => `Write ${role}=${sku}.`,
    example: { sku: 'AB-AIR-2', role: 'spring', slot: 'damper' },
  },
  'wrong-count': {
    say: ({ slot, found, most }) => `${found} in ${slot} cannot be: it takes ${most} at most.`,
    meaning: 'A slot takes a fixed number of pieces, or a spacer slot at most so many.',
    way: ({ slot, most }) => `Write ${slot}=SKU*${most}, or fewer where the slot holds spacers.`,
    example: { slot: 'volume-spacers', found: 9, most: 5 },
  },
  'slot-not-empty': {
    say: ({ slot }) => `The ${roleName(slot)} cannot be left out.`,
    meaning: 'Some slots must be filled for the fork to be a fork.',
    way: ({ slot }) => `Say what is in it: --with ${slot}=SKU.`,
    example: { slot: 'spring' },
  },
  'no-build-now': {
    say: ({ chassis, travel }) => `The catalogue knows no build of ${chassis} with ${travel} of travel.`,
    meaning: 'What the fork has now must be a factory build, or one that a listed spring explains.',
    way: ({ travels }) =>
      travels.length === 0
        ? 'Say what is in the fork with --with spring=SKU.'
        : `Its builds have ${orList(travels)}. If another spring is in, say which with --with spring=SKU.`,
    example: { chassis: 'example-622', travel: '145 mm', travels: ['150 mm', '160 mm'] },
  },
  'several-builds-now': {
    say: ({ chassis, travel }) => `Several builds of ${chassis} have ${travel}, and none is the usual one.`,
    meaning: 'More than one content of the fork explains its travel.',
    way: ({ choices }) => `Say which it is: ${orList(choices)}.`,
    example: {
      chassis: 'example-622',
      travel: '140 mm',
      choices: ['--with spring=AB-AIR-1', '--with spring=AB-AIR-2'],
    },
  },
  'other-travel-now': {
    say: ({ travel, gives }) => `The fork as described has a travel of ${gives}, and the question says ${travel}.`,
    meaning: 'The parts named with --with and the travel named with --travel-now contradict each other.',
    way: () => 'Measure the travel, or look at the number on the spring, and say what is so.',
    example: { travel: '150 mm', gives: '130 mm' },
  },
  'have-unit': {
    say: ({ sku, expected }) => `${sku} is counted in ${expected === 'piece' ? 'pieces' : expected}.`,
    meaning: 'What is at hand is given in the unit of the supply: pieces, mL or g.',
    way: ({ sku, expected, number }) =>
      `Write ${sku}*${number}${expected === 'piece' ? '' : expected}, if that is meant.`,
    example: { sku: 'CD-BATH', expected: 'mL', number: 20 },
  },
  'use-without-slot': {
    say: ({ sku, role }) => `${sku} is a ${roleName(role)}, and this fork has no place for one.`,
    meaning: 'A part can only be used where the family has a slot of its role.',
    way: () => 'Ask for a part whose role the family has, or for another chassis.',
    example: { sku: 'EF-COIL-6', role: 'coil' },
  },
};
