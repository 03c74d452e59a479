import { nearest } from '../catalog/nearest.ts';
import { asText, type Page, pageWidth, section, table, wrapped } from '../report/layout.ts';
import type { Command } from './command.ts';
import { COMMANDS, findCommand } from './commands.ts';
import { EXIT, type ExitCode, type Io } from './io.ts';
import { sayFaults } from './say-faults.ts';

/** `legwork help [COMMAND]`, `legwork COMMAND --help`, and what is said to a command that does not exist. */
export async function runHelp(args: readonly string[], io: Io): Promise<ExitCode> {
  const page = { width: pageWidth(io.columns), paint: io.paintOut };
  const asked = args.filter((arg) => arg !== '--help' && arg !== '-h');
  const words = asked[0] === 'help' ? asked.slice(1) : asked;
  if (words.length === 0) {
    if (args.length === 0) {
      io.err(asText(overview({ ...page, paint: io.paintErr })));
      return EXIT.fault;
    }
    io.out(asText(overview(page)));
    return EXIT.yes;
  }
  const found = findCommand(words);
  if (found && (asked !== words || args.length > asked.length)) {
    io.out(asText(commandHelp(page, found.command)));
    return EXIT.yes;
  }
  const name = words.slice(0, 2).join(' ');
  const begun = COMMANDS.filter((command) => command.name.startsWith(`${words[0]} `)).map((command) => command.name);
  const near = begun.length > 0 ? begun : nearest(words[0] ?? '', ['help', ...COMMANDS.map((command) => command.name)]);
  return sayFaults(io, [
    {
      list: 'usage',
      code: 'unknown-command',
      params: { found: begun.length > 0 ? name : (words[0] ?? ''), nearest: near },
    },
  ]);
}

function overview(page: Page): string[] {
  return [
    ...wrapped(page, 'legwork: from the suspension fork in front of you to the fork you want'),
    ...section(
      page,
      'commands',
      table(
        page,
        [{ align: 'left' }, { align: 'left', gives: true }],
        [
          ...COMMANDS.map(({ name, summary }) => [name, summary]),
          ['help [COMMAND]', 'how a command is called'],
          ['--version', 'the version of this program'],
        ],
      ),
    ),
    ...section(page, 'try', wrapped(page, COMMANDS[0]?.examples[0] ?? '', '  ', '    ')),
  ];
}

function commandHelp(page: Page, { name, summary, argument, options, about, examples }: Command): string[] {
  const behind = argument === null ? '' : ` ${argument.needed === 'needed' ? argument.name : `[${argument.name}]`}`;
  const rows = options.map(({ name: option, value, help, repeat }) => [
    `--${option}${value === null ? '' : ` ${value}`}`,
    `${help}${repeat === 'many' ? ' (may be repeated)' : ''}`,
  ]);
  return [
    ...wrapped(page, `legwork ${name}${behind}${options.length === 0 ? '' : ' [OPTIONS]'}`),
    ...wrapped(page, summary, '  '),
    ...about.flatMap((text) => ['', ...wrapped(page, text, '  ')]),
    ...section(page, 'options', table(page, [{ align: 'left' }, { align: 'left', gives: true }], rows)),
    ...section(
      page,
      'examples',
      examples.flatMap((example) => wrapped(page, example, '  ', '    ')),
    ),
  ];
}
