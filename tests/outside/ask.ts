import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { outside, type Said } from '../../src/outside/main.ts';

const folder = mkdtempSync(join(tmpdir(), 'legwork-outside-'));
let files = 0;

/** Runs a door on a text, as the command would on a file that holds it. */
export function ask(kind: string, text: string, ...options: readonly string[]): Promise<Said> {
  const file = join(folder, `${files++}.txt`);
  writeFileSync(file, text);
  return outside([kind, file, ...options]);
}

/** The one JSON object that a door prints. */
export async function answer(kind: string, text: string, ...options: readonly string[]): Promise<unknown> {
  const { code, out, err } = await ask(kind, text, ...options);
  if (code !== 0 || err !== '' || !/^\{.*\}\n$/.test(out)) throw new Error(`${code} ${out} ${err}`);
  return JSON.parse(out);
}
