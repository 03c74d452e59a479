import { createRequire } from 'node:module';
import { deserialize, serialize } from 'node:v8';
import { parseDocument } from 'yaml';
import { type Catalog, type Chassis, type Part, readCatalog, readShop, readStock } from '../../src/catalog/index.ts';
import { type Packed, packed, unpacked } from '../../src/catalog/packed.ts';
import { fitVerdict, UNKNOWN_IDENTITY } from '../../src/fitment/index.ts';
import { ask, doesFit, makeWorld, type QuestionInput, reach, uses, type World } from '../../src/plan/index.ts';
import type { Generated } from '../generator/catalogue.ts';
import { dice } from '../generator/dice.ts';
import { bigCatalogue } from '../generator/grid.ts';
import { loaded, stockTextOf } from '../generator/load.ts';
import { questionsFor } from '../generator/questions.ts';
import { cpuMilliseconds, medianAfter, type Samples, sampled } from './measure.ts';
import { fitmentOf } from './peers.ts';

/** Rounds of a question to warm up, and those of which the median counts. */
const [WARM_UP, ROUNDS] = [4, 5];

/** A catalogue of about so many parts: what it takes to read it, what it weighs, and plans in it. */
export interface SizeTimes {
  readonly parts: number;
  readonly plan: Samples;
  /** Plans of one answer, all questions together: more is sold, so that there are more ways. */
  readonly plans: number;
  readonly reach: number;
  readonly fit: number;
  readonly uses: number;
  /** MiB of heap that the catalogue takes once linked, and taken back from the cache's form; NaN without `--expose-gc`. */
  readonly heap: number;
  readonly heapFromCache: number;
  /** CPU ms to read and link it from NDJSON, and to take it back from the cache's form. */
  readonly link: number;
  readonly fromCache: number;
  /** The bare YAML library on the same lines, text to plain values: ten times the time of every tenth. */
  readonly bareYaml: number;
}

/** The same family, with the same stock and the same questions, in ever more company. */
export function sizeTimes(parts: number): SizeTimes {
  const generated = bigCatalogue(7, parts);
  const lines = linesOf(generated);
  const bareYaml =
    10 *
    cpuMilliseconds(() => {
      for (let at = 0; at < lines.length; at += 10) parseDocument(lines[at] ?? '').toJS();
    });
  const files = [{ name: 'generated.ndjson', text: lines.join('\n') }];
  const [linked, heap, link] = weighed(() => known(readCatalog(files, 'generated').value ?? undefined));
  const bytes = serialize(packed(linked));
  const [catalog, heapFromCache, fromCache] = weighed(() => unpacked(deserialize(bytes) as Packed) as Catalog);
  const stock = readStock('stock.csv', stockTextOf(generated), catalog).value;
  const shop = readShop('shop.json', JSON.stringify(generated.shop), catalog).value;
  const world = makeWorld(catalog, stock, shop);
  const plansOf = (question: QuestionInput): number => {
    const reply = ask(world, question);
    return reply.kind === 'answer' ? reply.answer.plans.length : 0;
  };
  const questions = questionsFor(bigCatalogue(7, 1), 20).filter((question) => plansOf(question) > 0);
  const medianOf = (work: () => unknown): number =>
    medianAfter(WARM_UP, ROUNDS, () => world.market.remembered.clear(), work);
  const chassis = questions[0]?.chassis ?? '';
  const own = [...catalog.parts.values()].filter(({ sku }) => sku.startsWith('G0-')).map(({ sku }) => sku);
  const ofEach = (work: (part: string) => unknown): number =>
    medianOf(() => {
      for (const part of own) work(part);
    }) / own.length;
  return {
    parts: catalog.parts.size,
    plan: sampled(questions.map((question) => medianOf(() => ask(world, question)))),
    plans: questions.reduce((sum, question) => sum + plansOf(question), 0),
    reach: medianOf(() => reach(world, { chassis, travelNow: questions[0]?.travelNow ?? 0 })),
    fit: ofEach((part) => doesFit(catalog, { part, chassis })),
    uses: ofEach((part) => uses(catalog, part)),
    heap,
    heapFromCache,
    link,
    fromCache,
    bareYaml,
  };
}

/** One record a line, as a large catalogue is best written. */
const linesOf = ({ records }: Generated): readonly string[] =>
  Object.entries(records).flatMap(([kind, all]) =>
    Array.isArray(all) ? all.map((one) => JSON.stringify({ [kind]: [one] })) : [JSON.stringify({ [kind]: all })],
  );

/** What some work makes, the MiB of heap that this takes, and the CPU ms of the work. */
function weighed<T>(work: () => T): readonly [made: T, heap: number, took: number] {
  const before = heapNow();
  const shelf: T[] = [];
  const took = cpuMilliseconds(() => shelf.push(work()));
  return [known(shelf[0]), heapNow() - before, took];
}

