import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Catalog, Problem } from '../catalog/index.ts';
import { fromCache, type LoadedFiles, loadFiles, toCache } from '../catalog/read.ts';
import type { Coded } from '../report/words/say.ts';
import { cacheFolder, type Shelf, shelfFromCache, shelfToCache } from './cache.ts';
import { type CatalogFolder, catalogFolder } from './folder.ts';
import type { Io } from './io.ts';
import type { Given } from './read-options.ts';
import { BUILD, VERSION } from './version.ts';

/** A file beside the catalogue: as people named it, with its text; null where there is none. */
export interface BesideFile {
  readonly name: string;
  readonly text: string;
}
export interface Sources {
  readonly folder: CatalogFolder;
  readonly files: LoadedFiles['files'];
  readonly stock: BesideFile | null;
  readonly shop: BesideFile | null;
}
export interface LoadedWorld {
  readonly sources: Sources;
  readonly catalog: Catalog | null;
  readonly shelf: Shelf | null;
  readonly problems: readonly Problem[];
  readonly faults: readonly Coded[];
  /** Said on standard error; nothing depends on it. */
  readonly notes: readonly string[];
}

/**
 * Reads catalogue, stock and shop, or takes them from the cache under the hash of their bytes. Whatever is wrong with
 * any of the three is found in one go.
 */
export async function loadWorld(given: Given, io: Io): Promise<LoadedWorld> {
  const { sources, key, problems, faults } = readSources(given, io.env);
  const cached = given.values.has('no-cache') || BUILD === '' ? null : await cacheFolder(io.env);
  const notes: string[] = [];
  const unread = problems.length > 0 || faults.length > 0;
  const catalogKey = hashed(['catalog', key]);
  const known = cached === null || unread ? null : fromCache(cached, catalogKey);
  if (known?.state === 'damaged') notes.push(DAMAGED);
  const read = known?.catalog ? { value: known.catalog, problems: [] } : await parseCatalog(sources, problems);
  const catalog = read.value;
  if (cached !== null && catalog && !known?.catalog) await toCache(cached, catalogKey, catalog);
  const whole = { sources, catalog, problems: [...problems, ...read.problems], faults, notes };
  if (!catalog || faults.length > 0) return { ...whole, shelf: null };
  const shelfKey = hashed(['shelf', catalogKey, textOf(sources.stock), textOf(sources.shop)]);
  const shelf = cached === null ? null : shelfFromCache(cached, shelfKey);
  if (shelf === 'damaged' && notes.length === 0) notes.push(DAMAGED);
  if (shelf !== null && shelf !== 'damaged') return { ...whole, shelf };
  const parsed = await parseShelf(sources, catalog);
  if (cached !== null && parsed.problems.length === 0) await shelfToCache(cached, shelfKey, parsed.shelf);
  return { ...whole, problems: [...whole.problems, ...parsed.problems], shelf: parsed.shelf };
}

const DAMAGED = 'the cache was damaged; it was left aside and is written anew';
const textOf = (file: BesideFile | null): string => (file === null ? 'none' : `${file.name}\0${file.text}`);
const hashed = (parts: readonly string[]): string =>
  createHash('sha256')
    .update([VERSION, BUILD, process.versions.v8, ...parts].join('\0\0'))
    .digest('hex');

function readSources(
  given: Given,
  env: Io['env'],
): { sources: Sources; key: string; problems: readonly Problem[]; faults: readonly Coded[] } {
  const folder = catalogFolder(given, env);
  const { files, problems, key } = loadFiles(folder.path);
  const stock = besideFile(given, folder, 'stock', 'stock.csv');
  const shop = besideFile(given, folder, 'shop', 'shop.yaml');
  const faults = [stock, shop].flatMap((one) => ('fault' in one ? [one.fault] : []));
  return {
    sources: { folder, files, stock: 'file' in stock ? stock.file : null, shop: 'file' in shop ? shop.file : null },
    key,
    problems,
    faults,
  };
}

/** A file that was named must be there; the usual one in the folder may be missing. */
function besideFile(
  given: Given,
  folder: CatalogFolder,
  option: 'stock' | 'shop',
  usual: string,
): { readonly file: BesideFile | null } | { readonly fault: Coded } {
  const named = given.values.get(option)?.[0];
  try {
    const text = readFileSync(named ?? join(folder.path, usual), 'utf8');
    return { file: { name: named ?? usual, text } };
  } catch (error) {
    if (named === undefined) return { file: null };
    const { code } = error as NodeJS.ErrnoException;
    const reason =
      code === 'ENOENT' ? 'there is no such file' : code === 'EISDIR' ? 'it is a folder' : (code ?? 'unknown');
    return { fault: { code: 'file-not-readable', params: { file: named, reason, option: `--${option}` } } };
  }
}

async function parseCatalog(
  { files, folder }: Sources,
  before: readonly Problem[],
): Promise<{ readonly value: Catalog | null; readonly problems: readonly Problem[] }> {
  if (files.length === 0 && before.length > 0) return { value: null, problems: [] };
  const { contradictions, readCatalog } = await import('./parse-files.ts');
  const read = readCatalog(files, folder.path);
  const broken = [...before, ...read.problems].some(({ severity }) => severity === 'error');
  if (broken || !read.value) return { value: null, problems: read.problems };
  const sense = contradictions(read.value).map((problem) => withExcerpt(problem, files));
  const isContradicted = sense.some(({ severity }) => severity === 'error');
  return { value: isContradicted ? null : read.value, problems: [...read.problems, ...sense] };
}

/** The line of the file beside a problem that was found after the text was left behind. */
export function withExcerpt(problem: Problem, files: Sources['files']): Problem {
  const { place } = problem;
  if (place === null || place.excerpt !== '') return problem;
  const line = files.find(({ name }) => name === place.file)?.text.split(/\r?\n/)[place.line - 1] ?? '';
  return { ...problem, place: { ...place, excerpt: line, column: Math.max(1, line.search(/\S/) + 1) } };
}

async function parseShelf(
  { stock, shop }: Sources,
  catalog: Catalog,
): Promise<{ readonly shelf: Shelf; readonly problems: readonly Problem[] }> {
  const { NO_SHOP, NO_STOCK, readShop, readStock } = await import('./parse-files.ts');
  const [rows, rates] = [
    stock ? readStock(stock.name, stock.text, catalog) : { value: NO_STOCK, problems: [] },
    shop ? readShop(shop.name, shop.text, catalog) : { value: NO_SHOP, problems: [] },
  ];
  return { shelf: { stock: rows.value, shop: rates.value }, problems: [...rows.problems, ...rates.problems] };
}
