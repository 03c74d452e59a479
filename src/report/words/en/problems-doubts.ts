import type { ProblemParams } from '../../../catalog/index.ts';
import type { WordsTable } from '../language.ts';
import { memberSentence } from './flags.ts';
import { roleName, traitName } from './names.ts';
import { andList, counted, orList } from './shared.ts';

type DoubtCode =
  | 'build-breaks-rule'
  | 'factory-part-without-clause'
  | 'bike-fork-without-build'
  | 'bike-fork-breaks-rule'
  | 'drawing-contradicts'
  | 'travel-out-of-reach'
  | 'travel-outside-range'
  | 'axle-to-crown-too-short'
  | 'shared-part-disagrees'
  | 'clause-matches-nothing'
  | 'clause-without-slot'
  | 'spacers-above-slot'
  | 'need-cannot-be-met'
  | 'part-fits-nothing'
  | 'kit-serves-nothing'
  | 'replacement-does-not-fit'
  | 'slot-without-parts'
  | 'measure-not-stated'
  | 'trait-not-stated'
  | 'spacers-not-stated'
  | 'specification-without-supply'
  | 'supply-serves-nothing'
  | 'dose-not-asked'
  | 'dose-not-stated'
  | 'closer-without-opener'
  | 'spring-cannot-give-travel'
  | 'spacers-contradicted'
  | 'oil-breaks-specification'
  | 'oil-not-thinning'
  | 'oils-differ'
  | 'torque-out-of-reach'
  | 'tool-does-not-fit';

/** The rule that is broken, with what it asks for. A reason that the catalogue gives may end in a full stop of its own. */
const ruleWords = (about: string, rule: Parameters<typeof memberSentence>[1], values: readonly string[]): string =>
  `the rule ${about}: ${memberSentence(about, rule).replace(/\.$/, '')}.${sides(values)}`;

/** Both sides of a rule, where its own words do not give them. */
const sides = (values: readonly string[]): string => (values.length === 0 ? '' : ` Here: ${values.join(', ')}.`);

