import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { createRequire, Module } from 'node:module';
import { dirname } from 'node:path';
import { Script } from 'node:vm';
import type * as Program from './main.ts';

/** Characters of a hash in hexadecimal: the name that a built program begins with, after `//`, and what its compiled code begins with. */
const HASH = 64;
/** Where the compiled code of a program lies. */
export const codeFile = (file: string): string => `${file}.v8`;

/**
 * The built program as a script. With the code that the build compiled beforehand, the many small functions of a plan
 * are not compiled anew with each call. Another version of Node does not take that code (V8 looks at its own version
 * and its flags) and compiles the program itself; nothing else differs.
 * @param file the path of `program.js`, a CommonJS module of ASCII characters
 */
export function programScript(file: string): Script {
  const source = readFileSync(file, 'latin1');
  const cachedData = compiledCode(file, source);
  return new Script(Module.wrap(source), { filename: file, ...(cachedData && { cachedData }) });
}

/** Runs that script; what the program exports. */
export function loadProgram(file: string, script: Script): typeof Program {
  const module = { exports: {} as typeof Program };
  script.runInThisContext()(module.exports, createRequire(file), module, file, dirname(file));
  return module.exports;
}

/**
 * What stands before compiled code: a hash over it and the name of the program that it was compiled from. V8 takes code
 * as it is, so that damaged code, or that of another program, would end the process.
 */
export const sealOf = (source: string, code: Buffer): string =>
  createHash('sha256')
    .update(source.slice(2, 2 + HASH))
    .update(code)
    .digest('hex');

function compiledCode(file: string, source: string): Buffer | null {
  try {
    const bytes = readFileSync(codeFile(file));
    const code = bytes.subarray(HASH);
    return sealOf(source, code) === bytes.toString('latin1', 0, HASH) ? code : null;
  } catch {
    return null;
  }
}
