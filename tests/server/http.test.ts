import { afterAll, describe, expect, it } from 'vitest';
import { fitSchema, questionSchema } from '../../src/plan/index.ts';
import { renderPicture } from '../../src/server/answers.ts';
import { fitBatchSchema } from '../../src/server/fit-batch.ts';
import { problemSchema } from '../../src/server/problems.ts';
import { reloadSchema } from '../../src/server/reload.ts';
import { searchSchema } from '../../src/server/search-records.ts';
import { demoFolder, loadCatalogFolder } from '../support/demo.ts';
import { serve, TOKEN } from './service.ts';

const tried = serve();
afterAll(async () => (await tried).service.stop());

const FIT = '/v1/fit?part=QN-AIR-192&chassis=quennet-622';
const QUESTION = { chassis: 'quennet-622', travelNow: 150, wants: { travel: 130 } };
const asked = (question: unknown): string => `/v1/plan?question=${encodeURIComponent(JSON.stringify(question))}`;

/** The problem in a response, whole and in the right form. */
async function problemIn(response: Response) {
  expect(response.headers.get('content-type')).toBe('application/problem+json; charset=utf-8');
  expect(response.headers.get('cache-control')).toBe('no-store');
  const problem = problemSchema.parse(await response.json());
  expect(problem.status).toBe(response.status);
  expect(problem.type).toBe(`/v1/problems/${problem.code}`);
  expect(JSON.stringify(problem)).not.toMatch(/\.[jt]s:\d|node_modules|Error: /);
  return problem;
}

describe('reading', () => {
  it('entity tag: strong, the same for the same question, another for another, and known again', async () => {
    const { ask } = await tried;
    const first = await ask(FIT);
    const tag = first.headers.get('etag') ?? '';
    expect([first.status, tag]).toEqual([200, expect.stringMatching(/^"[\w-]{27}"$/)]);
    expect((await ask(FIT.replace(/(part=[^&]*)&(.*)/, '$2&$1'))).headers.get('etag')).toBe(tag);
    expect((await ask(FIT.replace('192', '212'))).headers.get('etag')).not.toBe(tag);
    for (const known of [tag, `W/${tag}`, `"other", ${tag}`, '*']) {
      const again = await ask(FIT, { headers: { 'If-None-Match': known } });
      expect([again.status, again.headers.get('etag'), await again.text()]).toEqual([304, tag, '']);
    }
    expect((await ask(FIT, { headers: { 'If-None-Match': '"other"' } })).status).toBe(200);
    // any answer is known: there must be one (RFC 9110, 13.2.1)
    expect((await ask('/v1/plan', { headers: { 'If-None-Match': '*' } })).status).toBe(422);
    expect((await ask('/v1/fit?part=NOBODY&chassis=quennet-622', { headers: { 'If-None-Match': '*' } })).status).toBe(
      422,
    );
  });

  it('HEAD: the headers of GET and no body', async () => {
    const { ask } = await tried;
    for (const path of [FIT, '/v1/catalog', '/health', '/ready', asked(QUESTION)]) {
      const [head, get] = [await ask(path, { method: 'HEAD' }), await ask(path)];
      const without = ({ headers }: Response): Record<string, string> =>
        Object.fromEntries([...headers].filter(([name]) => !['date', 'connection', 'keep-alive'].includes(name)));
      expect([head.status, without(head), await head.text()]).toEqual([get.status, without(get), '']);
    }
  });

  it('OPTIONS says what an address takes; any other method is refused with the same', async () => {
    const { ask } = await tried;
    for (const [path, allow] of [
      ['/v1/fit', 'GET, HEAD, POST, OPTIONS'],
      ['/v1/uses', 'GET, HEAD, OPTIONS'],
      ['/v1/reload', 'POST, OPTIONS'],
    ] as const) {
      const said = await ask(path, { method: 'OPTIONS' });
      expect([said.status, said.headers.get('allow')]).toEqual([204, allow]);
      const refused = await ask(path, { method: 'DELETE' });
      expect([refused.status, refused.headers.get('allow')]).toEqual([405, allow]);
      expect((await problemIn(refused)).code).toBe('method-not-allowed');
    }
  });

  it('picture: what the command line draws, as an image that no script runs in; another form is refused', async () => {
    const { ask } = await tried;
    const path = asked(QUESTION).replace('plan', 'picture');
    const { world } = await loadCatalogFolder(demoFolder);
    const drawn = (way: number) => renderPicture(world, { question: questionSchema.parse(QUESTION), way });
    for (const way of [1, 2]) {
      const response = await ask(`${path}&way=${way}`, { headers: { Accept: 'image/svg+xml' } });
      expect([response.status, response.headers.get('content-type')]).toEqual([200, 'image/svg+xml; charset=utf-8']);
      expect(response.headers.get('content-security-policy')).toContain("default-src 'self'");
      expect({ kind: 'text', text: await response.text() }).toEqual(drawn(way));
    }
    for (const Accept of ['application/json', 'image/png', 'text/html, image/svg+xml;q=0']) {
      const refused = await ask(path, { headers: { Accept } });
      expect([refused.status, (await problemIn(refused)).code]).toEqual([406, 'not-acceptable']);
    }
    const none = await ask(`${path}&way=3`);
    expect([none.status, (await problemIn(none)).code]).toEqual([404, 'nothing-to-draw']);
    const wrong = await problemIn(await ask(`${path}&way=0`));
    expect([wrong.status, wrong.errors[0]?.pointer]).toEqual([400, '/way']);
  });

  it('packed: the same bytes, another tag, and either tag is known again', async () => {
    const { ask } = await tried;
    const tags = new Set<string>();
    const texts = new Set<string>();
    for (const coding of ['identity', 'gzip', 'br']) {
      const response = await ask('/v1/catalog/parts', { headers: { 'Accept-Encoding': coding } });
      expect(response.headers.get('content-encoding')).toBe(coding === 'identity' ? null : coding);
      expect(response.headers.get('vary')).toContain('Accept-Encoding');
      const tag = response.headers.get('etag') ?? '';
      tags.add(tag);
      texts.add(await response.text());
      const again = await ask('/v1/catalog/parts', { headers: { 'If-None-Match': tag } });
      // the tag of what the client has, in the coding that it has
      expect([again.status, again.headers.get('etag'), again.headers.get('vary')]).toEqual([
        304,
        tag,
        expect.stringContaining('Accept-Encoding'),
      ]);
    }
    expect([tags.size, texts.size]).toEqual([3, 1]);
  });

  it('406: only JSON is had', async () => {
    const { ask } = await tried;
    const refused = await ask(FIT, { headers: { Accept: 'text/html' } });
    expect([refused.status, (await problemIn(refused)).code]).toEqual([406, 'not-acceptable']);
    expect((await ask(FIT, { headers: { Accept: 'text/html, */*;q=0.1' } })).status).toBe(200);
  });

  it('404: no such address, no such record, no such kind', async () => {
    const { ask } = await tried;
    for (const [path, code] of [
      ['/nothing', 'no-such-address'],
      ['/v1/Fit', 'no-such-address'],
      ['/v1/fit/', 'no-such-address'],
      ['/v1/catalog/parts/NONE', 'no-such-record'],
      ['/v1/catalog/ghosts', 'no-such-record'],
      ['/v1/problems/none', 'no-such-address'],
    ] as const)
      expect([path, (await problemIn(await ask(path))).code]).toEqual([path, code]);
  });
});

