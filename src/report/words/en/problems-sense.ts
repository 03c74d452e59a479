import type { ProblemParams } from '../../../catalog/index.ts';
import type { WordsTable } from '../language.ts';
import { roleName } from './names.ts';
import { doubtProblems } from './problems-doubts.ts';

type SenseCode =
  | 'build-travel'
  | 'clause-contradicts'
  | 'travel-spacer-length'
  | 'straight-without-offset'
  | 'opener-without-closer'
  | 'unknown-trait'
  | 'slot-out-of-reach'
  | 'operation-of-other-family';

/** What records claim together and cannot hold, though each by itself is in order. */
export const senseProblems: WordsTable<
  Pick<ProblemParams, SenseCode> & Pick<ProblemParams, keyof typeof doubtProblems>
> = {
  ...doubtProblems,
  'build-travel': {
    say: ({ claimed, gives }) =>
      `The build claims ${claimed} of travel, and its spring and travel spacers give ${gives}.`,
    meaning: 'The travel of a factory build is what its spring gives in that chassis, less its travel spacers.',
    way: () => 'Correct the travel of the build, the spring in it, or what the spring gives there.',
    example: { claimed: '150 mm', gives: '140 mm' },
  },
  'clause-contradicts': {
    say: ({ sku, chassis, measure, own, other }) =>
      `This clause says that ${sku} fits ${chassis}, and its ${roleName(measure)} is ${own} against ${other} there.`,
    meaning: 'A clause and a dimension contradict each other. Until that is settled the part does not fit.',
    way: () => 'Correct the clause or one of the dimensions.',
    example: { sku: 'AB-AIR-2', chassis: 'example-622', measure: 'bore', own: '29.4 mm', other: '30 mm' },
  },
  'travel-spacer-length': {
    say: ({ sku }) => `The travel spacer ${sku} does not say how long it is.`,
    meaning: 'Each travel spacer takes its length away from the travel.',
    way: () => 'Add dimensions: { length: 10 mm } to the part.',
    example: { sku: 'AB-TS-10' },
  },
  'straight-without-offset': {
    say: ({ chassis }) => `${chassis} measures axle-to-crown straight to the axle, and does not give its offset.`,
    meaning: 'Measured straight to the axle, the length at another travel can be worked out only with the offset.',
    way: () => 'Add the offset, or give axle-to-crown as measured along the steerer.',
    example: { chassis: 'example-622' },
  },
  'opener-without-closer': {
    say: ({ operation, reached }) =>
      reached === 'nothing'
        ? `Nothing comes of ${operation}: no other operation asks for it, and it changes and renews nothing.`
        : `${operation} opens the way to ${reached}, and no operation closes it.`,
    meaning: 'What is opened on the way must be closed again, and what nothing asks for is never done.',
    way: () => 'Name the operation that closes it under closed-by, or the one that needs it under requires.',
    example: { operation: 'cap-off', reached: 'nothing' },
  },
  'unknown-trait': {
    say: ({ trait, family }) => `${family} keeps the trait ${trait}, and no part of it states that trait.`,
    meaning: 'A family lists the traits of its dampers that a plan keeps. One that no part has keeps nothing.',
    way: () => 'Correct the name under keeps, or add the trait to the parts.',
    example: { trait: 'lockuot', family: 'example' },
  },
  'slot-out-of-reach': {
    say: ({ slot, family }) =>
      `No operation changes or renews the ${roleName(slot)} of ${family}, though a question may ask for that.`,
    meaning:
      'A slot that no operation reaches stays as it is in every plan; a wish for another content, count or new pieces is refused.',
    way: () => 'Add the slot to changes in the operation that reaches it, or describe that operation.',
    example: { slot: 'damper', family: 'example' },
  },
  'operation-of-other-family': {
    say: ({ operation, family }) => `${operation} does not belong to ${family}, which needs it here.`,
    meaning: 'Operations require, follow and close only operations of the same families.',
    way: () => 'Add the family to that operation, or name another operation.',
    example: { operation: 'cap-off', family: 'example' },
  },
};
