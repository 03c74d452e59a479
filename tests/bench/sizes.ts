import { createRequire } from 'node:module';
import { deserialize, serialize } from 'node:v8';
import type { Catalog, Chassis, Part } from '../../src/catalog/index.ts';
import { fitVerdict, UNKNOWN_IDENTITY } from '../../src/fitment/index.ts';
import { ask, reach, type World } from '../../src/plan/index.ts';
import { dice } from '../generator/dice.ts';
import { bigCatalogue } from '../generator/grid.ts';
import { loaded } from '../generator/load.ts';
import { questionsFor } from '../generator/questions.ts';
import { cpuMilliseconds, type Samples, sampled } from './measure.ts';
import { fitmentOf } from './peers.ts';

/** Rounds of a question to warm up, and those of which the median counts. */
const [WARM_UP, ROUNDS] = [4, 5];

/** Plans in a catalogue of about so many parts, and what it weighs. */
export interface SizeTimes {
  readonly parts: number;
  readonly plan: Samples;
  /** MiB of heap that the linked catalogue, its files left aside, takes; NaN without `--expose-gc`. */
  readonly heap: number;
  /** CPU ms to link it from its text, and to take it back from its serialised form. */
  readonly link: number;
  readonly fromCache: number;
}

/** The same family and the same questions, in ever more company. */
export function sizeTimes(parts: number): SizeTimes {
  const generated = bigCatalogue(7, parts);
  const shelf: { world: World | null } = { world: null };
  const link = cpuMilliseconds(() => {
    shelf.world = loaded(generated).world;
  });
  const { world } = shelf;
  if (world === null) throw new Error('nothing was loaded');
  const bytes = serialize(world.catalog);
  const before = heapNow();
  const back: { catalog: unknown } = { catalog: null };
  const fromCache = cpuMilliseconds(() => {
    back.catalog = deserialize(bytes);
  });
  const heap = heapNow() - before;
  const answered = questionsFor(generated, 20).filter((question) => {
    const reply = ask(world, question);
    return reply.kind === 'answer' && reply.answer.status === 'answered';
  });
  const medians = answered.map((question) => {
    const rounds = Array.from({ length: WARM_UP + ROUNDS }, () => {
      world.market.remembered.clear();
      return cpuMilliseconds(() => ask(world, question));
    });
    return sampled(rounds.slice(WARM_UP)).median;
  });
  return { parts: world.catalog.parts.size, plan: sampled(medians), heap, link, fromCache };
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
