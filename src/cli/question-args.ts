import type { Fill } from './fill.ts';
import type { OptionSpec } from './options.ts';

/** A question as a command line that asks it again, with what else was given on it. */
export function commandOf(question: object, options: readonly OptionSpec[], also: readonly string[] = []): string {
  const words = options.flatMap(({ name, fill }) => (fill ? shown(`--${name}`, fill, at(question, fill.path)) : []));
  return ['legwork', 'plan', ...words, ...also].map(quoted).join(' ');
}

function at(question: object, path: string): unknown {
  let here: unknown = question;
  for (const key of path.split('.')) here = (here as Readonly<Record<string, unknown>> | undefined)?.[key];
  return here;
}

function shown(option: string, fill: Fill, value: unknown): string[] {
  if (value === undefined || value === null) return [];
  switch (fill.as) {
    case 'switch':
      return value === true ? [option] : [];
    case 'one':
      return value === fill.usual ? [] : [option, fill.show(value)];
    case 'list':
      return (value as readonly unknown[]).flatMap((one) => [option, fill.show(one)]);
    case 'record':
      return Object.entries(value).flatMap(([key, one]) => [option, `${key}=${fill.show(one)}`]);
    case 'lists':
      return Object.entries(value as Readonly<Record<string, readonly unknown[]>>).flatMap(([key, all]) =>
        all.flatMap((one) => [option, `${key}=${fill.show(one)}`]),
      );
  }
}

/** A word as a shell takes it. */
const quoted = (word: string): string =>
  /^[A-Za-z0-9_@%+=:,./*-]+$/.test(word) && !word.includes('*') ? word : `'${word.replaceAll("'", "'\\''")}'`;
