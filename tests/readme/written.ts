import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { parse } from 'yaml';
import { mergeRaw, readCatalog, readShop, readStock } from '../../src/catalog/index.ts';
import { makeWorld } from '../../src/plan/index.ts';
import type { Loaded } from '../support/demo.ts';

/** The page that explains the format of a catalogue, as it stands. */
export const page = readFileSync(fileURLToPath(new URL('../../catalog-schema/README.md', import.meta.url)), 'utf8');

type Fields = Readonly<Record<string, unknown>>;
type Records = Readonly<Record<string, readonly Fields[] | Fields>>;

const blocksIn = (text: string, kind: string): readonly string[] =>
  [...text.matchAll(new RegExp(`\`\`\`${kind}\\n([\\s\\S]*?)\`\`\``, 'g'))].map((match) => match[1] ?? '');

/** The files of the last section by name: a block that begins with `# file:`. */
const wholeFiles = new Map(
  ['yaml', 'csv'].flatMap((kind) =>
    blocksIn(page, kind).flatMap((block) => {
      const name = /^# file: (\S+)\n/.exec(block)?.[1];
      return name === undefined ? [] : [[name, block] as const];
    }),
  ),
);
export const fileNamed = (name: string): string => wholeFiles.get(name) ?? '';

/** The examples under a heading, each parsed; those of the last section are files and no examples. */
export function examplesUnder(heading: string): readonly Records[] {
  const from = page.indexOf(`\n### ${heading}\n`);
  if (from < 0) throw new Error(`the page has no heading ${heading}`);
  const to = page.slice(from + 1).search(/\n##/);
  return blocksIn(page.slice(from, from + 1 + to), 'yaml').map((block): Records => parse(block));
}

/** Headings of the third section that have an example. */
export const headings = [...page.matchAll(/^### (.+)$/gm)]
  .map((match) => match[1] ?? '')
  .filter((heading) => examplesUnder(heading).some((records) => !('name' in records)) && !/answers/.test(heading));

/** The whole catalogue of the page, with the examples of the headings laid over it: a record of the same id gets the example's fields, others are added. */
export const writtenWith = (...over: readonly string[]): Loaded => written(over, fileNamed('stock.csv'));

/** The same with another stock file. */
export function written(headingsOver: readonly string[], stockFile: string): Loaded {
  const over = headingsOver.flatMap(examplesUnder);
  const whole: Records = parse(fileNamed('tamblin.yaml'));
  const files = [{ name: 'tamblin.json', text: JSON.stringify(over.reduce(laidOver, whole)) }];
  const read = readCatalog(files, 'page');
  if (!read.value) throw new Error(JSON.stringify(read.problems, null, 1));
  const [stockText, shopText] = [stockFile.replace(/^#.*\n/, ''), fileNamed('shop.yaml')];
  const [stock, shop] = [readStock('stock.csv', stockText, read.value), readShop('shop.yaml', shopText, read.value)];
  return { world: makeWorld(read.value, stock.value, shop.value), files, raw: mergeRaw(files), stockText, shopText };
}

function laidOver(under: Records, over: Records): Records {
  const merged = Object.entries(over).map(([key, records]) => {
    const before = under[key];
    if (!Array.isArray(records)) return [key, { ...before, ...records }];
    const known = Array.isArray(before) ? before : [];
    const more = new Map(records.map((record) => [idOf(record), record]));
    return [
      key,
      [
        ...known.map((record: Fields) => ({ ...record, ...more.get(idOf(record)) })),
        ...records.filter((record) => !known.some((one: Fields) => idOf(one) === idOf(record))),
      ],
    ];
  });
  return { ...under, ...Object.fromEntries(merged) };
}

const idOf = ({ id, sku }: Fields): unknown => id ?? sku;
