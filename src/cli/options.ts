import type { Fill } from './fill.ts';

/** One option of a command. A new one is one line in a table. */
export interface OptionSpec {
  readonly name: string;
  /** What stands for the value in help; null for a switch. */
  readonly value: string | null;
  readonly help: string;
  readonly example: string;
  readonly repeat: 'once' | 'many';
  /** How it fills the question; null for an option that is not about the question. */
  readonly fill: Fill | null;
}

export const valued = (
  name: string,
  value: string,
  example: string,
  help: string,
  fill: Fill | null = null,
): OptionSpec => ({
  name,
  value,
  example,
  help,
  repeat: fill === null || fill.as === 'one' || fill.as === 'switch' ? 'once' : 'many',
  fill,
});
export const toggle = (name: string, help: string, fill: Fill | null = null): OptionSpec => ({
  name,
  value: null,
  example: '',
  help,
  repeat: 'once',
  fill,
});

/** Options about where the catalogue, the stock and the shop are. */
export const FOLDER_OPTIONS: readonly OptionSpec[] = [
  valued('catalog', 'DIR', 'my-catalog', 'folder of the catalogue; else LEGWORK_CATALOG, else the demo catalogue'),
  valued('stock', 'FILE', 'stock.csv', 'stock and prices; else stock.csv in the folder of the catalogue, if there'),
  valued('shop', 'FILE', 'shop.yaml', 'labour rate, tax, tools; else shop.yaml in that folder, if there'),
];
/** Where a drawing goes. */
export const PICTURE = valued('picture', 'FILE.svg', 'change.svg', 'also draw spring, bike and fork into this file');
export const NO_CACHE = toggle('no-cache', 'read the files anew and leave the cache alone');

export const CHECK_OPTIONS: readonly OptionSpec[] = FOLDER_OPTIONS.filter(({ name }) => name !== 'catalog');

export const LIST_OPTIONS: readonly OptionSpec[] = [
  ...FOLDER_OPTIONS.filter(({ name }) => name === 'catalog'),
  valued(
    'gtin',
    'GTIN',
    '2100001001926',
    'only the part, kit or supply that goes by this GTIN, itself or by one of its packs',
  ),
  valued('format', 'FORMAT', 'json', 'text (the default on a terminal) or json (the default elsewhere)'),
  NO_CACHE,
];
