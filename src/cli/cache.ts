import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { mkdir, readdir, rename, rm, stat, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { deserialize, serialize } from 'node:v8';
import type { Shop, Stock } from '../catalog/index.ts';
import type { Io } from './io.ts';

/** What was read from the stock and the shop file. */
export interface Shelf {
  readonly stock: Stock;
  readonly shop: Shop;
}

/** Most files that are kept; the oldest go first. */
const KEPT = 40;

/** The folder of the cache: LEGWORK_CACHE, else where this system keeps caches. */
export async function cacheFolder(env: Io['env']): Promise<string> {
  if (env.LEGWORK_CACHE) return env.LEGWORK_CACHE;
  const { default: envPaths } = await import('env-paths');
  return envPaths('legwork', { suffix: '' }).cache;
}

/** Takes stock and shop from the cache; null where they are not there, "damaged" where they cannot be trusted. */
export function shelfFromCache(folder: string, key: string): Shelf | 'damaged' | null {
  let bytes: Buffer;
  try {
    bytes = readFileSync(shelfPath(folder, key));
  } catch {
    return null;
  }
  try {
    const body = bytes.subarray(32);
    if (!createHash('sha256').update(body).digest().equals(bytes.subarray(0, 32))) return 'damaged';
    return deserialize(body) as Shelf;
  } catch {
    return 'damaged';
  }
}

/** Puts stock and shop into the cache, whole or not at all, and lets the oldest files go. */
export async function shelfToCache(folder: string, key: string, shelf: Shelf): Promise<void> {
  try {
    await mkdir(folder, { recursive: true });
    const body = serialize(shelf);
    const part = `${shelfPath(folder, key)}.${process.pid}.part`;
    await writeFile(part, Buffer.concat([createHash('sha256').update(body).digest(), body]));
    await rename(part, shelfPath(folder, key));
    await letOldGo(folder);
  } catch {
    // the next run reads the files again
  }
}

async function letOldGo(folder: string): Promise<void> {
  const names = (await readdir(folder)).filter((name) => /^[0-9a-f]{40}\.(?:catalog|shelf)$/.test(name));
  if (names.length <= KEPT) return;
  const dated = await Promise.all(names.map(async (name) => ({ name, at: (await stat(join(folder, name))).mtimeMs })));
  dated.sort((a, b) => b.at - a.at);
  for (const { name } of dated.slice(KEPT)) await rm(join(folder, name), { force: true });
}

const shelfPath = (folder: string, key: string): string => join(folder, `${key.slice(0, 40)}.shelf`);
