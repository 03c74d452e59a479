import type { RawFile } from '../../src/catalog/raw.ts';
import type { QuestionInput } from '../../src/plan/question.ts';
import { catalogueOf, type Generated, inCompany } from './catalogue.ts';
import { dice } from './dice.ts';
import { type FamilyShape, gridShape } from './shape.ts';

/** A question about a family of so many slots, each with so many candidates. */
export interface Grid {
  readonly generated: Generated;
  readonly question: QuestionInput;
}

/**
 * Everything is to be renewed, everything is there at a price, and the work is the same whatever is chosen: all that is left is the cheapest choice of parts, packs
 * and kits that share an opening. Loose: a tenth of the pairs of neighbours exclude each other; tight: a third and more.
 */
export function singleGrid(seed: number, slots: number, candidates: number): Grid {
  const generated = catalogueOf(seed, [gridShape(slots, candidates)]);
  const whole: Generated = { ...generated, records: priced(generated), stock: [] };
  const stock = skusOf(whole.records).map((sku) => `${sku},99,0,active,2,,,`);
  return { generated: { ...whole, stock }, question: renewAll(whole) };
}

/** The same with stock and waiting times as they come, of which several plans may be right. */
export function frontGrid(seed: number, slots: number, candidates: number): Grid {
  const generated = catalogueOf(seed, [gridShape(slots, candidates)]);
  return { generated, question: renewAll(generated) };
}

/** A catalogue of about so many parts: families of middling size, the first of which with its stock is the same beside however many. */
export function bigCatalogue(seed: number, parts: number): Generated {
  const shape: FamilyShape = { bodies: 3, travels: 6, springs: 2, dampers: 5, modules: 1, candidates: 4 };
  const families = Math.max(1, Math.round(parts / PARTS_OF_A_FAMILY));
  return inCompany(
    catalogueOf(seed, [shape]),
    Array.from({ length: families - 1 }, () => shape),
  );
}
/** About what a family of that shape has. */
const PARTS_OF_A_FAMILY = 30;

function renewAll({ seed, records }: Generated): QuestionInput {
  const { families: [family] = [], chassis: [body] = [] } = records;
  const slots = Object.keys(family?.slots ?? {}).filter((slot) => /^(module|damper|wipers)/.test(slot));
  const throwing = dice(seed ^ 0x9e1d);
  return {
    chassis: body?.id ?? '',
    travelNow: Number((body?.builds[0]?.travel ?? '').replace(' mm', '')),
    wants: { renew: slots },
    prefer: throwing.pick(['money', 'time', 'wait']),
  };
}

/** Every price that is missing is made up. */
function priced({ records }: Generated): RawFile {
  const price = '9.95';
  return {
    ...records,
    parts: (records.parts ?? []).map((part) => ({ price, ...part })),
    kits: (records.kits ?? []).map((kit) => ({ price, ...kit })),
    supplies: (records.supplies ?? []).map((supply) => ({
      ...supply,
      packs: supply.packs.map((pack) => ({ price, ...pack })),
    })),
  };
}

const skusOf = ({ parts = [], kits = [], supplies = [] }: RawFile): readonly string[] => [
  ...parts.map(({ sku }) => sku),
  ...kits.map(({ sku }) => sku),
  ...supplies.flatMap(({ packs }) => packs.map(({ sku }) => sku)),
];
