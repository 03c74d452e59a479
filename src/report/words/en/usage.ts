import type { WordsTable } from '../language.ts';
import type { AuditParams, StatusParams, UsageParams } from '../params.ts';
import { nearestHint, orList } from './shared.ts';

/** Parts what is expected from its examples. */
const SUCH_AS = ', such as ';

/** What can be wrong with a command line. */
export const usage: WordsTable<UsageParams> = {
  'unknown-command': {
    say: ({ found }) => `There is no command ${found}.`,
    meaning: 'The first word after `legwork` is a command.',
    way: ({ nearest }) => `${nearestHint(nearest).trim()} \`legwork help\` shows every command.`.trim(),
    example: { found: 'paln', nearest: ['plan'] },
  },
  'unknown-option': {
    say: ({ option, command }) => `\`legwork ${command}\` has no option ${option}.`,
    meaning: 'Each command has its own options.',
    way: ({ nearest, command }) =>
      `${nearestHint(nearest).trim()} \`legwork help ${command}\` shows every option.`.trim(),
    example: { option: '--travle', nearest: ['--travel', '--travel-now'], command: 'plan' },
  },
  'option-needs-value': {
    say: ({ option }) => `${option} needs a value.`,
    meaning: 'The option stands without the value that belongs behind it.',
    way: ({ option, example }) => `Write it like this: ${option} ${example}`,
    example: { option: '--travel', example: '130' },
  },
  'option-takes-no-value': {
    say: ({ option, found }) => `${option} takes no value, and ${found} was given.`,
    meaning: 'The option is a switch: it is there or not.',
    way: ({ option }) => `Write ${option} alone.`,
    example: { option: '--audit', found: 'yes' },
  },
  'option-twice': {
    say: ({ option, values }) => `${option} is given more than once, with different values: ${values.join(', ')}.`,
    meaning: 'Two different values for one thing contradict each other.',
    way: ({ option }) => `Give ${option} once.`,
    example: { option: '--travel', values: ['130', '140'] },
  },
  'option-missing': {
    say: ({ option, command }) => `\`legwork ${command}\` cannot do without ${option}.`,
    meaning: 'The question cannot be asked without it.',
    way: ({ option, example }) => `Add it, for instance ${option} ${example}`,
    example: { option: '--travel-now', example: '150', command: 'plan' },
  },
  'bad-option-value': {
    say: ({ option, found, expected }) =>
      `${option} ${found === '' ? '""' : found} is not ${expected.split(SUCH_AS, 1)[0]}.`,
    meaning: 'The value is not one that this option understands.',
    way: ({ option, found, expected }) => {
      if (/^[0-9]+,[0-9]+/.test(found)) return `Decimals have a point: ${option} ${found.replace(',', '.')}`;
      const examples = expected.split(SUCH_AS)[1];
      return examples === undefined ? `Give ${option} ${expected}.` : `Write it like ${examples}.`;
    },
    example: {
      option: '--travel',
      found: '-20',
      expected: 'a length of 0 mm or more, such as 130, "130 mm" or "5.5 in"',
    },
  },
  'surplus-argument': {
    say: ({ found, command }) => `\`legwork ${command}\` does not know what to do with ${found}.`,
    meaning: 'A word stands on the command line that belongs to nothing before it.',
    way: ({ command }) =>
      `Each value stands behind its option, in quotes if it has blanks in it: see \`legwork help ${command}\`.`,
    example: { found: 'mm', command: 'plan' },
  },
  'argument-missing': {
    say: ({ argument, command }) => `\`legwork ${command}\` needs ${argument}.`,
    meaning: 'The command needs to be told what about.',
    way: ({ known }) => (known.length === 0 ? '' : `One of ${orList(known)}.`),
    example: { argument: 'KIND', command: 'catalog list', known: ['chassis', 'parts'] },
  },
  'unknown-kind': {
    say: ({ found }) => `A catalogue has no kind of record called ${found}.`,
    meaning: 'Records are listed by kind: chassis, parts, kits and so on.',
    way: ({ nearest }) => `${nearestHint(nearest).trim()} \`legwork help catalog list\` shows every kind.`.trim(),
    example: { found: 'chasis', nearest: ['chassis'] },
  },
  'unknown-code': {
    say: ({ found }) => `There is no code ${found}.`,
    meaning: 'Every message has a code, and `legwork explain` shows what each means.',
    way: ({ nearest }) => `${nearestHint(nearest).trim()} \`legwork explain\` lists every code.`.trim(),
    example: { found: 'now-asumed', nearest: ['now-assumed'] },
  },
  'file-not-writable': {
    say: ({ file, reason }) => `${file} cannot be written: ${reason}.`,
    meaning: 'A file that was named for something to be put into cannot be written.',
    way: ({ option }) => `Check the name behind ${option}, and whether its folder is there.`,
    example: { file: 'pictures/change.svg', reason: 'its folder is not there', option: '--picture' },
  },
  'file-not-readable': {
    say: ({ file, reason }) => `${file} cannot be read: ${reason}.`,
    meaning: 'A file that was named is not there or cannot be read.',
    way: ({ option }) => `Check the name behind ${option}.`,
    example: { file: 'stock.csv', reason: 'there is no such file', option: '--stock' },
  },
  'bad-token-file': {
    say: ({ file, lines }) =>
      `${file} has ${lines.length === 1 ? `a line that is no token: ${lines[0]}` : `lines that are no tokens: ${lines.join(', ')}`}.`,
    meaning: 'A file of tokens holds one hash a line, as `legwork token` writes it: sha256: and 64 hexadecimal digits.',
    way: () => 'Take the line out, or make a token anew with `legwork token`.',
    example: { file: 'tokens.txt', lines: ['2'] },
  },
  'no-token': {
    say: ({ host }) => `At ${host} others than this machine can ask, and there is no token.`,
    meaning: 'A service that others can reach must have a token for what changes it, and there is none.',
    way: () => 'Make one with `legwork token`, or leave --host out.',
    example: { host: '0.0.0.0' },
  },
  'address-not-free': {
    say: ({ found, reason }) => `The service cannot listen at ${found}: ${reason}.`,
    meaning: 'Another program listens there already, or this machine has no such address.',
    way: () => 'Name another --port; 0 takes one that is free.',
    example: { found: '127.0.0.1:8417', reason: 'EADDRINUSE' },
  },
};

