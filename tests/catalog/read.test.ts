import { mkdir, mkdtemp, readdir, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { fromCache, loadFiles, toCache } from '../../src/catalog/read.ts';
import { demoFolder, loadCatalogFolder } from '../support/demo.ts';
import { oneFile, SOUND, sound } from './sound.ts';

let folder = '';
beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'legwork-read-'));
});
afterEach(async () => {
  await rm(folder, { recursive: true, force: true });
});

async function write(files: Readonly<Record<string, string | Uint8Array>>): Promise<void> {
  for (const [name, content] of Object.entries(files)) {
    await mkdir(dirname(join(folder, name)), { recursive: true });
    await writeFile(join(folder, name), content);
  }
}

describe('reading a folder', () => {
  it('files: every ending, folders below, in code-unit order; what stands beside is left', async () => {
    await write({
      'b.yaml': '',
      'B.yml': '',
      'a/deep/c.json': '{}',
      'd.ndjson': '',
      'shop.yaml': 'name: x',
      'stock.csv': 'sku',
      'notes.txt': 'x',
      'e.yaml.bak': 'x',
    });
    const { files, problems } = loadFiles(folder);
    expect([files.map(({ name }) => name), problems]).toEqual([['B.yml', 'a/deep/c.json', 'b.yaml', 'd.ndjson'], []]);
  });

  it('text: a byte order mark is taken off', async () => {
    await write({ 'a.yaml': `\uFEFF${SOUND}` });
    const { files } = loadFiles(folder);
    expect(files[0]?.text.startsWith('catalog:')).toBe(true);
  });

  it('text: a file that is not UTF-8 is said, and the others are read', async () => {
    await write({
      'a.yaml': SOUND,
      'b.yaml': Uint8Array.of(0x6e, 0x3a, 0x20, 0xe9, 0x0a),
      'c.yaml': Uint8Array.of(0xff, 0xfe, 0x61, 0x00),
    });
    const { files, problems } = loadFiles(folder);
    expect(files.map(({ name }) => name)).toEqual(['a.yaml']);
    expect(problems.map(({ code, place, params }) => [code, place?.file, params.reason])).toEqual([
      ['not-readable', 'b.yaml', 'it is not UTF-8 text'],
      ['not-readable', 'c.yaml', 'it is not UTF-8 text'],
    ]);
  });

  it('folders: an empty one and one that is not there are two different faults', async () => {
    expect(loadFiles(folder).problems.map(({ code }) => code)).toEqual(['empty-catalog']);
    expect(loadFiles(join(folder, 'none')).problems.map(({ code }) => code)).toEqual(['not-readable']);
  });

  it('folders: a file in the place of one is said to be a file', async () => {
    await write({ 'a.yaml': SOUND });
    const [problem] = loadFiles(join(folder, 'a.yaml')).problems;
    expect([problem?.code, problem?.params.reason]).toEqual(['not-readable', expect.stringContaining('is a file')]);
  });

  it('key: goes by bytes and names, so that any change is read anew', async () => {
    const keyOf = async (files: Readonly<Record<string, string>>): Promise<string> => {
      await rm(folder, { recursive: true, force: true });
      await write(files);
      return loadFiles(folder).key;
    };
    const first = await keyOf({ 'a.yaml': 'x', 'b.yaml': 'y' });
    expect(await keyOf({ 'a.yaml': 'x', 'b.yaml': 'y' })).toBe(first);
    for (const files of [{ 'a.yaml': 'x' }, { 'a.yaml': 'xy', 'b.yaml': '' }, { 'a.yaml': 'x', 'c.yaml': 'y' }])
      expect(await keyOf(files)).not.toBe(first);
  });
});

describe('cache', () => {
  const catalog = sound(oneFile(SOUND));
  const key = 'ab'.repeat(32);

  it('hit: gives the same catalogue, whole', async () => {
    expect(fromCache(folder, key)).toEqual({ catalog: null, state: 'miss' });
    await toCache(folder, key, catalog);
    expect(fromCache(folder, key)).toEqual({ catalog, state: 'hit' });
  });

  it('hit: the demo catalogue too, map by map', async () => {
    const { world } = await loadCatalogFolder(demoFolder);
    await toCache(folder, key, world.catalog);
    expect(fromCache(folder, key).catalog).toEqual(world.catalog);
  });

  it('damaged: cut short, changed or empty it is said and not used; written anew it is whole again', async () => {
    await toCache(folder, key, catalog);
    const [name = ''] = await readdir(folder);
    const whole = await readFile(join(folder, name));
    const flipped = Buffer.from(whole);
    flipped[whole.length - 9] = (whole[whole.length - 9] ?? 0) ^ 1;
    for (const bytes of [
      whole.subarray(0, 50),
      whole.subarray(0, whole.length - 1),
      flipped,
      Buffer.alloc(0),
      Buffer.from('hello'),
    ]) {
      await writeFile(join(folder, name), bytes);
      expect(fromCache(folder, key)).toEqual({ catalog: null, state: 'damaged' });
    }
    await toCache(folder, key, catalog);
    expect(fromCache(folder, key).state).toBe('hit');
  });

  it('whole or not at all: no half-written file is left, and a folder that cannot be written is no error', async () => {
    await toCache(folder, key, catalog);
    expect((await readdir(folder)).filter((name) => name.endsWith('.part'))).toEqual([]);
    await writeFile(join(folder, 'file'), 'x');
    await toCache(join(folder, 'file', 'below'), key, catalog);
    expect(fromCache(join(folder, 'file', 'below'), key).state).toBe('miss');
  });

  it('keys: another key is another entry', async () => {
    await toCache(folder, key, catalog);
    expect(fromCache(folder, 'cd'.repeat(32)).state).toBe('miss');
  });
});
