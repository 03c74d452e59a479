import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { createConfig, lintFromString } from '@redocly/openapi-core';
import { afterAll, describe, expect, it } from 'vitest';
import * as z from 'zod';
import { apiText, OPERATIONS } from '../../scripts/api-document.ts';
import { problemSchema } from '../../src/server/problems.ts';
import { serve } from './service.ts';

const root = fileURLToPath(new URL('../..', import.meta.url));
const written = readFileSync(`${root}/api/openapi.yaml`, 'utf8');
const tried = serve();
afterAll(async () => (await tried).service.stop());

const exampleSchema = z.strictObject({
  about: z.string().min(1),
  request: z.strictObject({ method: z.enum(['GET', 'POST']), path: z.string(), body: z.unknown().optional() }),
  /** What of the answer is shown: fields where it is JSON, pieces of it where it is another text. */
  response: z.strictObject({
    status: z.int(),
    type: z.string().default('application/json'),
    contains: z.union([z.record(z.string(), z.unknown()), z.array(z.string()).min(1)]),
  }),
});
const examples = readdirSync(`${root}/api/examples`).map((name) => ({
  name: name.replace(/\.json$/, ''),
  ...exampleSchema.parse(JSON.parse(readFileSync(`${root}/api/examples/${name}`, 'utf8'))),
}));

describe('description of the service', () => {
  it('api/openapi.yaml is what the schemas say: else run `npm run build:api`', () => {
    const { version } = z
      .object({ version: z.string() })
      .parse(JSON.parse(readFileSync(`${root}/package.json`, 'utf8')));
    expect(written === apiText(version)).toBe(true);
  });

  it('the linter finds nothing in it, and finds what is planted', async () => {
    const config = await createConfig({ extends: ['recommended'] });
    const lint = (source: string) => lintFromString({ source, absoluteRef: `${root}/api/openapi.yaml`, config });
    const found = await lint(written);
    expect(found.map(({ ruleId, message, location }) => [ruleId, message, location[0]?.pointer])).toEqual([]);
    const planted = await lint(written.replace('operationId: health', 'operationId: ready'));
    expect(planted.map(({ ruleId }) => ruleId)).toContain('operation-operationId-unique');
  });

  it('the service hands it out', async () => {
    const { ask } = await tried;
    const response = await ask('/v1/openapi.yaml');
    expect([response.status, response.headers.get('content-type')]).toEqual([200, 'application/yaml']);
    expect((await response.text()) === written).toBe(true);
  });
});

describe('examples', () => {
  it('there is one for each operation that answers with JSON or a picture', () => {
    const shown = OPERATIONS.filter(({ content }) => ['application/json', 'image/svg+xml'].includes(content));
    expect(examples.map(({ name }) => name)).toEqual(expect.arrayContaining(shown.map(({ id }) => id)));
  });

  for (const { name, about, request, response } of examples) {
    it(`${name}: ${about}`, async () => {
      const { ask, post } = await tried;
      const { method, path, body } = request;
      const got =
        body === undefined
          ? await ask(path, { method, ...(method === 'POST' ? { body: '' } : {}) })
          : await post(path, body);
      const text = await got.text();
      const type = got.headers.get('content-type') ?? '';
      const answer: unknown = type.includes('json') ? JSON.parse(text) : text;
      expect([got.status, answer]).toEqual([
        response.status,
        Array.isArray(response.contains) ? expect.any(String) : partly(response.contains),
      ]);
      if (Array.isArray(response.contains)) {
        expect(type).toBe(`${response.type}; charset=utf-8`);
        for (const piece of response.contains) expect(text).toContain(piece);
      }
      const operation = OPERATIONS.find(
        (one) => name.startsWith(one.id) && one.method === method.toLowerCase() && isAt(one.path, path),
      );
      expect(operation, name).toBeDefined();
      (response.status === 200 ? operation?.output : problemSchema)?.parse(answer);
    });
  }
});

const isAt = (template: string, path: string): boolean =>
  new RegExp(`^${template.replaceAll(/\{\w+\}/g, '[^/]+')}$`).test(path.split('?')[0] ?? '');

/** Matches what holds at least this: further fields, and further items behind those named. */
function partly(value: unknown): unknown {
  if (Array.isArray(value))
    return value.length === 0 ? [] : { asymmetricMatch: (other: unknown) => beginsWith(other, value) };
  if (typeof value !== 'object' || value === null) return value;
  return expect.objectContaining(Object.fromEntries(Object.entries(value).map(([key, inner]) => [key, partly(inner)])));
}

function beginsWith(other: unknown, items: readonly unknown[]): boolean {
  if (!Array.isArray(other) || other.length < items.length) return false;
  for (const [at, item] of items.entries()) expect(other[at]).toEqual(partly(item));
  return true;
}
