import type { Words, WordsTable } from '../language.ts';
import type { FlagParams } from '../params.ts';
import type { Coded } from '../say.ts';
import { bikeFlags } from './flags-bike.ts';
import { effectFlags } from './flags-effects.ts';
import { members } from './members.ts';
import { roleName } from './names.ts';
import { contentWords, counted, mm, orList } from './shared.ts';

const nothing = {} as const;

/** The sentence of a member whose code is a value of the flag. */
export function memberSentence(code: string, values: Coded['params']): string {
  const table: object = members;
  const words = (table as Readonly<Record<string, Words<Coded['params']>>>)[code];
  return words?.say(values) ?? code;
}

/** Flags: what blocks, what must be looked up or measured, what is worth knowing. */
export const flags: WordsTable<FlagParams> = {
  ...bikeFlags,
  ...effectFlags,
  'now-assumed': {
    say: ({ slot, held, others }) =>
      `Factory builds at this travel differ in the ${roleName(slot)}. This answer takes ${contentWords(held)} to be in the fork; it may be ${orList(others.map((other) => contentWords(other.slice(other.indexOf('=') + 1))))}.`,
    meaning:
      'Several factory builds have this travel and differ in a slot. What is not said is taken from the usual one.',
    way: ({ others }) =>
      `Look at the fork. If it holds the other one, ask again with ${orList(others.map((other) => `--with ${other.replace(/\*1$/, '')}`))}.`,
    example: { slot: 'damper', held: 'AB-DMP-1*1', others: ['damper=AB-DMP-2*1'] },
  },
  'now-derived': {
    say: ({ travel, spring, chassis }) =>
      `No factory build of ${chassis} has ${travel} mm. This answer takes ${spring === null ? 'the usual build' : `the usual build with ${spring}`} to be in the fork, because that alone gives ${travel} mm there.`,
    meaning:
      'No factory build has the travel the fork has now, and exactly one change of spring or travel spacers explains it.',
    way: () => 'Check the number on the spring, and say what is really inside with --with SLOT=SKU.',
    example: { travel: 140, spring: 'AB-AIR-2', chassis: 'Example for 622 wheels' },
  },
  'now-breaks-rule': {
    say: ({ rule, held, limit }) =>
      rule === 'volume-spacer-count'
        ? `The fork as described holds ${counted(Number(held), 'volume spacer')}; the greatest count listed for its spring and travel is ${limit}.`
        : rule === 'damper-stroke'
          ? `The fork as described has a damper with ${mm(held)} of stroke for ${mm(limit)} of travel.`
          : `The fork as described breaks the rule ${rule}: ${mm(held)} meets ${mm(limit)}.`,
    meaning: 'What is in the fork is a fact, so the question is answered; but it breaks a rule of the catalogue.',
    way: () => 'Check what is really in the fork before anything is ordered.',
    example: { rule: 'volume-spacer-count', held: 4, limit: 3 },
  },
  'fit-not-known': {
    say: ({ slot, sku, name, chassis }) =>
      `Nothing in the catalogue says whether ${name} (${sku}) fits ${chassis} as its ${roleName(slot)}. This plan rests on it.`,
    meaning: 'The catalogue is silent on this fit and does not claim to be complete there. Equal numbers are no proof.',
    way: ({ sku }) => `Ask the maker whether ${sku} fits before you order it.`,
    example: {
      slot: 'wipers',
      sku: 'CD-W-33',
      name: 'wiper 33',
      family: 'Example',
      chassis: 'Example for 622 wheels',
    },
  },
  'travel-limit-not-known': {
    say: ({ chassis, limit, travel }) =>
      `The ${limit} travel of ${chassis} is not in the catalogue. This plan gives it ${travel} mm.`,
    meaning: 'The fork maker has a limit on travel that this catalogue does not know.',
    way: ({ limit }) => `Ask the fork maker for the ${limit} travel of this chassis.`,
    example: { chassis: 'Example for 622 wheels', limit: 'greatest', travel: 160 },
  },
  'frame-limit': {
    say: ({ from, to }) =>
      `The fork gets longer in travel, ${from} mm to ${to} mm. What the frame allows is not part of this question.`,
    meaning: 'More travel usually means a longer fork, and a longer fork loads the head tube.',
    way: () => 'Ask the frame maker for the greatest travel or axle-to-crown of this frame, and stay within it.',
    example: { from: 130, to: 150 },
  },
  'damper-stroke-not-known': {
    say: ({ sku, name, travel }) =>
      `The stroke of ${name} (${sku}) is not in the catalogue. It must be at least ${travel} mm.`,
    meaning: 'A damper whose stroke is shorter than the travel takes the bottom-out or the top-out itself.',
    way: ({ sku }) => `Ask the maker for the stroke of ${sku}, or measure it.`,
    example: { sku: 'AB-DMP-1', name: 'damper', travel: 150 },
  },
  'damper-length-not-known': {
    say: ({ sku, name, chassis }) =>
      `Whether ${name} (${sku}) is short enough when closed for ${chassis} is not in the catalogue.`,
    meaning: 'A damper that is too long when closed takes the bottom-out itself.',
    way: ({ sku }) => `Ask the maker for the closed length of ${sku} and the room in the leg, or measure both.`,
    example: { sku: 'AB-DMP-1', name: 'damper', chassis: 'Example for 622 wheels' },
  },
  'spacers-not-known': {
    say: ({ count, greatest, travel }) =>
      `The maker's count of volume spacers at ${travel} mm is not in the catalogue. This plan leaves ${counted(count, 'spacer')}${greatest === null ? '' : ` (the greatest is ${greatest})`}.`,
    meaning: 'Volume spacers belong to a spring and a travel. Here the catalogue does not give the standard count.',
    way: () => "Look up the count in the maker's service document, and ask again with --spacers N.",
    example: { count: 1, greatest: 3, travel: 140 },
  },
  'spacers-off-standard': {
    say: ({ count, standard, greatest, travel }) =>
      `${counted(count, 'volume spacer')} as wished; the maker's standard at ${travel} mm is ${standard}${greatest === null ? '' : `, the greatest ${greatest}`}.`,
    meaning: "The wish asks for another count of volume spacers than the maker's standard.",
    way: ({ standard }) => `Leave out the wish, or ask for --spacers ${standard}, to have the standard.`,
    example: { count: 3, standard: 1, greatest: 3, travel: 150 },
  },
  'rests-on-silence': {
    say: ({ about, ...values }) =>
      `This plan rests on something that the catalogue does not say: ${memberSentence(about, values)}.`,
    meaning: 'Plans that rest on what nobody knows are allowed by the question, and this is one.',
    way: () => 'Ask the maker before you order.',
    example: { about: 'not-rated-motor-not-known', family: 'Example', bike: 'Example motor bike' },
  },
  'no-price': {
    say: ({ sku }) => `${sku} has no price in the catalogue or the stock file. The total is without it.`,
    meaning: 'A line without a price adds nothing, so the total is "at least".',
    way: ({ sku }) => `Ask the supplier for the price of ${sku}, and put it into the stock file.`,
    example: { sku: 'AB-CAP' },
  },
  'date-not-known': {
    say: ({ sku }) => `When ${sku} can be had is not known.`,
    meaning: 'The stock file has no row or no delivery time for it, so nobody can say when the job is ready.',
    way: ({ sku }) => `Ask the supplier when ${sku} comes, and put the days into the stock file.`,
    example: { sku: 'AB-DMP-1' },
  },
  waiting: {
    say: ({ sku, days, onShelf, packs }) =>
      `${sku}: ${onShelf ?? 0} free on the shelf, ${packs} needed; the rest comes in ${counted(days, 'day')}.`,
    meaning: 'There is not enough on the shelf that is not already promised, so the job waits for a delivery.',
    way: () => 'Order it now, or choose a plan that is ready sooner.',
    example: { sku: 'AB-AIR-2', days: 5, onShelf: 0, packs: 1 },
  },
  'no-labour-rate': {
    say: () => 'No shop file was given, so work has no price. The total is without it.',
    meaning: 'The price of an hour stands in the shop file.',
    way: () => 'Give a shop file with --shop FILE.',
    example: nothing,
  },
  'tool-not-at-hand': {
    say: ({ tool, price }) =>
      `The job needs ${tool}, which the shop file does not list as at hand${price === null ? '' : ` (costs ${price}, not in the total)`}.`,
    meaning: 'A tool that the job needs is not in the list of tools of the shop file.',
    way: () => 'Borrow or buy it before the fork is opened, or add it to the shop file if it is there.',
    example: { tool: 'seal driver 37 mm', price: '24.00' },
  },
  'used-part': {
    say: ({ sku }) => `${sku} is a used piece that is at hand.`,
    meaning: 'The question brings a used part, and the plan fits it.',
    way: () => 'Look it over for wear, scratches and dents before it goes in.',
    example: { sku: 'AB-AIR-1' },
  },
  hazard: {
    say: ({ name, hazard }) => `${name}: ${hazard}`,
    meaning: 'A supply that this job uses is dangerous to people or things; the words are those of the catalogue.',
    way: () => 'Work as the label of the supply says.',
    example: { name: 'isopropyl alcohol', hazard: 'Highly flammable. Keep it from flame and sparks.' },
  },
};
