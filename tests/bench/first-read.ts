import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { parseAllDocuments } from 'yaml';
import { readCatalog } from '../../src/catalog/index.ts';
import { demoFolder } from '../support/demo.ts';
import { cpuMilliseconds, sampled } from './measure.ts';

/** Medians of the bare YAML library and of our reader over the demo catalogue's files, in turn: text to plain values, and text to a linked catalogue. */
export async function firstReadTimes(rounds: number): Promise<readonly [bare: number, whole: number]> {
  const files = readdirSync(demoFolder)
    .filter((name) => name.endsWith('.yaml') && name !== 'shop.yaml')
    .map((name) => ({ name, text: readFileSync(join(demoFolder, name), 'utf8') }));
  const [bare, whole]: [number[], number[]] = [[], []];
  for (let round = 0; round < rounds; round++) {
    bare.push(
      cpuMilliseconds(() => {
        for (const { text } of files) for (const document of parseAllDocuments(text)) document.toJS();
      }),
    );
    whole.push(cpuMilliseconds(() => readCatalog(files, 'demo')));
  }
  return [sampled(bare).median, sampled(whole).median];
}
