import { type Minor, minor, parseMoney, type SupplyUnit } from '../quantity/index.ts';
import { parseQuantity } from '../quantity/parse.ts';
import { validateShop } from './generated/validators.js';
import { canonicalHash } from './hash.ts';
import type { Catalog, Shop } from './linked.ts';
import { nearest } from './nearest.ts';
import type { Outcome, Problem, ProblemCode } from './problems.ts';
import type { RawAmount, RawShop } from './raw.ts';
import { schemaProblems } from './schema-problems.ts';
import { type Path, parseSource, type SourceFile } from './source-file.ts';

/** Without a shop file labour costs nothing that anybody knows: the rate is zero and the plan says so. */
export const NO_SHOP: Shop = {
  hash: canonicalHash(null),
  name: '',
  rate: minor(0),
  flat: new Map(),
  tax: null,
  tools: null,
  bulk: new Map(),
};

/** Reads a shop file (YAML). */
export function readShop(name: string, text: string, catalog: Catalog): Outcome<Shop> {
  const { file, problems } = parseSource(name, text);
  if (problems.length > 0) return { value: NO_SHOP, problems };
  const value = file.values[0];
  if (!validateShop(value))
    return { value: NO_SHOP, problems: schemaProblems(file, 0, validateShop.errors ?? [], value) };
  return linkShop(file, value, catalog);
}

function linkShop(file: SourceFile, raw: RawShop, catalog: Catalog): Outcome<Shop> {
  const problems: Problem[] = [];
  const report = (path: Path, code: ProblemCode, params: Problem['params']): void =>
    void problems.push({ severity: 'error', code, params, place: file.place(0, path) });
  const price = (value: string | number, path: Path): Minor => {
    const amount = parseMoney(value, catalog.digits);
    if (amount === null) report(path, 'bad-price', { found: String(value), currency: catalog.currency });
    return amount ?? minor(0);
  };
  const refer = (known: ReadonlyMap<string, unknown>, kind: string, id: string, path: Path): boolean => {
    if (known.has(id)) return true;
    report(path, 'unknown-reference', { id, kind, nearest: nearest(id, known.keys()) });
    return false;
  };
  if (raw.currency !== catalog.currency)
    report(['currency'], 'other-currency', { found: raw.currency, expected: catalog.currency });
  const flat = new Map<string, Minor>();
  for (const [id, value] of Object.entries(raw.labour.flat ?? {})) {
    if (refer(catalog.services, 'services', id, ['labour', 'flat', id]))
      flat.set(id, price(value, ['labour', 'flat', id]));
  }
  const bulk = new Map<string, { readonly price: Minor | null; readonly per: number }>();
  for (const [index, item] of (raw.bulk ?? []).entries()) {
    const path: Path = ['bulk', index];
    if (!refer(catalog.supplies, 'supplies', item.supply, [...path, 'supply'])) continue;
    const unit = catalog.supplies.get(item.supply)?.unit ?? 'piece';
    const per = readAmount(item.per, unit);
    if (per === null || per === 0)
      report([...path, 'per'], 'wrong-unit', { specification: item.supply, unit, found: String(item.per) });
    else bulk.set(item.supply, { price: item.price === undefined ? null : price(item.price, [...path, 'price']), per });
  }
  const tools = (raw.tools ?? []).filter((id, index) => refer(catalog.tools, 'tools', id, ['tools', index]));
  const shop: Shop = {
    hash: canonicalHash(raw),
    name: raw.name,
    rate: price(raw.labour.rate, ['labour', 'rate']),
    flat,
    tax: raw.tax ?? null,
    tools: raw.tools === undefined ? null : new Set(tools),
    bulk,
  };
  return { value: shop, problems };
}

function readAmount(raw: RawAmount, unit: SupplyUnit): number | null {
  if (unit === 'piece') return typeof raw === 'number' ? raw : null;
  if (typeof raw === 'number') return null;
  const parsed = parseQuantity(unit === 'mL' ? 'volume' : 'mass', raw);
  return parsed.ok ? parsed.value : null;
}
