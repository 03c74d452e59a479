import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { mergeRaw, NO_STOCK, readCatalog, readShop, readStock, type TextFile } from '../../src/catalog/index.ts';
import { loadFiles } from '../../src/catalog/read.ts';
import { makeWorld, type World } from '../../src/plan/index.ts';

/** A catalogue folder with its stock and shop files, read whole; throws on any error in it. */
export interface Loaded {
  readonly world: World;
  readonly files: readonly TextFile[];
  readonly raw: Readonly<Record<string, unknown>>;
  readonly stockText: string | null;
  readonly shopText: string | null;
}

/** What a test lays over a folder: one catalogue file more, and rows of the stock file instead of those of the same SKU. */
export interface Overlay {
  readonly yaml?: string;
  readonly stock?: readonly string[];
  /** Text that stands once in the folder, and what is read instead. */
  readonly instead?: readonly (readonly [string, string])[];
}

export async function loadCatalogFolder(folder: string, overlay: Overlay = {}): Promise<Loaded> {
  const { files: written, problems } = await loadFiles(folder);
  const found = (overlay.instead ?? []).reduce(withInstead, written);
  const files = overlay.yaml === undefined ? found : [...found, { name: 'overlay.yaml', text: overlay.yaml }];
  const read = readCatalog(files, folder);
  const errors = [...problems, ...read.problems].filter(({ severity }) => severity === 'error');
  if (!read.value) throw new Error(JSON.stringify(errors.slice(0, 5), null, 1));
  const [stockFile, shopText] = [textOf(`${folder}/stock.csv`), textOf(`${folder}/shop.yaml`)];
  const stockText = stockFile === null ? null : withRows(stockFile, overlay.stock ?? []);
  const stock = stockText === null ? { value: NO_STOCK, problems: [] } : readStock('stock.csv', stockText, read.value);
  const shop = readShop('shop.yaml', shopText ?? '', read.value);
  if (stock.problems.length + shop.problems.length > 0)
    throw new Error(JSON.stringify([stock.problems, shop.problems], null, 1));
  return { world: makeWorld(read.value, stock.value, shop.value), files, raw: mergeRaw(files), stockText, shopText };
}

/** The files with one text replaced; throws where it does not stand there exactly once. */
function withInstead(files: readonly TextFile[], [text, other]: readonly [string, string]): readonly TextFile[] {
  const times = files.reduce((sum, file) => sum + file.text.split(text).length - 1, 0);
  if (times !== 1) throw new Error(`stands there ${times} times: ${text}`);
  return files.map((file) => ({ ...file, text: file.text.replace(text, () => other) }));
}

/** A stock file in which each given row stands for the one of the same SKU, or is added. */
function withRows(text: string, rows: readonly string[]): string {
  const skuOf = (row: string): string => row.split(',')[0] ?? '';
  const replaced = new Set(rows.map(skuOf));
  return [
    ...text
      .trim()
      .split(/\r?\n/)
      .filter((line) => !replaced.has(skuOf(line))),
    ...rows,
    '',
  ].join('\n');
}

function textOf(path: string): string | null {
  try {
    return readFileSync(path, 'utf8');
  } catch {
    return null;
  }
}

export const demoFolder = fileURLToPath(new URL('../../demo-catalog', import.meta.url));

/** The demo catalogue with something laid over it. */
export const loadDemoWith = (overlay: Overlay): Promise<Loaded> => loadCatalogFolder(demoFolder, overlay);
