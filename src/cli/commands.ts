import type { Command } from './command.ts';
import { FIT_OPTIONS, REACH_OPTIONS, USES_OPTIONS } from './fit-options.ts';
import { KINDS } from './kinds.ts';
import { CHECK_OPTIONS, LIST_OPTIONS } from './options.ts';
import { PLAN_OPTIONS } from './plan-options.ts';
import { SERVE_OPTIONS, TOKEN_OPTIONS } from './serve-options.ts';
import { SETUP_OPTIONS } from './setup-options.ts';

/** Every command. The work of each is loaded only when it is called. */
export const COMMANDS: readonly Command[] = [
  {
    name: 'plan',
    summary: 'from the fork in front of you to the fork you want: every exact way, or why there is none',
    argument: null,
    options: PLAN_OPTIONS,
    about: [
      'Say what the fork is now (--chassis, --travel-now, --with) and what it should become (--travel, --wheel, --use, --keep, --renew, --service, --spacers). What you do not name stays as it is.',
      'Exit status: 0 there is a way, or nothing to do; 1 there is none; 2 the question or the catalogue is at fault; 3 the search stopped undecided.',
    ],
    examples: [
      'legwork plan --chassis quennet-622 --travel-now 150 --travel 130',
      'legwork plan --chassis quennet-622 --travel-now 150 --service quennet-lower-leg-service --supplies bulk',
      'legwork plan --chassis brastle-622 --travel-now 130 --travel "5.9 in" --keep damper --format md',
    ],
    load: async () => (await import('./run-plan.ts')).runPlan,
  },
  {
    name: 'fit',
    summary: 'does this part fit that fork: fits, fits if, no or not known, and why',
    argument: null,
    options: FIT_OPTIONS,
    about: [
      'Exit status: 0 it fits, perhaps on conditions; 1 it does not; 2 the question or the catalogue is at fault; 3 the catalogue does not say.',
    ],
    examples: [
      'legwork fit --part QN-AIR-192 --chassis quennet-622',
      'legwork fit --part QN-AIR-232 --chassis quennet-584-20x110 --format json',
    ],
    load: async () => (await import('./run-fit.ts')).runFit,
  },
  {
    name: 'reach',
    summary: 'every travel and wheel that a fork can become, with the cheapest way or the reason why not',
    argument: null,
    options: REACH_OPTIONS,
    about: [
      'Rows are wheels, lines are travels.',
      'Exit status: 0 something can be had; 1 nothing can; 2 the question or the catalogue is at fault.',
    ],
    examples: ['legwork reach --chassis quennet-622 --travel-now 150'],
    load: async () => (await import('./run-reach.ts')).runReach,
  },
  {
    name: 'setup',
    summary: 'a starting pressure or coil for a rider on the fork in front of you',
    argument: null,
    options: SETUP_OPTIONS,
    about: [
      "The maker's chart comes first and is never carried on beyond its ends; what is worked out for the wanted sag stands beside it. A starting point: read the sag, and set the pressure right by it.",
      "Exit status: 0 there is one; 1 the rider is beyond the maker's chart or limits; 2 the question or the catalogue is at fault; 3 the catalogue does not state enough of the spring.",
    ],
    examples: [
      'legwork setup --chassis quennet-622 --travel-now 150 --rider-mass "80 kg"',
      'legwork setup --bike dallowick-brannig --size m --built 2024-05 --rider-mass 65 --sag 30%',
    ],
    load: async () => (await import('./run-setup.ts')).runSetup,
  },
  {
    name: 'uses',
    summary: 'where a part goes: forks, factory builds, kits, bikes',
    argument: null,
    options: USES_OPTIONS,
    about: [
      'Exit status: 0 it goes somewhere; 1 the catalogue names nothing; 2 the question or the catalogue is at fault.',
    ],
    examples: ['legwork uses --part QN-VS'],
    load: async () => (await import('./run-fit.ts')).runUses,
  },
  {
    name: 'catalog check',
    summary: 'everything that is wrong with a catalogue, its stock and its shop file, with line and column',
    argument: { name: 'DIR', needed: 'optional' },
    options: CHECK_OPTIONS,
    about: [
      'Without DIR: the folder in LEGWORK_CATALOG, else the demo catalogue.',
      'Exit status: 0 sound (warnings may be shown); 1 there are errors; 2 the folder or a file cannot be read.',
    ],
    examples: ['legwork catalog check demo-catalog'],
    load: async () => (await import('./run-catalog-check.ts')).runCatalogCheck,
  },
  {
    name: 'catalog list',
    summary: 'the records of one kind',
    argument: { name: 'KIND', needed: 'needed', known: KINDS },
    options: LIST_OPTIONS,
    about: [`KIND is one of ${KINDS.join(', ')}.`],
    examples: ['legwork catalog list chassis --format json', 'legwork catalog list parts --gtin 2100001001926'],
    load: async () => (await import('./run-catalog-list.ts')).runCatalogList,
  },
  {
    name: 'serve',
    summary: 'the same answers over HTTP, until it is told to stop',
    argument: null,
    options: SERVE_OPTIONS,
    about: [
      'Says the address, the catalogue and how to stop. /v1/openapi.yaml describes every address.',
      'Without --host only this machine can ask. Where others can, there must be a token: see `legwork help token`.',
      'Exit status: 0 stopped when told to; 2 an option, the catalogue or the address is at fault.',
    ],
    examples: ['legwork serve', 'legwork serve --port 0 --log silent'],
    ends: 'when-told',
    load: async () => (await import('./run-serve.ts')).runServe,
  },
  {
    name: 'token',
    summary: 'a token for whoever may reload the catalogue of a service',
    argument: null,
    options: TOKEN_OPTIONS,
    about: [
      'The token is printed once; only its hash is kept. A line taken out of the file takes that token back, from the next start on.',
      'Exit status: 0 made; 2 the file cannot be written.',
    ],
    examples: ['legwork token'],
    load: async () => (await import('./run-token.ts')).runToken,
  },
  {
    name: 'explain',
    summary: 'what a code in a message means, and what to do about it',
    argument: { name: 'CODE', needed: 'optional' },
    options: [],
    about: ['Without CODE: every code, by group.'],
    examples: ['legwork explain now-assumed', 'legwork explain dimension'],
    load: async () => (await import('./run-explain.ts')).runExplain,
  },
];

/** The command that a command line begins with, and what stands behind it. */
export function findCommand(
  args: readonly string[],
): { readonly command: Command; readonly rest: readonly string[] } | null {
  for (const command of COMMANDS) {
    const words = command.name.split(' ');
    if (words.every((word, at) => args[at] === word)) return { command, rest: args.slice(words.length) };
  }
  return null;
}
