import { gzipSync } from 'node:zlib';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { serve, type Tried } from './service.ts';

let tried: Tried;
beforeAll(async () => {
  tried = await serve();
});
afterAll(() => tried.service.stop());

const parts = async (): Promise<readonly string[]> => {
  const html = await (await tried.ask('/')).text();
  return [...html.matchAll(/(?:src|href)="([^"]+)"/g)].flatMap(([, address]) => address ?? []);
};

describe('the page over HTTP', () => {
  it('the document is asked for anew each time, and known again', async () => {
    const answer = await tried.ask('/');
    expect(answer.status).toBe(200);
    expect(answer.headers.get('content-type')).toBe('text/html; charset=utf-8');
    expect(answer.headers.get('cache-control')).toBe('no-cache');
    const tag = answer.headers.get('etag') ?? '';
    expect(tag).toMatch(/^"[^"]+"$/);
    expect((await tried.ask('/', { headers: { 'If-None-Match': tag } })).status).toBe(304);
    expect((await tried.ask('/?fork=quennet-622')).status).toBe(200);
  });

  it('its parts bear a hash in their names, and are kept for good', async () => {
    const addresses = await parts();
    expect(addresses.length).toBeGreaterThanOrEqual(3);
    for (const address of addresses) {
      expect(address).toMatch(/^\/assets\/[a-z]+-[\w-]{8}\.(?:js|css|svg)$/);
      const answer = await tried.ask(address);
      expect(answer.status).toBe(200);
      expect(answer.headers.get('cache-control')).toBe('public, max-age=31536000, immutable');
    }
  });

  it('the icon that a browser asks for by itself is the mark of the page', async () => {
    const answer = await tried.ask('/favicon.ico');
    expect([answer.status, answer.headers.get('content-type')]).toEqual([200, 'image/svg+xml']);
    const mark = (await parts()).find((address) => address.endsWith('.svg')) ?? '';
    expect(await answer.text()).toBe(await (await tried.ask(mark)).text());
  });

  it('its policy allows what comes from here, and nothing that stands in the document', async () => {
    const policy = (await tried.ask('/')).headers.get('content-security-policy') ?? '';
    expect(policy).toContain("default-src 'self'");
    expect(policy).not.toContain('unsafe');
    const html = await (await tried.ask('/')).text();
    expect(html).not.toMatch(/<style|style=|<script(?![^>]* src=)|\son[a-z]+=/);
  });

  it('the script of the first load stays under 120 kB packed', async () => {
    const scripts = (await parts()).filter((address) => address.endsWith('.js'));
    const bytes = await Promise.all(
      scripts.map(async (address) => gzipSync(await (await tried.ask(address)).text()).length),
    );
    const sum = bytes.reduce((total, one) => total + one, 0);
    expect(sum).toBeGreaterThan(5_000);
    expect(sum).toBeLessThan(120_000);
  });

  it('other methods and what lies around it are refused as everywhere', async () => {
    const posted = await tried.ask('/', { method: 'POST' });
    expect([posted.status, posted.headers.get('allow')]).toEqual([405, 'GET, HEAD, OPTIONS']);
    for (const path of ['/assets/', '/index.html', '/assets/../package.json', '/assets/%2e%2e/legwork.js'])
      expect((await tried.ask(path)).status, path).toBe(404);
  });
});
