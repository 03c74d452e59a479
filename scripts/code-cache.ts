/**
 * Compiles the built program once for this version of Node: runs what a desk asks most, and keeps the code of every
 * function that was needed. Called by scripts/build.ts in a process of its own, with the flags that a user's call has.
 */
import { mkdtempSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Io } from '../src/cli/io.ts';
import { codeFile, loadProgram, programScript, sealOf } from '../src/cli/launch.ts';
import { noPaint } from '../src/report/paint.ts';

const path = (name: string): string => fileURLToPath(new URL(`../${name}`, import.meta.url));
const file = path('dist/program.js');
const fork = ['--catalog', path('demo-catalog'), '--chassis', 'quennet-622', '--travel-now', '150'];
/** Twice, for the second time finds the cache; a yes, a no, the other commands, the other formats. */
const CALLS: readonly (readonly string[])[] = [
  ['plan', ...fork, '--travel', '130'],
  ['plan', ...fork, '--travel', '130'],
  ['plan', ...fork, '--travel', '180'],
  ['plan', ...fork, '--travel', '130', '--format', 'json'],
  ['plan', ...fork, '--travel', '130', '--format', 'md'],
  ['fit', ...fork.slice(0, 4), '--part', 'QN-AIR-192'],
  ['reach', ...fork],
  ['--help'],
];

const cache = mkdtempSync(join(tmpdir(), 'legwork-code-'));
const io: Io = {
  out: () => undefined,
  err: () => undefined,
  env: { ...process.env, LEGWORK_CACHE: cache },
  columns: undefined,
  outIsTerminal: false,
  paintOut: noPaint,
  paintErr: noPaint,
};
try {
  const script = programScript(file);
  const { main } = loadProgram(file, script);
  for (const call of CALLS) await main(call, io);
  const part = `${codeFile(file)}.${process.pid}.part`;
  const code = script.createCachedData();
  writeFileSync(part, Buffer.concat([Buffer.from(sealOf(readFileSync(file, 'latin1'), code)), code]));
  renameSync(part, codeFile(file));
} finally {
  rmSync(cache, { recursive: true, force: true });
}
