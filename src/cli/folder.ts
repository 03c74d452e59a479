import { relative } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Io } from './io.ts';
import type { Given } from './read-options.ts';

/** Where the catalogue comes from: said by the command line, by the environment, or the demo that comes along. */
export interface CatalogFolder {
  readonly path: string;
  readonly by: 'option' | 'environment' | 'demo';
}

export function catalogFolder(given: Given, env: Io['env']): CatalogFolder {
  const option = given.values.get('catalog')?.[0];
  if (option !== undefined) return { path: option, by: 'option' };
  const set = env.LEGWORK_CATALOG;
  if (set !== undefined && set !== '') return { path: set, by: 'environment' };
  const near = relative(process.cwd(), DEMO);
  return { path: near === '' || near.startsWith('..') ? DEMO : near, by: 'demo' };
}

const DEMO = fileURLToPath(
  new URL(import.meta.url.endsWith('.ts') ? '../../demo-catalog' : '../demo-catalog', import.meta.url),
);
