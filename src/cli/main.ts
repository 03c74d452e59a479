import { findCommand } from './commands.ts';
import { EXIT, type ExitCode, type Io } from './io.ts';
import { readOptions } from './read-options.ts';
import { terminal } from './terminal.ts';

/** Runs a command line to its end. Never throws; a mistake of the program becomes one line and exit code 70. */
export async function main(args: readonly string[], io: Io): Promise<ExitCode> {
  try {
    return await run(args, io);
  } catch (error) {
    io.err(`legwork: this should not have happened: ${oneLine(error)}\n`);
    io.err('Please report it with the command line that you used. Nothing was changed.\n');
    return EXIT.broken;
  }
}

async function run(args: readonly string[], io: Io): Promise<ExitCode> {
  if (args[0] === '--version') {
    io.out(`${(await import('./version.ts')).VERSION}\n`);
    return EXIT.yes;
  }
  const found = findCommand(args);
  if (!found || found.rest.some((arg) => arg === '--help' || arg === '-h'))
    return (await import('./run-help.ts')).runHelp(args, io);
  const given = await readOptions(found.command, found.rest);
  // `plan` says what is wrong with its question in the same go
  if (given.faults.length > 0 && found.command.name !== 'plan') {
    const { sayFaults } = await import('./say-faults.ts');
    return sayFaults(
      io,
      given.faults.map((fault) => ({ list: 'usage', ...fault })),
    );
  }
  return (await found.command.load())(given, io);
}

const oneLine = (error: unknown): string =>
  (error instanceof Error ? error.message : String(error)).split('\n', 1)[0] ?? '';

/** Runs this process: what the built file begins with. */
export async function start(): Promise<void> {
  for (const stream of [process.stdout, process.stderr]) {
    // the reader went away (`| head`): nothing is left to say
    stream.on('error', (error: NodeJS.ErrnoException) => process.exit(error.code === 'EPIPE' ? EXIT.yes : EXIT.broken));
  }
  process.exitCode = await main(process.argv.slice(2), terminal());
}
