import { serialize } from 'node:v8';
import { parentPort } from 'node:worker_threads';
import { loadWorld } from '../cli/load-world.ts';
import { noPaint } from '../report/paint.ts';
import type { LoadOrder, LoadResult } from './loader.ts';
import type { Packed } from './pack.ts';

/** Loads catalogue, stock and shop as every command does, and hands them over as bytes that all threads share. */
export async function loadInThread({ values, env }: LoadOrder): Promise<void> {
  const silent = (): void => undefined;
  const io = {
    out: silent,
    err: silent,
    env,
    columns: undefined,
    outIsTerminal: false,
    paintOut: noPaint,
    paintErr: noPaint,
  };
  const { sources, catalog, shelf, problems, faults, notes } = await loadWorld(
    { argument: null, values: new Map(Object.entries(values)), faults: [] },
    io,
  );
  const errors = problems.filter(({ severity }) => severity === 'error');
  const sound = catalog !== null && shelf !== null && errors.length === 0 && faults.length === 0;
  const result: LoadResult = {
    folder: sources.folder.path,
    by: sources.folder.by,
    stock: sources.stock?.name ?? null,
    shop: sources.shop?.name ?? null,
    pack: sound ? packed({ catalog, ...shelf }) : null,
    hash: sound ? [catalog.hash, shelf.stock.hash, shelf.shop.hash].join(' ') : '',
    problems: errors,
    faults,
    notes,
  };
  parentPort?.postMessage(result);
}

function packed(world: Packed): SharedArrayBuffer {
  const bytes = serialize(world);
  const shared = new SharedArrayBuffer(bytes.length);
  Buffer.from(shared).set(bytes);
  return shared;
}
