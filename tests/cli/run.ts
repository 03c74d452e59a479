import { spawnSync } from 'node:child_process';
import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import buildOnce from './global-build.ts';

export const root = fileURLToPath(new URL('../..', import.meta.url));
export const demo = join(root, 'demo-catalog');
const program = join(root, 'dist/legwork.js');

export interface Ran {
  readonly code: number | null;
  readonly out: string;
  readonly err: string;
}

/** A folder that is empty. */
export const emptyFolder = (): string => mkdtempSync(join(tmpdir(), 'legwork-test-'));
const cache = emptyFolder();
let built = false;

/** Runs the built program as a shell would, with a cache of its own. */
export function legwork(args: readonly string[], env: Readonly<Record<string, string>> = {}): Ran {
  if (!built) buildOnce();
  built = true;
  const { status, stdout, stderr } = spawnSync(process.execPath, [program, ...args], {
    encoding: 'utf8',
    env: { PATH: process.env.PATH, HOME: cache, LEGWORK_CACHE: cache, ...env },
    maxBuffer: 64 * 1024 * 1024,
  });
  return { code: status, out: stdout, err: stderr };
}

/** A folder with one file in it. */
export function folderWith(name: string, text: string): string {
  const folder = emptyFolder();
  writeFileSync(join(folder, name), text);
  return folder;
}

export const shorten = ['plan', '--chassis', 'quennet-622', '--travel-now', '150', '--travel', '130'] as const;
export const plan = (...more: readonly string[]): readonly string[] => [
  'plan',
  '--chassis',
  'quennet-622',
  '--travel-now',
  '150',
  ...more,
];
