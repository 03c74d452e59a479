import { stringify } from 'yaml';
import { mergeRaw, readCatalog, readShop, readStock, type TextFile } from '../../src/catalog/index.ts';
import { contradictions } from '../../src/check/index.ts';
import { makeWorld } from '../../src/plan/index.ts';
import type { Loaded } from '../support/demo.ts';
import type { Generated } from './catalogue.ts';

/** A generated catalogue through the product's own reader, from text; throws on anything that the reader or the check of its sense finds. */
export function loaded(generated: Generated): Loaded {
  const files = filesOf(generated);
  const read = readCatalog(files, 'generated');
  if (!read.value) throw new Error(`seed ${generated.seed}: ${JSON.stringify(read.problems.slice(0, 3))}`);
  const [stockText, shopText] = [stockTextOf(generated), stringify(generated.shop)];
  const stock = readStock('stock.csv', stockText, read.value);
  const shop = readShop('shop.yaml', shopText, read.value);
  const problems = [...read.problems, ...stock.problems, ...shop.problems, ...contradictions(read.value)];
  if (problems.length > 0) throw new Error(`seed ${generated.seed}: ${JSON.stringify(problems.slice(0, 3))}`);
  return { world: makeWorld(read.value, stock.value, shop.value), files, raw: mergeRaw(files), stockText, shopText };
}

export const filesOf = ({ records }: Generated): readonly TextFile[] => [
  { name: 'generated.json', text: JSON.stringify(records) },
];

const HEADER = 'sku,on_hand,reserved,state,lead_days,price,currency,bin';
export const stockTextOf = ({ stock }: Generated): string => `${[HEADER, ...stock].join('\n')}\n`;
