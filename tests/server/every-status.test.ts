import { connect } from 'node:net';
import { afterAll, describe, expect, it } from 'vitest';
import { DOCUMENTED, type Documented } from './document.ts';
import { serve, TOKEN, type Tried } from './service.ts';

/*
 * Each status that the description names for an operation, made to happen there.
 */
const QUENNET = { chassis: 'quennet-622', travelNow: 150 };
const link = (question: object): string => `?question=${encodeURIComponent(JSON.stringify(question))}`;
/** A request of each operation that is answered with 200. */
const RIGHT: Readonly<Record<string, { readonly path: string; readonly body?: unknown }>> = {
  catalog: { path: '/v1/catalog' },
  list: { path: '/v1/catalog/bikes' },
  record: { path: '/v1/catalog/parts/QN-VS' },
  search: { path: '/v1/search?q=cartridge' },
  fit: { path: '/v1/fit?part=QN-AIR-192&chassis=quennet-622' },
  'fit-batch': { path: '/v1/fit', body: { pairs: [{ part: 'QN-VS', chassis: 'quennet-622' }] } },
  plan: { path: `/v1/plan${link({ ...QUENNET, wants: { spacers: 3 } })}` },
  'plan-asked': { path: '/v1/plan', body: { ...QUENNET, wants: { spacers: 3 } } },
  picture: { path: `/v1/picture${link({ ...QUENNET, wants: { spacers: 3 } })}` },
  reach: { path: `/v1/reach${link({ ...QUENNET, chassis: 'lommet-622', travelNow: 100 })}` },
  'reach-asked': { path: '/v1/reach', body: { chassis: 'lommet-622', travelNow: 100 } },
  setup: { path: `/v1/setup${link({ ...QUENNET, rider: { mass: 80 } })}` },
  'setup-asked': { path: '/v1/setup', body: { ...QUENNET, rider: { mass: 80 } } },
  uses: { path: '/v1/uses?part=QN-VS' },
  choices: { path: '/v1/choices?chassis=lommet-622' },
  health: { path: '/health' },
  ready: { path: '/ready' },
  metrics: { path: '/metrics' },
  reload: { path: '/v1/reload' },
  problem: { path: '/v1/problems/broken' },
  description: { path: '/v1/openapi.yaml' },
};
/** The same with a part or a fork that the catalogue does not know. */
const UNKNOWN: Readonly<Record<string, { readonly path: string; readonly body?: unknown }>> = {
  fit: { path: '/v1/fit?part=QN-AIR-192&chassis=nobody' },
  plan: { path: `/v1/plan${link({ chassis: 'nobody', travelNow: 150 })}` },
  'plan-asked': { path: '/v1/plan', body: { chassis: 'nobody', travelNow: 150 } },
  picture: { path: `/v1/picture${link({ chassis: 'nobody', travelNow: 150 })}` },
  reach: { path: `/v1/reach${link({ chassis: 'nobody', travelNow: 150 })}` },
  'reach-asked': { path: '/v1/reach', body: { chassis: 'nobody', travelNow: 150 } },
  setup: { path: `/v1/setup${link({ chassis: 'nobody', travelNow: 150, rider: { mass: 80 } })}` },
  'setup-asked': { path: '/v1/setup', body: { chassis: 'nobody', travelNow: 150, rider: { mass: 80 } } },
  uses: { path: '/v1/uses?part=NOBODY' },
  choices: { path: '/v1/choices?chassis=nobody' },
};
const NOWHERE: Readonly<Record<string, string>> = {
  list: '/v1/catalog/ghosts',
  record: '/v1/catalog/parts/NOBODY',
  picture: `/v1/picture${link({ ...QUENNET, wants: { travel: 180 } })}`,
  problem: '/v1/problems/none',
};

const usual = serve();
/** Nobody is given time to send. */
const hurried = serve({ patience: { headers: 200, request: 200, idle: 60_000, between: 60_000, check: 50 } });
/** No search is given time to end. */
const hasty = serve({ searchTime: 1 });
const strict = serve({ rate: { all: 1, search: 1, guarded: 1 } });
afterAll(async () => {
  for (const tried of [usual, hurried, hasty, strict]) await (await tried).service.stop();
});

type Made = { readonly status: number; readonly type: string; readonly text: string };

async function sent(
  tried: Tried,
  { id, method }: Documented,
  over: { readonly path?: string; readonly body?: unknown; readonly headers?: Readonly<Record<string, string>> } = {},
): Promise<Made> {
  const { path = RIGHT[id]?.path ?? '', body = RIGHT[id]?.body, headers = {} } = over;
  const token: Readonly<Record<string, string>> = id === 'reload' ? { Authorization: `Bearer ${TOKEN}` } : {};
  const response = await tried.ask(path, {
    method,
    headers: { ...(body === undefined ? {} : { 'Content-Type': 'application/json' }), ...token, ...headers },
    ...(body === undefined ? {} : { body: typeof body === 'string' ? body : JSON.stringify(body) }),
  });
  const type = response.headers.get('content-type')?.split(';')[0] ?? '';
  return { status: response.status, type, text: await response.text() };
}

