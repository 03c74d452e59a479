import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { DEFAULTS, type Settings, start } from '../../src/server/index.ts';
import type { Service } from '../../src/server/start.ts';
import buildOnce from '../cli/global-build.ts';
import { demoFolder } from '../support/demo.ts';

/** The token that services of the tests know, and its hash. */
export const TOKEN = 'a-token-for-the-tests';
const TOKEN_HASH = 'c27dc09ecddd871ea7d1028c91a83083cf1f826925cd4f9d3671b9e644ed039a';

/** A service of the tests: its answers, its log, and how it is asked. */
export interface Tried {
  readonly service: Service;
  readonly log: readonly string[];
  readonly ask: (path: string, init?: RequestInit) => Promise<Response>;
  readonly post: (
    path: string,
    body: unknown,
    headers?: Readonly<Record<string, string>>,
    signal?: AbortSignal,
  ) => Promise<Response>;
}

/** A test that keeps this thread busy must not lose its connection for it. */
const PATIENT = { headers: 600_000, request: 600_000, idle: 600_000, between: 600_000, check: 1_000 };

/** What was read once is not read again by the next file of tests: the cache goes by content. */
const cache = join(tmpdir(), 'legwork-serve-cache');

/** Starts a service in this process at a free port; its threads run what is built. */
export async function serve(over: Partial<Settings> = {}, catalog: string = demoFolder): Promise<Tried> {
  buildOnce();
  const log: string[] = [];
  const settings: Settings = { ...DEFAULTS, port: 0, tokens: [TOKEN_HASH], searchers: 1, patience: PATIENT, ...over };
  const order = { values: { catalog: [catalog] }, env: { LEGWORK_CACHE: cache } };
  const started = await start(settings, order, { write: (line) => void log.push(line) });
  if (started.kind !== 'listening') throw new Error(JSON.stringify(started));
  const { service } = started;
  const ask = (path: string, init: RequestInit = {}): Promise<Response> => fetch(`${service.url}${path}`, init);
  return {
    service,
    log,
    ask,
    post: (path, body, headers = {}, signal = new AbortController().signal) =>
      ask(path, {
        method: 'POST',
        headers: { 'Content-Type': 'application/json', ...headers },
        signal,
        body: typeof body === 'string' ? body : JSON.stringify(body),
      }),
  };
}
