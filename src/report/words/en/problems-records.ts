import type { ProblemParams } from '../../../catalog/index.ts';
import type { WordsTable } from '../language.ts';
import type { fileProblems } from './problems-files.ts';
import { senseProblems } from './problems-sense.ts';
import { nearestHint, orList } from './shared.ts';

/** Problems with what records say, alone and together: every code that is not about a file. */
export const recordProblems: WordsTable<Omit<ProblemParams, keyof typeof fileProblems>> = {
  ...senseProblems,
  'duplicate-id': {
    say: ({ id, other }) => `${id} is already taken, at ${other}.`,
    meaning: 'Every record has an id or SKU of its own.',
    way: () => 'Give one of them another id, or take one out.',
    example: { id: 'AB-AIR-2', other: 'parts.yaml:12' },
  },
  'unknown-reference': {
    say: ({ id, kind }) => `There is no ${id} among the ${kind}.`,
    meaning: 'A record names another that is not there.',
    way: ({ nearest }) => nearestHint(nearest).trim() || 'Add the record, or name one that is there.',
    example: { id: 'exmaple', kind: 'families', nearest: ['example'] },
  },
  'head-missing': {
    say: () => 'No file of the folder has the key catalog, with the name and the currency.',
    meaning: 'Exactly one file of a catalogue has the key `catalog`.',
    way: () => 'Add it to one file: catalog: { name: My catalogue, currency: EUR }',
    example: {},
  },
  'head-twice': {
    say: ({ other }) => `The key catalog stands at ${other} already.`,
    meaning: 'Exactly one file of a catalogue has the key `catalog`.',
    way: () => 'Take one of them out.',
    example: { other: 'general.yaml:1' },
  },
  'unknown-slot': {
    say: ({ slot, family }) => `${family} has no slot ${slot}.`,
    meaning: 'Slots are named by the family of the fork.',
    way: ({ known }) => `Slots there: ${known.join(', ')}.`,
    example: { slot: 'springs', family: 'example', known: ['upper', 'lowers', 'spring'] },
  },
  'wrong-role': {
    say: ({ sku, role, expected }) => `${sku} is ${role} by its role, and here goes ${expected}.`,
    meaning: 'A slot takes parts whose role is the slot.',
    way: ({ expected }) => `Name a part with the role ${expected}.`,
    example: { sku: 'AB-DMP-1', role: 'damper', expected: 'spring' },
  },
  'wrong-count': {
    say: ({ slot, found, expected }) => `${slot} holds ${found} here; the family says ${expected}.`,
    meaning: 'A slot takes so many pieces as its family says; a spacer slot at most so many.',
    way: () => 'Correct the quantity here, or the count in the family.',
    example: { slot: 'wipers', found: 1, expected: 2 },
  },
  'slot-left-empty': {
    say: ({ slot, build }) => `${build} says nothing about ${slot}, which may not be empty.`,
    meaning: 'A build gives every slot of the family a content.',
    way: ({ slot }) => `Name the part in ${slot}, in the build or under fitted.`,
    example: { slot: 'damper', build: 'chassis/example-622#builds[0]' },
  },
  'two-chassis': {
    say: ({ upper, lowers, other }) => `${upper} and ${lowers} together are ${other} already.`,
    meaning: 'Upper and lowers together name exactly one chassis.',
    way: () => 'Merge the two records, or give one its own upper or lowers.',
    example: { upper: 'AB-U', lowers: 'AB-L', other: 'example-622' },
  },
  'two-usual-builds': {
    say: ({ travel, count }) => `${count} builds at ${travel} are marked usual; exactly one must be.`,
    meaning: 'Where several builds have the same travel, one is the usual one, taken where a question does not say.',
    way: () => 'Mark the one that left the works most often with usual: true.',
    example: { travel: '150 mm', count: 0 },
  },
  'two-clauses': {
    say: ({ sku, chassis, other }) => `This clause of ${sku} matches ${chassis}, and ${other} does too.`,
    meaning: 'For each chassis a part has at most one clause that matches.',
    way: () => 'Narrow one of the clauses by chassis, wheel or axle.',
    example: { sku: 'AB-AIR-2', chassis: 'example-622', other: 'fits[0]' },
  },
  'axle-to-crown-end': {
    say: ({ end, given }) => `Travel is taken at the ${end} end, and axle-to-crown is given as ${given}.`,
    meaning: 'Taken at the extended end, axle-to-crown is given compressed; at the compressed end, extended.',
    way: () => 'Give the other length, or correct travel-end in the family.',
    example: { end: 'extended', given: 'extended' },
  },
  'spring-without-travel': {
    say: ({ sku }) => `This clause of ${sku} does not say what travel the spring gives.`,
    meaning: 'A spring gives a travel in each chassis it fits.',
    way: () => 'Add travel, or travels for a spring with several positions.',
    example: { sku: 'AB-AIR-2' },
  },
  'operation-cycle': {
    say: ({ cycle }) => `These operations wait for each other: ${cycle}.`,
    meaning: 'The order of work has no beginning where operations require or follow each other in a circle.',
    way: () => 'Take out one of requires, after or closed-by between them.',
    example: { cycle: 'cap-off, cap-on' },
  },
  'need-cycle': {
    say: ({ cycle }) => `These parts need each other in a circle: ${cycle}.`,
    meaning: 'What a part needs is counted with what that needs in turn.',
    way: () => 'Take out one of the needs.',
    example: { cycle: 'AB-1, AB-2' },
  },
  'wrong-unit': {
    say: ({ specification, unit, found }) => `${specification} is counted in ${unit}, and here is ${found}.`,
    meaning: 'An amount has the unit of its specification: mL, g, or pieces without a unit.',
    way: ({ unit }) => (unit === 'piece' ? 'Write a whole number.' : `Write a number, a blank and ${unit}.`),
    example: { specification: 'light-bath', unit: 'mL', found: '8' },
  },
  'dose-missing-side': {
    say: ({ dose, chassis, side, stated }) =>
      stated
        ? `The dose ${dose} of chassis ${chassis} gives no value for ${side}.`
        : `Chassis ${chassis} has no dose ${dose}, which this step asks for.`,
    meaning: 'An operation asks for a dose, on one side or both; the chassis gives it by side or as one amount.',
    way: ({ dose, side, stated }) =>
      stated
        ? 'Add the side to the dose; a leg that stays dry is 0 mL.'
        : `Add it to the chassis: doses: { ${dose}: { specification: ..., ${side}: ... } }. A leg that stays dry is 0 mL.`,
    example: { dose: 'bath-oil', chassis: 'example-622', side: 'left', stated: true },
  },
  'not-without-reason': {
    say: ({ sku }) => `${sku} does not fit here by this clause, which gives no reason.`,
    meaning: "A maker's own no carries its reason, so that people can be told.",
    way: () => 'Add reason to the clause.',
    example: { sku: 'AB-AIR-3' },
  },
  'spacers-standard-above-greatest': {
    say: ({ standard, greatest }) => `The standard count ${standard} is above the greatest ${greatest}.`,
    meaning: 'The standard count of volume spacers is at most the greatest.',
    way: () => 'Correct one of them.',
    example: { standard: 4, greatest: 3 },
  },
  'travel-range-empty': {
    say: ({ least, greatest }) => `The least travel ${least} is above the greatest ${greatest}.`,
    meaning: 'A chassis goes from its least to its greatest travel.',
    way: () => `Correct ${orList(['least', 'greatest'])}.`,
    example: { least: '160 mm', greatest: '120 mm' },
  },
};