describe('questions', () => {
  it('400: what has not the form of a question, with a pointer to each field', async () => {
    const { ask, post } = await tried;
    const bad = await problemIn(await post('/v1/plan', { chassis: '', wants: { travel: '130', trvael: 1 } }));
    expect([bad.status, bad.code]).toEqual([400, 'bad-question']);
    expect(bad.errors.map(({ pointer }) => pointer).sort()).toEqual(['/chassis', '/wants/travel', '/wants/trvael']);
    expect(bad.errors.map(({ detail }) => detail).sort()).toEqual([
      'chassis is not right: its length must be at least 1.',
      'wants.travel is not right: it must be a number, and is a text.',
      'wants.trvael is not right: there is no such key; near it: travel.',
    ]);
    const twice = await problemIn(await ask(`${FIT}&part=QN-VS`));
    expect([twice.status, twice.errors[0]?.pointer]).toEqual([400, '/part']);
    const surplus = await problemIn(await ask(`${FIT}&colour=red`));
    expect([surplus.status, surplus.errors[0]?.pointer]).toEqual([400, '/colour']);
    expect((await problemIn(await ask('/v1/plan?question=%7B'))).status).toBe(400);
  });

  it('422: what the catalogue does not know, with a pointer and what was meant', async () => {
    const { ask, post } = await tried;
    const fit = await problemIn(await ask(FIT.replace('192', '129')));
    expect([fit.status, fit.errors[0]?.code, fit.errors[0]?.pointer]).toEqual([422, 'unknown-sku', '/part']);
    expect(fit.errors[0]?.way).toContain('QN-AIR-192');
    const plan = await problemIn(await post('/v1/plan', { ...QUESTION, wants: { use: ['QN-VS', 'QN-VX'] } }));
    expect([plan.status, plan.errors[0]?.code, plan.errors[0]?.pointer]).toEqual([422, 'unknown-sku', '/wants/use/1']);
  });

  it('415, 400 and 413: a body that is no JSON, or packed strangely, or too deep, or too large', async () => {
    const { ask, post } = await tried;
    const codes = [
      await post('/v1/plan', 'a', { 'Content-Type': 'text/plain' }),
      await post('/v1/plan', '{}', { 'Content-Encoding': 'compress' }),
      await post('/v1/plan', '{}', { 'Content-Type': 'application/json; charset=latin1' }),
      await post('/v1/plan', '{"a":'),
      await post('/v1/plan', `${'['.repeat(21)}${']'.repeat(21)}`),
      await post('/v1/plan', JSON.stringify({ chassis: 'x'.repeat(1_000_001) })),
      await ask('/v1/plan', { method: 'POST' }),
    ].map(async (response) => [response.status, (await problemIn(response)).code]);
    expect(await Promise.all(codes)).toEqual([
      [415, 'unsupported-media-type'],
      [415, 'unsupported-media-type'],
      [415, 'unsupported-media-type'],
      [400, 'malformed-request'],
      [400, 'malformed-request'],
      [413, 'too-large'],
      [415, 'unsupported-media-type'],
    ]);
  });

  it('GET and POST of the same question give the same bytes', async () => {
    const { ask, post } = await tried;
    for (const path of ['/v1/plan', '/v1/reach']) {
      const got = await ask(`${path}?question=${encodeURIComponent(JSON.stringify(QUESTION))}`);
      expect([got.status, await got.text()]).toEqual([200, await (await post(path, QUESTION)).text()]);
    }
  });

  it('a batch gives the verdicts of the single questions, its reasons once', async () => {
    const { ask, post } = await tried;
    const parts = ['QN-AIR-192', 'QN-AIR-212', 'QN-VS', 'BR-TS-10', 'NONE-1'];
    const chassis = ['quennet-622', 'quennet-584', 'brastle-622'];
    const pairs = parts.flatMap((part) => chassis.map((id) => ({ part, chassis: id })));
    const batch = fitBatchSchema.parse(await (await post('/v1/fit', { pairs })).json());
    expect(new Set(batch.reasons.map((reason) => JSON.stringify(reason))).size).toBe(batch.reasons.length);
    for (const [at, { part, chassis: id }] of pairs.entries()) {
      const { verdict, reasons = [], conditions = [] } = batch.verdicts[at] ?? {};
      const single = await ask(`/v1/fit?part=${part}&chassis=${id}`);
      if (single.status === 422) {
        expect([verdict, batch.reasons[reasons[0] ?? -1]?.code]).toEqual(['at-fault', 'unknown-sku']);
        continue;
      }
      const written = fitSchema.parse(await single.json());
      expect(verdict).toBe(written.verdict);
      expect(reasons.map((index) => batch.reasons[index])).toEqual(written.reasons);
      expect(conditions.map((index) => batch.reasons[index])).toEqual(written.conditions);
    }
  });

  it('search: forgives typing mistakes', async () => {
    const { ask } = await tried;
    for (const q of ['quennet air cartridge 192', 'quenet air cartrige 192', 'QN-AIR-192']) {
      const found = await ask(`/v1/search?q=${encodeURIComponent(q)}&kind=parts&limit=5`);
      const { hits } = searchSchema.parse(await found.json());
      expect([q, hits[0]]).toEqual([q, expect.objectContaining({ kind: 'parts', id: 'QN-AIR-192' })]);
    }
  });
});