/** What an author should look at, though answers can be worked out. */
export const doubtProblems: WordsTable<Pick<ProblemParams, DoubtCode>> = {
  'spring-cannot-give-travel': {
    say: ({ sku, chassis, travel, spacers, left, reached }) =>
      `${sku} claims ${travel} in ${chassis}. With ${counted(spacers, 'volume spacer')} ${
        left === null
          ? `2800 N at its least pressure press it to ${reached ?? 0} mm and no further`
          : left > 0
            ? `${left} mL of its positive chamber are left there, too little to be pressed into`
            : `its positive chamber is used up before that: ${Math.abs(left)} mL are lacking`
      }.`,
    meaning:
      'Bore, positive chamber and the greatest count of volume spacers leave no room for the travel that a clause claims, or so little that the clearance test of ISO 4210-6 (2800 N at the least pressure) does not press the fork to its end.',
    way: () => 'Correct bore, positive-volume, the volume of a spacer, the greatest count or the travel.',
    example: { sku: 'AB-AIR-2', chassis: 'example-622', travel: '160 mm', spacers: 3, left: -4.2, reached: null },
  },
  'spacers-contradicted': {
    say: ({ sku, chassis, travel, standard, nearest, other, otherTravel, otherStandard }) =>
      `${sku} takes ${counted(standard, 'volume spacer')} at ${travel} in ${chassis}. From the ${otherStandard} of ${other} at ${otherTravel} the gas law leads to ${nearest}${nearest > standard ? ': so few are softer at the end of the stroke' : ': so many are firmer at the end of the stroke'}.`,
    meaning:
      'The standard count of volume spacers differs by more than one from the count that keeps the end of the stroke of a longer spring of the same maker in that chassis. Makers choose for their own reasons; a plan fits their count all the same, with a note for the desk.',
    way: () => "Look the counts up in the maker's document, and see bore, chambers and the volume of a spacer.",
    example: {
      sku: 'AB-AIR-2',
      chassis: 'example-622',
      travel: '130 mm',
      standard: 2,
      nearest: 4,
      other: 'AB-AIR-3',
      otherTravel: '150 mm',
      otherStandard: 1,
    },
  },
  'tool-does-not-fit': {
    say: ({ operation, piece, asks, tool, has }) =>
      `${operation}: the ${piece} asks for ${asks}, and ${tool}, which is named for it, has ${has}.`,
    meaning:
      'A tool that a step names does not go with what it is named for: a cap screw to ISO 4762 has one width across flats for its thread, and ring pliers are made for a range of bores (DIN 5256).',
    way: () => 'Name the tool that fits, or correct the thread, the bore or the measures of the tool.',
    example: {
      operation: 'example-clamp',
      piece: 'M5 clamp bolt',
      asks: 'a hex key of 4 mm',
      tool: 'hex-5',
      has: '5 mm',
    },
  },
  'torque-out-of-reach': {
    say: ({ operation, fastener, torque, tools }) =>
      `${operation} tightens the ${fastener} to ${torque}, and no torque tool that it names is made for that: ${andList(tools)}.`,
    meaning:
      'A step names torque tools, and their range from lowest mark to greatest torque (ISO 6789) does not hold what it tightens to.',
    way: () => 'Name the tool that reaches, or correct the torque or the range of the tool.',
    example: { operation: 'example-cap-on', fastener: 'top cap', torque: '28 N·m', tools: ['torque-low'] },
  },
  'oil-breaks-specification': {
    say: ({ sku, specification, found, least, greatest }) =>
      `${sku} claims to meet ${specification}, which is ${least} to ${greatest} mm²/s at 40 °C, and has ${found} mm²/s.`,
    meaning: 'An oil lies outside the viscosities of the specification that it claims to meet.',
    way: () => 'Correct the viscosity by the data sheet, or take the specification out of `meets`.',
    example: { sku: 'AB-OIL', specification: 'light-bath', found: 32, least: 22, greatest: 27 },
  },
  'oil-not-thinning': {
    say: ({ sku, at40, at100 }) => `${sku} has ${at40} mm²/s at 40 °C and ${at100} mm²/s at 100 °C.`,
    meaning: 'Every oil grows thinner as it is warmed, so one of the two values is wrong.',
    way: () => 'Correct the viscosity by the data sheet.',
    example: { sku: 'AB-OIL', at40: 24, at100: 51 },
  },
  'oils-differ': {
    say: ({ sku, at40, other, otherAt40, specification }) =>
      `${sku} and ${other} both claim to meet ${specification}, with ${at40} and ${otherAt40} mm²/s at 40 °C.`,
    meaning: 'Two oils that are said to serve one specification differ at 40 °C by more than a tenth.',
    way: () =>
      'See the makers’ words. Where both are right, state the `viscosity` of the specification; else take it out of `meets` of one.',
    example: { sku: 'AB-OIL', at40: 32, other: 'CD-OIL', otherAt40: 24, specification: 'light-bath' },
  },
  'build-breaks-rule': {
    say: ({ build, about, values, ...rule }) => `The build at ${build} breaks ${ruleWords(about, rule, values)}`,
    meaning:
      'A factory build keeps the rules of its own catalogue, every part in it judged as if it were put in today.',
    way: ({ about }) =>
      `Correct the build or the record that the rule speaks of. \`legwork explain ${about}\` says what the rule is.`,
    example: {
      build: '150 mm',
      about: 'dimension',
      values: ['AB-V-2 has clip-b', 'AB-AIR-2 clip-a'],
      agreement: 'spacer-seat',
      part: 'volume-spacers',
      neighbour: 'spring',
      measure: 'spacer-seat',
    },
  },
  'factory-part-without-clause': {
    say: ({ sku, slot, chassis, build }) =>
      `The build at ${build} holds ${sku} as its ${roleName(slot)}, and no clause of ${sku} says that it fits ${chassis}.`,
    meaning: 'A part that a fork left the works with fits it. Without a clause no plan can put it in again.',
    way: ({ sku }) => `Add a clause to fits of ${sku}, or correct the build.`,
    example: { sku: 'AB-W-34', slot: 'wipers', chassis: 'example-622', build: '150 mm' },
  },
  'bike-fork-without-build': {
    say: ({ bike, fork, fault }) =>
      fault === 'several-builds'
        ? `${bike} left the works with ${fork}, and several builds of it come to that.`
        : fault === 'other-travel'
          ? `${bike} left the works with ${fork}, and what is named under with gives another travel.`
          : `${bike} left the works with ${fork}, and the catalogue builds none.`,
    meaning: 'The fork of a bike is a factory build of its chassis, or comes from one by what stands under `with`.',
    way: () => 'Correct chassis, travel or with of the fork, or add the build to the chassis.',
    example: { bike: 'example-trail', fork: 'example-622 at 155 mm', fault: 'no-build' },
  },
  'bike-fork-breaks-rule': {
    say: ({ on, fork, about, values, ...rule }) =>
      `On ${on} the fork that it left the works with (${fork}) breaks ${ruleWords(about, rule, values)}`,
    meaning: 'The fork that a bike left the works with suits it, judged as if it were put in today.',
    way: ({ about }) => `Correct the bike, its limits or the fork. \`legwork explain ${about}\` says what the rule is.`,
    example: {
      on: 'example-trail, size m',
      fork: 'example-622 at 150 mm',
      about: 'frame-travel',
      values: [],
      bike: 'Example trail bike',
      least: 120,
      greatest: 140,
    },
  },
  'drawing-contradicts': {
    say: ({ bike, sizes, measure, drawn, worked }) =>
      `${bike}${sizes.length === 0 ? '' : `, size ${orList(sizes)}`}: the drawing has a ${measure} of ${drawn} mm, and reach, head tube, fork and angles come to ${worked} mm.`,
    meaning:
      'Stack and wheelbase of a drawing follow from the rest of it: head tube, lower cup, fork, head angle, chainstay, drop and wheels. More than 5 mm apart, one of these is wrong.',
    way: () =>
      'Compare each value with the drawing. Drawn with another fork, it says so by axle-to-crown and offset in the row.',
    example: { bike: 'example-trail', sizes: ['m'], measure: 'stack', drawn: 601, worked: 612 },
  },
  'travel-out-of-reach': {
    say: ({ sku, chassis, travel, rules }) =>
      `${sku} gives ${travel} in ${chassis}, and no build of it reaches that${rules.length === 0 ? '' : `: ${andList(rules)} ${rules.length === 1 ? 'stands' : 'stand'} against it`}.`,
    meaning:
      'A travel that a spring claims in a chassis, within its limits, is one that some plan reaches there from a factory build, whatever stands on the shelf.',
    way: ({ sku, chassis, from }) =>
      `\`legwork plan --chassis ${chassis} --travel-now ${from} --use ${sku}\` shows what stands in the way. Correct that record, or the clause.`,
    example: { sku: 'AB-AIR-2', chassis: 'example-622', travel: '160 mm', from: 150, rules: ['damper-stroke'] },
  },
  'travel-outside-range': {
    say: ({ sku, chassis, travel, limit, says }) =>
      `${sku} gives ${travel} in ${chassis}, where ${says === 'chassis' ? 'the chassis' : 'its own maker'} allows ${limit}.`,
    meaning:
      'A clause says that a spring fits, and what it gives there is beyond what the chassis or the clause itself allows.',
    way: () => 'Narrow the clause, give the reason with not: true, or correct the limits.',
    example: { sku: 'AB-AIR-3', chassis: 'example-622', travel: '170 mm', limit: 'at most 160 mm', says: 'chassis' },
  },
  'axle-to-crown-too-short': {
    say: ({ chassis, compressed, radius, of }) =>
      of === 'wheel'
        ? `At full compression ${chassis} is ${compressed} from axle to crown, and the rim of its wheel has a radius of ${radius}.`
        : `At full compression ${chassis} is ${compressed} from axle to crown, and below the crown it claims room for a tyre of ${radius} radius.`,
    meaning:
      'At full compression the crown race seat stands higher than the room below the crown, and that clears the wheel.',
    way: () => 'Correct axle-to-crown, the greatest travel, the wheel or tyre-room.',
    example: { chassis: 'example-622', compressed: '370 mm', radius: '374 mm', of: 'tyre' },
  },
  'shared-part-disagrees': {
    say: ({ sku, fact, chassis, own, other, theirs }) =>
      `${chassis} and ${other} share ${sku}: the ${fact.replaceAll('-', ' ')} is ${own} here and ${theirs} there.`,
    meaning:
      'The steerer belongs to the upper; axle, brake mount and arch to the lowers. Chassis that share one say the same.',
    way: () => 'Correct one of the chassis, or give it an upper or lowers of its own.',
    example: {
      sku: 'AB-L-622',
      fact: 'brake-mount',
      chassis: 'example-622',
      own: 'post',
      other: 'example-622-s',
      theirs: 'tab',
    },
  },
  'clause-matches-nothing': {
    say: ({ sku, family }) => `No chassis of ${family} is one that this clause of ${sku} speaks of.`,
    meaning: 'All that a clause names must hold together: chassis, wheel, axle and generation.',
    way: () => 'Correct what the clause names, or take it out.',
    example: { sku: 'AB-AIR-2', family: 'example' },
  },
  'clause-without-slot': {
    say: ({ sku, role, family }) => `${family} has no slot that takes ${sku}, whose role is ${role}.`,
    meaning: 'A part goes into the slots that take its role. A clause for a family without such a slot says nothing.',
    way: () => 'Correct the role of the part or the family of the clause, or add the slot to the family.',
    example: { sku: 'AB-W-34', role: 'wiper', family: 'example' },
  },
  'spacers-above-slot': {
    say: ({ sku, standard, most, family }) =>
      `${sku} comes with ${standard} volume spacers by this clause, and ${family} takes at most ${most}.`,
    meaning: 'The standard count of volume spacers is one that the slot can hold.',
    way: () => 'Correct the standard count, or most in the slot of the family.',
    example: { sku: 'AB-AIR-2', standard: 5, most: 4, family: 'example' },
  },
  'need-cannot-be-met': {
    say: ({ sku, slot, anyOf, chassis }) =>
      `${sku} fits ${chassis} and needs ${orList(anyOf)} as its ${roleName(slot)}, which ${anyOf.length === 1 ? 'does not fit' : 'do not fit'} there.`,
    meaning: 'Where a part fits, something that it needs fits too. Otherwise no plan can put it in.',
    way: () => 'Add a clause to what it needs, name another part under any-of, or narrow the clause.',
    example: { sku: 'AB-AIR-3', slot: 'top-cap', anyOf: ['AB-CAP-HIGH'], chassis: 'example-584' },
  },
  'part-fits-nothing': {
    say: ({ sku, role }) => `${sku} (${roleName(role)}) fits no chassis, and no other record names it.`,
    meaning: 'A part that goes in nowhere, is in no build and no kit, and that nothing needs, is in no answer.',
    way: () => 'Correct its role, its clauses or the measures that speak against it, or take it out.',
    example: { sku: 'AB-DMP-1', role: 'damper' },
  },
  'kit-serves-nothing': {
    say: ({ sku }) => `Nothing in ${sku} goes into any fork or is poured by any step.`,
    meaning: 'A kit is bought for what is in it. One with nothing that a job can need is never bought.',
    way: () => 'Correct its contents, or take it out.',
    example: { sku: 'AB-K-1' },
  },
  'replacement-does-not-fit': {
    say: ({ sku, by, chassis }) =>
      `${sku} fits ${chassis} and is replaced by ${andList(by)}, which ${by.length === 1 ? 'does not' : 'do not'}.`,
    meaning: 'What stands for an old number fits where that fitted. Otherwise nothing can be ordered for that fork.',
    way: () => 'Add a clause to the new number, or name the families or generations that the replacement speaks of.',
    example: { sku: 'AB-AIR-2', by: ['AB-AIR-2B'], chassis: 'example-584' },
  },
  'slot-without-parts': {
    say: ({ slot, family }) => `Nothing is listed for the slot ${slot} of ${family}, and no build fills it.`,
    meaning: 'A slot is there for what goes into it: a part with a clause for the family.',
    way: () => 'Add the part or its clause, correct the role, or take the slot out.',
    example: { slot: 'travel-spacers', family: 'example' },
  },
  'measure-not-stated': {
    say: ({ id, measure, role, sku }) =>
      `${id} does not state its ${roleName(measure)}, as others of the family do. So the ${roleName(role)} (${sku} and others) are not compared with it.`,
    meaning:
      'A measure that one side leaves out is not compared. In a role that is declared complete that is easily overlooked.',
    way: ({ measure, id }) => `Add ${measure} to ${id}.`,
    example: { id: 'example-622', measure: 'damper-room', role: 'damper', sku: 'AB-DMP-1' },
  },
  'trait-not-stated': {
    say: ({ sku, trait, family }) =>
      `${sku} does not state ${traitName(trait)}, which a plan for ${family} keeps and others of its list state.`,
    meaning: 'Where a trait is kept, a part that does not state it is passed over: not stated is not known.',
    way: ({ trait }) => `Add the trait, with none for nothing: traits: { ${trait}: none }.`,
    example: { sku: 'AB-DMP-1', trait: 'lockout', family: 'example' },
  },
  'spacers-not-stated': {
    say: ({ sku, travel }) =>
      `${sku} has a seat for volume spacers, and its clause does not say how many belong to it at ${travel}.`,
    meaning: 'In a complete list of springs each says how many volume spacers belong to it at the travel it gives.',
    way: () => 'Add volume-spacers with standard and greatest; standard: 0 where none belong to it.',
    example: { sku: 'AB-AIR-2', travel: '150 mm' },
  },
  'specification-without-supply': {
    say: ({ specification }) => `A step asks for ${specification}, and no supply meets it.`,
    meaning: 'What a step pours or greases must be had, or no plan with that step can be bought.',
    way: () => 'Add the supply, or add the specification to meets of one.',
    example: { specification: 'light-bath' },
  },
  'supply-serves-nothing': {
    say: ({ sku, meets }) =>
      meets.length === 0
        ? `${sku} meets no specification, and without a viscosity it is not offered for another.`
        : `${sku} meets ${andList(meets)}, and no step asks for that.`,
    meaning: 'A supply is bought for a specification that some step asks for.',
    way: () => 'Correct meets, or the specification that a step or a dose names.',
    example: { sku: 'AB-OIL', meets: ['light-bath'] },
  },
  'dose-not-asked': {
    say: ({ dose, of }) => `${of} states the dose ${dose}, and no step of its family asks for it.`,
    meaning: 'A dose that nothing asks for is never poured. Its name may be misspelt on one side.',
    way: () => 'Correct the name here or in the step (dose, of), or take the dose out.',
    example: { dose: 'bath-oil', of: 'example-622' },
  },
  'dose-not-stated': {
    say: ({ dose, slot, operation, family }) =>
      `${operation} asks the ${roleName(slot)} for the dose ${dose}, and nothing listed for ${family} states one.`,
    meaning: 'A dose that no part states is none at all. Its name may be misspelt on one side.',
    way: () => 'Add the dose to the parts, correct the name, or take it out of the step.',
    example: { dose: 'chamber-oil', slot: 'spring', operation: 'spring-in', family: 'example' },
  },
  'closer-without-opener': {
    say: ({ operation, job, openers }) =>
      `A job for ${job} does ${operation}, which closes ${orList(openers)}, and never opens it.`,
    meaning:
      'A slot that is renewed on the way back must be changed on the way in, and a service lists what opens too.',
    way: ({ job, openers }) => `Add ${job} to changes of ${orList(openers)}, or the step to the service.`,
    example: { operation: 'lowers-on', job: 'foot-seals', openers: ['lowers-off'] },
  },
};
