import { spawnSync } from 'node:child_process';
import { copyFileSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { sealOf } from '../../src/cli/launch.ts';
import { emptyFolder, legwork, root, shorten } from './run.ts';

const dist = join(root, 'dist');
const SEAL = 64;

/** Whether this Node refuses compiled code for the program: what its own check of version and flags says. */
function refused(code: Buffer): string {
  const file = join(emptyFolder(), 'code');
  writeFileSync(file, code);
  const check = `
    const read = require('node:fs').readFileSync;
    const source = require('node:module').wrap(read(${JSON.stringify(join(dist, 'program.js'))}, 'latin1'));
    const { Script } = require('node:vm');
    console.log(new Script(source, { cachedData: read(${JSON.stringify(file)}) }).cachedDataRejected);`;
  return spawnSync(process.execPath, ['-e', check], { encoding: 'utf8' }).stdout.trim();
}

/** A copy of the built program with other compiled code beside it. */
function withCode(code: Buffer): string {
  const folder = join(emptyFolder(), 'dist');
  mkdirSync(folder);
  for (const name of ['legwork.js', 'program.js', 'parse-files.js', 'package.json'])
    copyFileSync(join(dist, name), join(folder, name));
  writeFileSync(join(folder, 'program.js.v8'), code);
  return folder;
}

const run = (folder: string): { readonly out: string; readonly err: string } => {
  const args = [join(folder, 'legwork.js'), ...shorten, '--catalog', 'demo-catalog'];
  const env = { ...process.env, LEGWORK_CACHE: emptyFolder() };
  const { stdout, stderr } = spawnSync(process.execPath, args, { encoding: 'utf8', cwd: root, env });
  return { out: stdout, err: stderr };
};

const sealed = (code: Buffer, source: string): Buffer => Buffer.concat([Buffer.from(sealOf(source, code)), code]);

describe('the compiled code of the program', () => {
  const usual = legwork([...shorten, '--catalog', 'demo-catalog']).out;
  const source = readFileSync(join(dist, 'program.js'), 'latin1');
  const whole = readFileSync(join(dist, 'program.js.v8'));
  const code = whole.subarray(SEAL);
  const ofAnotherV8 = Buffer.from(code).fill(0x5a, 4, 8);

  it('is there after the build, is sealed, and this Node takes it', () => {
    expect(whole.toString('latin1', 0, SEAL)).toBe(sealOf(source, code));
    expect(refused(code)).toBe('false');
  });

  it.each([
    ['damaged', Buffer.from(whole).fill(0xa5, 4096, 8192)],
    ['cut off', whole.subarray(0, 5000)],
    ['empty', Buffer.alloc(0)],
    ['of another program', sealed(code, `//${'0'.repeat(SEAL)}`)],
    ['of another V8', sealed(ofAnotherV8, source)],
  ])('where it is %s the answer is the same', (_, changed) => {
    expect(run(withCode(changed))).toEqual({ out: usual, err: '' });
  });

  it('of another V8 is what this Node refuses', () => {
    expect(refused(ofAnotherV8)).toBe('true');
  });
});
