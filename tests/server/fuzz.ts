import fc from 'fast-check';
import { expect } from 'vitest';
import { demoFolder, loadCatalogFolder } from '../support/demo.ts';
import { spoiled, valuesOf } from './arbitrary.ts';
import { DOCUMENTED, type Documented } from './document.ts';
import { serve } from './service.ts';

/** Requests in one go. */
const TOGETHER = 10;

/** What searches, so that it is sent less often. */
const SLOW = /^(?:plan|picture|reach|choices)/;

interface Sent {
  readonly operation: Documented;
  readonly method: string;
  readonly path: string;
  readonly headers: Readonly<Record<string, string>>;
  readonly body: string | null;
}

/**
 * Sends requests made from the description, right and wrong ones, and holds every answer against it: the status is described, the body is what is
 * described for it, nothing is a 5xx, and the service is sound afterwards. Answers how many of each status came.
 */
export async function fuzz(requests: number, seed: number): Promise<ReadonlyMap<number, number>> {
  const { world } = await loadCatalogFolder(demoFolder);
  const known = ['chassis', 'parts', 'bikes', 'services', 'kits', 'supplies'] as const;
  const ids = known.flatMap((kind) => [...world.catalog[kind].keys()]);
  const tried = await serve({
    mostSteps: 200,
    rate: { all: 100_000_000, search: 100_000_000, guarded: 100_000_000 },
    log: 'silent',
  });
  const counts = new Map<number, number>();
  const check = async (sent: Sent): Promise<void> => {
    const { operation, method, path, headers, body } = sent;
    const response = await tried.ask(path, { method, headers, body });
    const text = await response.text();
    const { status } = response;
    counts.set(status, (counts.get(status) ?? 0) + 1);
    const about = `${method} ${path} ${JSON.stringify(headers)} ${body ?? ''}\n${status} ${text.slice(0, 500)}`;
    expect(status, about).toBeLessThan(500);
    if (isElsewhere(path, operation)) return undefined;
    if (method === 'OPTIONS') return expect([status, text], about).toEqual([204, '']);
    if (status === 405)
      return expect(['GET', 'POST'].includes(method) && method === operation.method, about).toBe(false);
    if (method === 'HEAD' || status === 304) expect(text, about).toBe('');
    expect(operation.statuses, about).toContain(status);
    if (text === '') return;
    const type = response.headers.get('content-type')?.split(';')[0] ?? '';
    expect(operation.fault(status, type, type.endsWith('json') ? JSON.parse(text) : text), about).toBeNull();
  };
  const requestsOf = fc.array(
    fc.oneof(
      ...DOCUMENTED.map((operation) => ({
        weight: SLOW.test(operation.id) ? 1 : 4,
        arbitrary: sentTo(operation, ids),
      })),
    ),
    {
      minLength: TOGETHER,
      maxLength: TOGETHER,
    },
  );
  try {
    await fc.assert(
      fc.asyncProperty(requestsOf, async (all) => {
        await Promise.all(all.map(check));
      }),
      { numRuns: Math.ceil(requests / TOGETHER), seed, endOnFailure: true },
    );
    expect((await tried.ask('/ready')).status).toBe(200);
  } finally {
    await tried.service.stop();
  }
  return counts;
}

/** A segment that is empty, or "..", makes another address of it. */
function isElsewhere(path: string, operation: Documented): boolean {
  const segments = new URL(path, 'http://localhost').pathname.slice(1).split('/');
  return segments.includes('') || segments.length !== operation.path.slice(1).split('/').length;
}

function sentTo(operation: Documented, ids: readonly string[]): fc.Arbitrary<Sent> {
  const values = operation.parameters.map(({ name, schema, content, required }) => {
    const written = schema ?? content?.['application/json']?.schema ?? {};
    const right = valuesOf(written, ids, name).map((value) => (content ? JSON.stringify(value) : String(value)));
    const wrong = right
      .chain((value) => spoiled(value))
      .map((value) => (typeof value === 'string' ? value : JSON.stringify(value)));
    const given = fc.oneof({ weight: 8, arbitrary: right }, { weight: 1, arbitrary: wrong });
    return required === true ? given : fc.option(given, { nil: null });
  });
  const right =
    operation.body === null ? fc.constant(null) : valuesOf(operation.body, ids).map((value) => JSON.stringify(value));
  const wrong = right.chain((value) =>
    fc.oneof(
      spoiled(value === null ? null : JSON.parse(value)).map((one) => JSON.stringify(one)),
      fc.string(),
      fc.constantFrom('{"__proto__":{"chassis":"x"}}', '{"constructor":{"prototype":{}}}', '1e999', '\ufeff{}'),
      fc.nat({ max: value?.length ?? 0 }).map((length) => value?.slice(0, length) ?? ''),
      fc.nat({ max: 200 }).map((depth) => '['.repeat(depth) + ']'.repeat(depth)),
    ),
  );
  const body =
    operation.method === 'GET'
      ? fc.constant(null)
      : fc.oneof({ weight: 3, arbitrary: right }, { weight: 1, arbitrary: wrong });
  const method = fc.oneof(
    { weight: 20, arbitrary: fc.constant(operation.method) },
    { weight: 1, arbitrary: fc.constantFrom('HEAD', 'OPTIONS', 'PUT', 'DELETE', 'PATCH') },
  );
  const type = fc.oneof(
    { weight: 15, arbitrary: fc.constant('application/json') },
    { weight: 1, arbitrary: fc.constantFrom('text/plain', 'application/xml', 'application/json; charset=latin1', 'x') },
  );
  const accept = fc.oneof(
    { weight: 10, arbitrary: fc.constant(operation.content) },
    {
      weight: 1,
      arbitrary: fc.constantFrom('*/*', 'text/html', 'application/*;q=0', ';;;', 'application/json;q=0.1, */*'),
    },
  );
  const known = fc.option(fc.constantFrom('*', '"x"', 'W/"', '"', 'W/"x", "y"'), { nil: null, freq: 10 });
  return fc
    .tuple(fc.tuple(...values), body, method, type, accept, known)
    .map(([given, text, verb, kind, takes, tag]): Sent => {
      let path = operation.path;
      const query: string[] = [];
      for (const [at, parameter] of operation.parameters.entries()) {
        const value = given[at];
        if (value === null || value === undefined) continue;
        const written = encodeURIComponent(value.replace(/\p{Surrogate}/gu, '\ufffd'));
        if (parameter.in === 'path') path = path.replace(`{${parameter.name}}`, written);
        else query.push(`${parameter.name}=${written}`);
      }
      const sends = text !== null && verb === 'POST';
      return {
        operation,
        method: verb,
        path: query.length === 0 ? path : `${path}?${query.join('&')}`,
        headers: {
          Accept: takes,
          ...(sends ? { 'Content-Type': kind } : {}),
          ...(tag === null ? {} : { 'If-None-Match': tag }),
        },
        body: sends ? text : null,
      };
    });
}
