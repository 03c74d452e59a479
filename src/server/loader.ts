import { Worker } from 'node:worker_threads';
import type { Problem } from '../catalog/index.ts';
import type { Coded } from '../report/words/say.ts';
import { WORKER } from './crew.ts';

/** Which catalogue, stock and shop to load: the options of the command line and the environment. */
export interface LoadOrder {
  readonly values: Readonly<Record<string, readonly string[]>>;
  readonly env: Readonly<Record<string, string | undefined>>;
}

/** What was loaded, whole and sound; or `pack` null, and all that is wrong. */
export interface LoadResult {
  readonly folder: string;
  readonly by: 'option' | 'environment' | 'demo';
  readonly stock: string | null;
  readonly shop: string | null;
  readonly pack: SharedArrayBuffer | null;
  /** The hashes of catalogue, stock and shop as one text; empty where nothing sound was loaded. */
  readonly hash: string;
  readonly problems: readonly Problem[];
  readonly faults: readonly Coded[];
  readonly notes: readonly string[];
}

/** Loads in a thread of its own, so that requests are answered meanwhile. */
export function load(order: LoadOrder): Promise<LoadResult> {
  return new Promise((resolve, reject) => {
    const worker = new Worker(WORKER, { workerData: { kind: 'load', ...order } });
    worker.once('message', resolve);
    worker.once('error', reject);
    worker.once('exit', (code) => reject(new Error(`the loading thread ended with ${code}`)));
  });
}
