import { appendFile, chmod, mkdir, readFile } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import type { Io } from './io.ts';
import type { Given } from './read-options.ts';

/** The file that holds the hashes of tokens: named, or in the folder where this system keeps settings (LEGWORK_CONFIG). */
export async function tokenFile(given: Given, env: Io['env']): Promise<string> {
  const named = given.values.get('tokens')?.[0];
  if (named !== undefined) return named;
  if (env.LEGWORK_CONFIG) return join(env.LEGWORK_CONFIG, 'tokens.txt');
  const { default: envPaths } = await import('env-paths');
  return join(envPaths('legwork', { suffix: '' }).config, 'tokens.txt');
}

const HASH = /^sha256:([0-9a-f]{64})$/;

/** The hashes in a file of tokens, and its lines that are none; null where there is no such file. */
export async function readTokens(
  file: string,
): Promise<{ readonly hashes: readonly string[]; readonly bad: readonly number[] } | null> {
  let text: string;
  try {
    text = await readFile(file, 'utf8');
  } catch {
    return null;
  }
  const lines = text.split(/\r?\n/).map((line) => (line.split('#', 1)[0] ?? '').trim());
  return {
    hashes: lines.flatMap((line) => HASH.exec(line)?.[1] ?? []),
    bad: lines.flatMap((line, at) => (line === '' || HASH.test(line) ? [] : [at + 1])),
  };
}

/** Adds a hash to a file that only its owner may read. */
export async function addToken(file: string, hash: string): Promise<void> {
  await mkdir(dirname(file), { recursive: true });
  await appendFile(file, `sha256:${hash}\n`, { mode: 0o600 });
  await chmod(file, 0o600);
}
