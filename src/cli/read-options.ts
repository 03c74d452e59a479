import { parseArgs } from 'node:util';
import type { Coded } from '../report/words/say.ts';
import type { Command } from './command.ts';
import type { OptionSpec } from './options.ts';

/** The options and the argument of a command line, as text. */
export interface Given {
  readonly argument: string | null;
  readonly values: ReadonlyMap<string, readonly string[]>;
  /** What is wrong with the command line. */
  readonly faults: readonly Coded[];
}

/** Reads a command line against the options of a command. Every fault is found in one go. */
export async function readOptions(command: Command, args: readonly string[]): Promise<Given> {
  const faults: Coded[] = [];
  const known = new Map(command.options.map((option) => [option.name, option]));
  const values = new Map<string, string[]>();
  const rest: string[] = [];
  let unknownAt = -2;
  for (const token of tokens(args, known)) {
    // what stands behind an unknown option belongs to it, and is not a mistake of its own
    if (token.kind === 'positional' && token.index !== unknownAt + 1) rest.push(token.value);
    if (token.kind !== 'option') continue;
    const option = known.get(token.name);
    if (!option) {
      faults.push(await unknownOption(command, token.rawName));
      unknownAt = token.value === undefined ? token.index : -2;
    } else if (option.value === null && token.value !== undefined)
      faults.push({ code: 'option-takes-no-value', params: { option: `--${option.name}`, found: token.value } });
    else if (option.value !== null && (token.value === undefined || token.value === MISSING))
      faults.push({ code: 'option-needs-value', params: { option: `--${option.name}`, example: option.example } });
    else values.set(option.name, [...(values.get(option.name) ?? []), token.value ?? '']);
    if (option && !values.has(option.name)) values.set(option.name, []);
  }
  for (const option of command.options) faults.push(...countFaults(option, values.get(option.name)));
  const { argument } = command;
  const surplus = argument === null ? rest : rest.slice(1);
  for (const found of surplus) faults.push({ code: 'surplus-argument', params: { found, command: command.name } });
  if (argument?.needed === 'needed' && rest.length === 0) {
    faults.push({
      code: 'argument-missing',
      params: { argument: argument.name, command: command.name, known: argument.known ?? [] },
    });
  }
  return { argument: argument === null ? null : (rest[0] ?? null), values, faults };
}

/** Stands for a value that is not there, so that the next option is not taken for it. */
const MISSING = '\0';

function tokens(args: readonly string[], known: ReadonlyMap<string, OptionSpec>) {
  const marked = args.flatMap((arg, at) => {
    const option = arg.startsWith('--') && !arg.includes('=') ? known.get(arg.slice(2)) : undefined;
    const next = args[at + 1];
    return option?.value && (next === undefined || next.startsWith('--')) ? [`${arg}=${MISSING}`] : [arg];
  });
  const options = Object.fromEntries(
    [...known.values()].map(({ name, value }) => [name, { type: value === null ? 'boolean' : 'string' } as const]),
  );
  return parseArgs({ args: marked, options, strict: false, tokens: true, allowPositionals: true }).tokens;
}

async function unknownOption(command: Command, rawName: string): Promise<Coded> {
  const { nearest } = await import('../catalog/nearest.ts');
  const names = [...command.options.map(({ name }) => name), 'help'];
  const near = nearest(rawName.replace(/^-+/, ''), names).map((name) => `--${name}`);
  return { code: 'unknown-option', params: { option: rawName, nearest: near, command: command.name } };
}

function countFaults(option: OptionSpec, values: readonly string[] | undefined): Coded[] {
  const name = `--${option.name}`;
  if (values === undefined) return [];
  const different = [...new Set(values)];
  return option.repeat === 'once' && different.length > 1
    ? [{ code: 'option-twice', params: { option: name, values: different } }]
    : [];
}
