import { readFile } from 'node:fs/promises';
import type { Express, RequestHandler, Response } from 'express';
import * as z from 'zod';
import { asJson } from '../report/json.ts';
import type { Desk } from './desk.ts';
import type { Metrics } from './metrics.ts';
import { type Described, NO_INPUT } from './operation.ts';
import { PROBLEMS } from './problems.ts';
import { type Reloading, reloadSchema, reloadWith } from './reload.ts';
import { named, otherMethod } from './routing.ts';
import { sendProblem } from './send.ts';
import type { Settings } from './settings.ts';
import { mayReload } from './token.ts';

const json = { content: 'application/json', input: NO_INPUT, lane: 'quick', problems: [] } as const;
const problemCodeSchema = z.enum(Object.keys(PROBLEMS));

/** Addresses about the service itself. */
export const HOUSE: readonly Described[] = [
  {
    ...json,
    id: 'health',
    method: 'get',
    path: '/health',
    summary: 'Whether the process answers.',
    about: 'For whoever starts it anew when it does not.',
    output: z.strictObject({ status: z.literal('alive') }),
  },
  {
    ...json,
    id: 'ready',
    method: 'get',
    path: '/ready',
    summary: 'Whether questions are taken.',
    about: 'Not any more once the service was told to stop; what was begun is finished.',
    output: z.strictObject({ status: z.literal('ready'), catalog: z.string() }),
    problems: ['stopping'],
  },
  {
    ...json,
    id: 'metrics',
    method: 'get',
    path: '/metrics',
    summary: 'Counts and times, in the text form that Prometheus reads.',
    about: 'Times by operation and status, searches under way, reloads, and what the process uses.',
    output: z.string(),
    content: 'text/plain',
  },
  {
    ...json,
    id: 'reload',
    method: 'post',
    path: '/v1/reload',
    summary: 'Load catalogue, stock and shop anew from their files.',
    about:
      'The old answers until the new files are checked whole; what is not sound is refused, and each fault is named with file, line and column. No answer mixes old and new.',
    lane: 'guarded',
    output: reloadSchema,
    problems: ['unauthorized', 'catalog-refused', 'reload-running'],
  },
  {
    ...json,
    id: 'problem',
    method: 'get',
    path: '/v1/problems/{code}',
    summary: 'What the type of a problem means.',
    about: 'The `type` of each problem that this service answers with is one of these addresses.',
    input: { ...NO_INPUT, path: z.strictObject({ code: problemCodeSchema }) },
    output: z.strictObject({ code: problemCodeSchema, status: z.int(), title: z.string() }),
    problems: ['no-such-address'],
  },
  {
    ...json,
    id: 'description',
    method: 'get',
    path: '/v1/openapi.yaml',
    summary: 'This description.',
    about: 'OpenAPI 3.1.',
    output: z.string(),
    content: 'application/yaml',
  },
];

/** api/openapi.yaml: as far from a source file as from a built one. */
const DESCRIPTION = new URL(
  import.meta.url.endsWith('.ts') ? '../../api/openapi.yaml' : '../api/openapi.yaml',
  import.meta.url,
);

/** What the house needs to answer. */
interface Household extends Reloading {
  readonly desk: Desk;
  readonly settings: Settings;
  readonly metrics: Metrics;
  readonly stopping: () => boolean;
}

const fresh = (response: Response): Response => response.setHeader('Cache-Control', 'no-store');

/** Answers at the addresses above. */
export function serveHouse(app: Express, household: Household, limit: RequestHandler): void {
  const { desk, metrics, settings, stopping } = household;
  const answers: Readonly<Record<string, readonly RequestHandler[]>> = {
    health: [(_request, response) => void fresh(response).json({ status: 'alive' })],
    ready: [
      (_request, response) => {
        if (stopping()) sendProblem(response, { code: 'stopping', detail: 'What was begun is finished.' });
        else fresh(response).json({ status: 'ready', catalog: desk.current.world.catalog.hash });
      },
    ],
    metrics: [
      async (_request, response) => {
        const text = await metrics.text();
        fresh(response).setHeader('Content-Type', metrics.contentType).end(text);
      },
    ],
    reload: [limit, mayReload(settings.tokens), reloadWith(household)],
    problem: [
      (request, response) => {
        const code = problemCodeSchema.safeParse(request.params.code);
        const known = code.success ? Object.entries(PROBLEMS).find(([name]) => name === code.data)?.[1] : undefined;
        if (known) response.type('json').send(asJson({ code: code.data, ...known }));
        else
          sendProblem(response, {
            code: 'no-such-address',
            detail: `Problems are ${Object.keys(PROBLEMS).join(', ')}.`,
          });
      },
    ],
    description: [
      async (_request, response) => {
        const text = await readFile(DESCRIPTION, 'utf8');
        response.setHeader('Cache-Control', `public, max-age=${settings.maxAge}`);
        response.setHeader('Content-Type', 'application/yaml').end(text);
      },
    ],
  };
  for (const { id, path, method } of HOUSE) {
    const route = app.route(path.replaceAll(/\{(\w+)\}/g, ':$1'));
    route[method](named(id), ...(answers[id] ?? []));
    route.all(otherMethod([method]));
  }
}