/** MiB in use once the garbage is gone. */
function heapNow(): number {
  const { gc } = globalThis;
  if (gc === undefined) return Number.NaN;
  gc();
  return process.memoryUsage().heapUsed / 2 ** 20;
}

/** Verdicts in a second of CPU, at random, by engine and peers. Null where a peer is not installed. */
export interface VerdictRates {
  readonly engine: number;
  readonly map: number;
  readonly packed: number;
  readonly sqlite: number | null;
}

const VERDICTS = 1_000_000;

export function verdictRates(): VerdictRates {
  const generated = bigCatalogue(11, 2000);
  const { catalog } = loaded(generated).world;
  const fitment = fitmentOf(generated.records);
  const [skus, bodies] = [fitment.skus, fitment.bodies];
  const throwing = dice(3);
  const asked = new Int32Array(2 * VERDICTS);
  for (let at = 0; at < asked.length; at += 2) {
    asked[at] = throwing.whole(0, skus.length - 1);
    asked[at + 1] = throwing.whole(0, bodies.length - 1);
  }
  const parts = skus.map((sku) => known(catalog.parts.get(sku)));
  const chassis = bodies.map((id) => known(catalog.chassis.get(id)));
  const map = new Map<string, { readonly verdict: boolean }>();
  const packed = new Uint8Array(skus.length * bodies.length);
  skus.forEach((sku, part) => {
    bodies.forEach((id, body) => {
      const verdict = fitment.fits(part, body);
      map.set(`${sku} ${id}`, { verdict });
      packed[part * bodies.length + body] = verdict ? 1 : 0;
    });
  });
  const each = (count: number, judge: (part: number, body: number) => boolean): number => {
    let fits = 0;
    const run = (): void => {
      for (let at = 0; at < 2 * count; at += 2) if (judge(asked[at] ?? 0, asked[at + 1] ?? 0)) fits++;
    };
    run();
    const took = cpuMilliseconds(run);
    if (fits < 0) throw new Error('never');
    return (count / took) * 1000;
  };
  return {
    engine: each(VERDICTS, (part, body) => judged(catalog, known(parts[part]), known(chassis[body]))),
    map: each(VERDICTS, (part, body) => map.get(`${skus[part]} ${bodies[body]}`)?.verdict === true),
    packed: each(VERDICTS, (part, body) => packed[part * bodies.length + body] === 1),
    sqlite: sqliteRate(fitment.skus, fitment.bodies, fitment.fits, each),
  };
}

const judged = (catalog: Catalog, part: Part, chassis: Chassis): boolean =>
  fitVerdict(catalog, part, chassis, UNKNOWN_IDENTITY).kind === 'fits';

function known<T>(value: T | undefined): T {
  if (value === undefined) throw new Error('a record is missing');
  return value;
}

interface Statement {
  readonly get: (...values: readonly (string | number)[]) => unknown;
  readonly run: (...values: readonly (string | number)[]) => unknown;
}
interface Database {
  readonly exec: (sql: string) => unknown;
  readonly prepare: (sql: string) => Statement;
  readonly close: () => unknown;
}

/** SQLite through better-sqlite3, indexed and prepared: measured where somebody has installed it (`npm install --no-save better-sqlite3@12.11.1`). */
function sqliteRate(
  skus: readonly string[],
  bodies: readonly string[],
  fits: (part: number, body: number) => boolean,
  each: (count: number, judge: (part: number, body: number) => boolean) => number,
): number | null {
  let open: new (name: string) => Database;
  try {
    open = createRequire(import.meta.url)('better-sqlite3') as typeof open;
  } catch {
    return null;
  }
  const database = new open(':memory:');
  database.exec(
    'create table fit (sku text, chassis text, verdict integer, primary key (sku, chassis)) without rowid; begin',
  );
  const put = database.prepare('insert into fit values (?, ?, ?)');
  skus.forEach((sku, part) => {
    bodies.forEach((id, body) => {
      if (fits(part, body)) put.run(sku, id, 1);
    });
  });
  database.exec('commit');
  const get = database.prepare('select verdict from fit where sku = ? and chassis = ?');
  const rate = each(VERDICTS / 10, (part, body) => get.get(skus[part] ?? '', bodies[body] ?? '') !== undefined);
  database.close();
  return rate;
}

/** Every cell of what each chassis can become, all at once for a chassis. */
export function reachTimes(world: World): Samples {
  const chassis = [...world.catalog.chassis.values()].flatMap(({ id, builds }) =>
    builds.slice(0, 1).map(({ travel }) => ({ chassis: id, travelNow: travel / 1000 })),
  );
  for (const question of chassis) reach(world, question);
  return sampled(
    chassis.map((question) => {
      world.market.remembered.clear();
      return cpuMilliseconds(() => reach(world, question));
    }),
  );
}