/** Sends something that is no request of this address, as bytes. */
function sentRaw({ service }: Tried, { id, method }: Documented, headers: string): Promise<Made> {
  const { hostname, port } = new URL(service.url);
  return new Promise((resolve) => {
    const socket = connect(Number(port), hostname, () => {
      socket.write(`${method} ${RIGHT[id]?.path} HTTP/1.1\r\nHost: a\r\n${headers}`);
    });
    let text = '';
    socket.setEncoding('utf8').on('data', (chunk: string) => {
      text += chunk;
    });
    socket.on('error', () => undefined);
    socket.on('close', () => {
      const [head = '', body = ''] = text.split('\r\n\r\n');
      const type = /content-type: ([^;\r\n]*)/i.exec(head)?.[1] ?? '';
      resolve({ status: Number(head.split(' ')[1]), type, text: body });
    });
  });
}

/** How each status is made to happen. */
const MAKERS: Readonly<Record<number, (operation: Documented) => Promise<Made>>> = {
  200: async (operation) => sent(await usual, operation),
  304: async (operation) => sent(await usual, operation, { headers: { 'If-None-Match': '*' } }),
  // no operation takes a header line without a colon
  400: async (operation) => sentRaw(await usual, operation, 'no colon\r\n\r\n'),
  401: async (operation) => sent(await usual, operation, { headers: { Authorization: 'Bearer wrong' } }),
  404: async (operation) => sent(await usual, operation, { path: NOWHERE[operation.id] ?? '' }),
  406: async (operation) => sent(await usual, operation, { headers: { Accept: 'image/png' } }),
  408: async (operation) => sentRaw(await hurried, operation, 'X: '),
  409: async (operation) => {
    const tried = await usual;
    const two = await Promise.all([sent(tried, operation), sent(tried, operation)]);
    return two.find(({ status }) => status !== 200) ?? two[0];
  },
  413: async (operation) => sent(await usual, operation, { body: { chassis: 'x'.repeat(1_000_001) } }),
  415: async (operation) => sent(await usual, operation, { headers: { 'Content-Type': 'text/plain' } }),
  422: async (operation) => sent(await usual, operation, UNKNOWN[operation.id] ?? {}),
  429: async (operation) => {
    const tried = await strict;
    await sent(tried, operation);
    return sent(tried, operation);
  },
  431: async (operation) => sentRaw(await usual, operation, `X: ${'x'.repeat(20_000)}\r\n\r\n`),
  503: async (operation) => {
    if (operation.id === 'ready') return whileStopping(operation);
    const tried = await hasty;
    // the thread is ended over a task that takes long, and the one that takes its place is not there yet
    await tried.ask('/v1/choices?chassis=kerrolt-622');
    return sent(tried, operation);
  },
};

/** Asks over a connection that was begun before the service was told to stop, and keeps it open by a search. */
async function whileStopping(operation: Documented): Promise<Made> {
  const tried = await serve();
  const { hostname, port } = new URL(tried.service.url);
  const socket = connect(Number(port), hostname);
  await new Promise((resolve) => socket.once('connect', resolve));
  let text = '';
  socket.setEncoding('utf8').on('data', (chunk: string) => {
    text += chunk;
  });
  const closed = new Promise((resolve) => socket.once('close', resolve));
  socket.write('GET /v1/choices?chassis=lommet-622 HTTP/1.1\r\nHost: a\r\n\r\n');
  while (tried.service.desk.current.crew.load().working === 0) await new Promise((resolve) => setTimeout(resolve, 5));
  const stopped = tried.service.stop();
  socket.write(`GET ${RIGHT[operation.id]?.path} HTTP/1.1\r\nHost: a\r\nConnection: close\r\n\r\n`);
  await Promise.all([closed, stopped]);
  const [head = '', body = ''] = text.slice(text.lastIndexOf('HTTP/1.1 ')).split('\r\n\r\n');
  return { status: Number(head.split(' ')[1]), type: /Content-Type: ([^;\r\n]*)/i.exec(head)?.[1] ?? '', text: body };
}

describe('statuses', () => {
  it('there is a request for each operation', () => {
    expect(DOCUMENTED.map(({ id }) => id).sort()).toEqual(Object.keys(RIGHT).sort());
  });

  for (const operation of DOCUMENTED) {
    it(`${operation.id}: ${operation.statuses.join(', ')} are made to happen, each as it is described`, async () => {
      for (const status of operation.statuses) {
        const make = MAKERS[status];
        if (!make) throw new Error(`nobody knows how ${status} comes about`);
        const made = await make(operation);
        expect([operation.id, made.status], made.text.slice(0, 300)).toEqual([operation.id, status]);
        if (status === 304) continue;
        const body: unknown = made.type.endsWith('json') ? JSON.parse(made.text) : made.text;
        expect(operation.fault(made.status, made.type, body)).toBeNull();
      }
    });
  }
});