describe('guarded', () => {
  it('401: no token, a wrong one, another scheme; with the right one it is done', async () => {
    const { ask } = await tried;
    for (const authorization of [undefined, 'Bearer wrong', `Basic ${TOKEN}`, `Bearer ${TOKEN}x`]) {
      const refused = await ask('/v1/reload', {
        method: 'POST',
        ...(authorization === undefined ? {} : { headers: { Authorization: authorization } }),
      });
      expect([refused.status, (await problemIn(refused)).code]).toEqual([401, 'unauthorized']);
      expect(refused.headers.get('www-authenticate')).toContain('Bearer');
    }
    const done = await ask('/v1/reload', { method: 'POST', headers: { Authorization: `Bearer ${TOKEN}` } });
    expect([done.status, reloadSchema.parse(await done.json()).changed]).toEqual([200, false]);
  });
});

describe('the chain', () => {
  it('headers: a browser is told to keep to what is meant, and nothing says what runs here', async () => {
    const { headers } = await (await tried).ask(FIT);
    expect(headers.get('content-security-policy')).toContain("default-src 'self'");
    expect(headers.get('content-security-policy')).not.toContain('unsafe');
    expect(headers.get('x-content-type-options')).toBe('nosniff');
    expect(headers.get('cache-control')).toBe('public, max-age=60, stale-while-revalidate=60');
    expect(headers.has('x-powered-by')).toBe(false);
  });
});
