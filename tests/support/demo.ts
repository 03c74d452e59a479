import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { mergeRaw, readCatalog, readShop, readStock, type TextFile } from '../../src/catalog/index.ts';
import { loadFiles } from '../../src/catalog/read.ts';
import {
  type AnswerDocument,
  answerSchema,
  ask,
  makeWorld,
  type QuestionInput,
  type World,
} from '../../src/plan/index.ts';

/** A catalogue folder with its stock and shop files, read whole; throws on any error in it. */
export interface Loaded {
  readonly world: World;
  readonly files: readonly TextFile[];
  readonly raw: Readonly<Record<string, unknown>>;
  readonly stockText: string | null;
  readonly shopText: string | null;
}

export async function loadCatalogFolder(folder: string): Promise<Loaded> {
  const { files, problems } = await loadFiles(folder);
  const read = readCatalog(files, folder);
  const errors = [...problems, ...read.problems].filter(({ severity }) => severity === 'error');
  if (!read.value) throw new Error(JSON.stringify(errors.slice(0, 5), null, 1));
  const [stockText, shopText] = [textOf(`${folder}/stock.csv`), textOf(`${folder}/shop.yaml`)];
  const stock = readStock('stock.csv', stockText ?? '', read.value);
  const shop = readShop('shop.yaml', shopText ?? '', read.value);
  if (stock.problems.length + shop.problems.length > 0)
    throw new Error(JSON.stringify([stock.problems, shop.problems], null, 1));
  return { world: makeWorld(read.value, stock.value, shop.value), files, raw: mergeRaw(files), stockText, shopText };
}

function textOf(path: string): string | null {
  try {
    return readFileSync(path, 'utf8');
  } catch {
    return null;
  }
}

export const demoFolder = fileURLToPath(new URL('../../demo-catalog', import.meta.url));