/** How an answer can end. */
export const statuses: WordsTable<StatusParams> = {
  answered: {
    say: ({ plans }) => (plans === 1 ? 'There is one way' : `There are ${plans} ways, none worse than another`),
    meaning: 'There is a way, and every way that no other beats in money, minutes and days is shown.',
    way: () => 'The first plan is recommended; --prefer says by what.',
    example: { plans: 3 },
  },
  'nothing-to-do': {
    say: () => 'Nothing to do',
    meaning: 'Nothing was wished for, or the fork is already as wished.',
    way: () => 'Ask for something, for instance --travel 130 or --service NAME.',
    example: {},
  },
  impossible: {
    say: () => 'Proved impossible',
    meaning: 'No build that the catalogue allows meets the wishes, whatever is unknown.',
    way: () => 'See the ways out: each was solved again.',
    example: {},
  },
  'not-known': {
    say: () => 'Not known',
    meaning: 'A way exists only if some fit is true that the catalogue neither states nor denies.',
    way: () => 'Ask the maker, or ask again with --allow-unknown.',
    example: {},
  },
  'not-obtainable': {
    say: () => 'Cannot be had',
    meaning: 'A build would do, but it cannot be supplied as asked.',
    way: () => 'What is lacking stands below; what you have elsewhere is named with --have SKU.',
    example: {},
  },
  stopped: {
    say: ({ steps }) => `Not decided: the search stopped at its limit of ${steps} steps`,
    meaning: 'The limit of steps came before a plan or a proof. It says nothing about what is possible.',
    way: () => 'Ask again with a greater --step-limit N.',
    example: { steps: 1000 },
  },
};

export const audit: WordsTable<AuditParams> = {
  'audit-finding': {
    say: ({ code, plan, detail }) => `${plan === null ? 'the answer' : `plan ${plan + 1}`}: ${code}: ${detail}`,
    meaning: 'The independent auditor worked a plan out again and something in it does not hold.',
    way: ({ plan }) =>
      plan === null ? 'Do not rely on this answer, and report it.' : 'Do not rely on this plan, and report it.',
    example: { code: 'money', plan: 0, detail: 'total 12.50, expected 12.60' },
  },
};
