import { createHash } from 'node:crypto';
import { readdirSync, readFileSync, statSync } from 'node:fs';
import { mkdir, rename, writeFile } from 'node:fs/promises';
import { join, relative } from 'node:path';
import { deserialize, serialize } from 'node:v8';
import { byCodeUnit } from '../quantity/index.ts';
import type { TextFile } from './catalog.ts';
import type { Catalog } from './linked.ts';
import { type Packed, packed, unpacked } from './packed.ts';
import type { Problem } from './problems.ts';

/** The largest catalogue file that is read; a larger one is a mistake or an attack. */
const FILE_LIMIT = 64 * 1024 * 1024;
const ENDINGS = ['.yaml', '.yml', '.json', '.ndjson'];
/** Files beside the catalogue that are not part of it. */
const BESIDE = new Set(['shop.yaml', 'shop.yml', 'shop.json']);

export interface LoadedFiles {
  readonly files: readonly TextFile[];
  readonly problems: readonly Problem[];
  /** Hash of the file bytes and names: the key of the cache. */
  readonly key: string;
}

/**
 * Reads the text of every catalogue file in a folder and the folders below it, in code-unit order of their names. It
 * waits for the disk, as `fromCache` does: a command has nothing else to do meanwhile, and the service reads in a thread.
 */
export function loadFiles(folder: string): LoadedFiles {
  const problems: Problem[] = [];
  const files: TextFile[] = [];
  const hash = createHash('sha256');
  for (const name of fileNames(folder, problems)) {
    const path = join(folder, name);
    const fail = (reason: string): void =>
      void problems.push({
        severity: 'error',
        code: 'not-readable',
        params: { reason },
        place: { file: name, line: 1, column: 1, excerpt: '' },
      });
    try {
      const { size } = statSync(path);
      if (size > FILE_LIMIT) {
        problems.push({
          severity: 'error',
          code: 'file-too-large',
          params: { bytes: size, limit: FILE_LIMIT },
          place: { file: name, line: 1, column: 1, excerpt: '' },
        });
        continue;
      }
      const bytes = readFileSync(path);
      hash.update(`${name}\0${bytes.length}\0`).update(bytes);
      files.push({ name, text: new TextDecoder('utf-8', { fatal: true }).decode(bytes) });
    } catch (error) {
      fail(
        error instanceof TypeError
          ? 'it is not UTF-8 text'
          : ((error as NodeJS.ErrnoException).code ?? 'cannot be read'),
      );
    }
  }
  return { files, problems, key: hash.digest('hex') };
}

function fileNames(folder: string, problems: Problem[]): string[] {
  try {
    const entries = readdirSync(folder, { recursive: true, withFileTypes: true });
    const names = entries
      .filter(
        (entry) => entry.isFile() && ENDINGS.some((ending) => entry.name.endsWith(ending)) && !BESIDE.has(entry.name),
      )
      .map((entry) => relative(folder, join(entry.parentPath ?? entry.path, entry.name)));
    if (names.length === 0)
      problems.push({ severity: 'error', code: 'empty-catalog', params: { folder }, place: null });
    return names.sort(byCodeUnit);
  } catch (error) {
    problems.push({
      severity: 'error',
      code: 'not-readable',
      params: { reason: whyNoFolder(folder, error) },
      place: null,
    });
    return [];
  }
}

const whyNoFolder = (folder: string, error: unknown): string => {
  const { code } = error as NodeJS.ErrnoException;
  if (code === 'ENOTDIR') return `${folder} is a file, and a catalogue is the folder that its files lie in`;
  return code === 'EACCES' ? `the folder ${folder} may not be read` : `there is no folder ${folder}`;
};

export type CacheState = 'hit' | 'miss' | 'damaged' | 'off';

/** Takes the linked catalogue from the cache; a damaged entry is ignored and said. */
export function fromCache(
  cacheFolder: string,
  key: string,
): { readonly catalog: Catalog | null; readonly state: CacheState } {
  let bytes: Buffer;
  try {
    bytes = readFileSync(cachePath(cacheFolder, key));
  } catch {
    return { catalog: null, state: 'miss' };
  }
  try {
    const digest = bytes.subarray(0, 32);
    const body = bytes.subarray(32);
    if (!createHash('sha256').update(body).digest().equals(digest)) return { catalog: null, state: 'damaged' };
    return { catalog: unpacked(deserialize(body) as Packed) as Catalog, state: 'hit' };
  } catch {
    return { catalog: null, state: 'damaged' };
  }
}

/** Puts the linked catalogue into the cache, whole or not at all; a cache that cannot be written is no error. */
export async function toCache(cacheFolder: string, key: string, catalog: Catalog): Promise<void> {
  try {
    await mkdir(cacheFolder, { recursive: true });
    const body = serialize(packed(catalog));
    const path = cachePath(cacheFolder, key);
    const part = `${path}.${process.pid}.part`;
    await writeFile(part, Buffer.concat([createHash('sha256').update(body).digest(), body]));
    await rename(part, path);
  } catch {
    // the next run reads the files again
  }
}

const cachePath = (folder: string, key: string): string => join(folder, `${key.slice(0, 40)}.catalog`);
