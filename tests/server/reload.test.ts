import { cpSync, mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeEach, describe, expect, it } from 'vitest';
import { problemSchema } from '../../src/server/problems.ts';
import { reloadSchema } from '../../src/server/reload.ts';
import { demoFolder } from '../support/demo.ts';
import { serve, TOKEN } from './service.ts';

const folder = mkdtempSync(join(tmpdir(), 'legwork-reload-'));
cpSync(demoFolder, folder, { recursive: true });
const tried = serve({ rate: { all: 100_000, search: 100_000, guarded: 100_000 } }, folder);
afterAll(async () => (await tried).service.stop());

const stock = readFileSync(join(demoFolder, 'stock.csv'), 'utf8');
const quennet = readFileSync(join(demoFolder, 'quennet.yaml'), 'utf8');
/** The cartridge that the plan buys costs more: another price in the plan, the same verdict on its fit. */
const dearer = stock.replace('QN-AIR-192,1,1,active,5,,,A2-2', 'QN-AIR-192,1,1,active,5,123.45,EUR,A2-2');
const put = (name: string, text: string): void => writeFileSync(join(folder, name), text);

async function reload(): Promise<Response> {
  return (await tried).ask('/v1/reload', { method: 'POST', headers: { Authorization: `Bearer ${TOKEN}` } });
}

const FIT = '/v1/fit?part=QN-AIR-192&chassis=quennet-622';
const PLAN = `/v1/plan?question=${encodeURIComponent(
  JSON.stringify({ chassis: 'quennet-622', travelNow: 150, wants: { travel: 130 } }),
)}`;
const textAt = async (path: string): Promise<string> => (await (await tried).ask(path)).text();

beforeEach(async () => {
  put('stock.csv', stock);
  put('quennet.yaml', quennet);
  expect((await reload()).status).toBe(200);
});

describe('reload', () => {
  it('other stock: another stock hash, another answer, other tags; the catalogue is the same', async () => {
    expect(dearer).not.toBe(stock);
    const { ask } = await tried;
    const first = await ask(PLAN);
    const [tag, text] = [first.headers.get('etag') ?? '', await first.text()];
    put('stock.csv', dearer);
    const { changed, before, after } = reloadSchema.parse(await (await reload()).json());
    expect([changed, before.catalog === after.catalog, before.stock === after.stock]).toEqual([true, true, false]);
    const again = await ask(PLAN, { headers: { 'If-None-Match': tag } });
    expect([again.status, (await again.text()) === text]).toEqual([200, false]);
    expect(reloadSchema.parse(await (await reload()).json()).changed).toBe(false);
  });

  it('a bad catalogue: refused, each fault with its place, and the old one answers on', async () => {
    const before = [await textAt(FIT), await textAt(PLAN)];
    put('quennet.yaml', quennet.replace('wheel: 622', 'wheel: six').replace('wheel: 584', 'wheel: five'));
    const refused = await reload();
    const problem = problemSchema.parse(await refused.json());
    expect([refused.status, problem.code]).toEqual([409, 'catalog-refused']);
    expect(problem.errors.length).toBeGreaterThanOrEqual(2);
    for (const { place, detail } of problem.errors) {
      expect(place).toMatch(/^quennet\.yaml:\d+:\d+$/);
      expect(detail).not.toContain(folder);
    }
    expect([await textAt(FIT), await textAt(PLAN)]).toEqual(before);
  });

  it('a catalogue that contradicts itself, and one that is gone, are refused as well', async () => {
    put('stock.csv', 'sku,price\nQN-AIR-192,cheap\n');
    const bad = problemSchema.parse(await (await reload()).json());
    expect([bad.code, bad.errors.every(({ place }) => place?.startsWith('stock.csv:'))]).toEqual([
      'catalog-refused',
      true,
    ]);
    put('stock.csv', stock);
    put('quennet.yaml', quennet.replace('lowers: QN-L-622', 'lowers: QN-L-584'));
    expect((await reload()).status).toBe(409);
  });

  it('two at once: one is done, the other is told to wait', async () => {
    const both = await Promise.all([reload(), reload()]);
    expect(both.map(({ status }) => status).sort()).toEqual([200, 409]);
    const waits = both.find(({ status }) => status === 409);
    expect(waits?.headers.get('retry-after')).toBe('5');
  });

  it('while others ask: every answer is wholly of one catalogue, and none is missing', async () => {
    const { ask } = await tried;
    const known = new Map([
      [PLAN, new Set([await textAt(PLAN)])],
      [FIT, new Set([await textAt(FIT)])],
    ]);
    put('stock.csv', dearer);
    await reload();
    for (const [path, texts] of known) texts.add(await textAt(path));
    expect([known.get(PLAN)?.size, known.get(FIT)?.size]).toEqual([2, 1]);
    let done = false;
    let asked = 0;
    const asker = async (path: string): Promise<void> => {
      while (!done) {
        const response = await ask(path);
        expect(response.status).toBe(200);
        expect(known.get(path)?.has(await response.text())).toBe(true);
        asked++;
      }
    };
    const askers = [PLAN, FIT, PLAN, FIT, FIT].map(asker);
    for (let round = 0; round < 4; round++) {
      put('stock.csv', round % 2 === 0 ? stock : dearer);
      expect(reloadSchema.parse(await (await reload()).json()).changed).toBe(true);
    }
    done = true;
    await Promise.all(askers);
    expect(asked).toBeGreaterThan(20);
  });
});
