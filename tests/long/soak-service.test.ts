import { cpSync, mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setFlagsFromString } from 'node:v8';
import { runInNewContext } from 'node:vm';
import { describe, expect, it } from 'vitest';
import { reloadSchema } from '../../src/server/reload.ts';
import { serve, TOKEN } from '../server/service.ts';
import { demoFolder } from '../support/demo.ts';

const SECONDS = Number(process.env.LEGWORK_SOAK_SECONDS ?? 120);
/** However slow the machine: enough to tell a heap that grows. */
const RELOADS = 12;
setFlagsFromString('--expose-gc');
const collect: () => void = runInNewContext('gc');

describe('soak', () => {
  it('requests and reloads for two minutes: no error, and the heap stays flat', async () => {
    const folder = mkdtempSync(join(tmpdir(), 'legwork-soak-'));
    cpSync(demoFolder, folder, { recursive: true });
    const stock = readFileSync(join(folder, 'stock.csv'), 'utf8');
    const other = stock.replace('QN-AIR-192,1,1,active,5,,,A2-2', 'QN-AIR-192,1,1,active,5,123.45,EUR,A2-2');
    expect(other).not.toBe(stock);
    const rate = { all: 1e9, search: 1e9, guarded: 1e9 };
    const tried = await serve({ rate, log: 'error' }, folder);
    const question = { chassis: 'quennet-622', travelNow: 150, wants: { travel: 130 } };
    const paths = [
      '/v1/fit?part=QN-AIR-192&chassis=quennet-622',
      '/v1/fit?part=QN-VS&chassis=quennet-584',
      `/v1/plan?question=${encodeURIComponent(JSON.stringify(question))}`,
      '/v1/search?q=cartrige',
      '/v1/uses?part=QN-VS',
      '/v1/catalog/parts',
      '/v1/fit?part=NOBODY&chassis=quennet-622',
    ];
    const end = performance.now() + SECONDS * 1000;
    let [asked, reloads] = [0, 0];
    const goesOn = (): boolean => performance.now() < end || reloads < RELOADS;
    const ask = async (first: number): Promise<void> => {
      for (let at = first; goesOn(); at++) {
        const path = paths[at % paths.length] ?? '';
        const response = await tried.ask(path);
        await response.arrayBuffer();
        expect([path, response.status]).toEqual([path, path.includes('NOBODY') ? 422 : 200]);
        asked++;
      }
    };
    const [heap, resident]: [number[], number[]] = [[], []];
    const reload = async (): Promise<void> => {
      while (goesOn()) {
        writeFileSync(join(folder, 'stock.csv'), reloads % 2 === 0 ? other : stock);
        const response = await tried.ask('/v1/reload', {
          method: 'POST',
          headers: { Authorization: `Bearer ${TOKEN}` },
        });
        expect(reloadSchema.parse(await response.json()).changed).toBe(true);
        reloads++;
        await new Promise((resolve) => setTimeout(resolve, 1_000));
        collect();
        const { heapUsed, arrayBuffers, rss } = process.memoryUsage();
        heap.push(heapUsed + arrayBuffers);
        resident.push(rss);
      }
    };
    await Promise.all([ask(0), ask(1), ask(2), ask(3), reload()]);
    await tried.service.stop();
    expect(tried.log).toEqual([]);
    expect(asked).toBeGreaterThan(SECONDS);
    // the first quarter warms up; from then on the lowest of a stretch says what is kept
    const least = (of: readonly number[], quarter: number): number =>
      Math.min(...of.slice(Math.floor((quarter / 4) * of.length), Math.ceil(((quarter + 1) / 4) * of.length)));
    const quarters = (of: readonly number[]): string =>
      [0, 1, 2, 3].map((quarter) => (least(of, quarter) / 1e6).toFixed(1)).join(', ');
    console.log(
      `${asked} requests, ${reloads} reloads; MB by quarters: heap of this thread ${quarters(heap)}; the whole process, with its threads, ${quarters(resident)}`,
    );
    expect(least(heap, 3)).toBeLessThan(1.1 * least(heap, 1) + 2e6);
  });
});
