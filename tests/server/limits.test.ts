import { connect, type Socket } from 'node:net';
import { afterAll, describe, expect, it } from 'vitest';
import { answerSchema } from '../../src/plan/index.ts';
import { problemSchema } from '../../src/server/problems.ts';
import { serve, type Tried } from './service.ts';

/** Whoever is idle is given far longer than whoever sends too slowly, so that it is clear which of the two it was. */
const PATIENCE = { headers: 300, request: 600, idle: 3_000, between: 5_000, check: 50 };
/** Services by what is special about them, each started when it is first asked. */
const SPECIAL = {
  impatient: { patience: PATIENCE },
  strict: {},
  counted: { rate: { all: 1_000, search: 3, guarded: 2 } },
  /** One may wait, and nobody may search for long. */
  small: { waiting: 1, searchTime: 1_000, patience: { ...PATIENCE, headers: 5_000, request: 5_000, idle: 400 } },
  usual: {},
  frugal: { mostSteps: 1 },
} as const;
const started = new Map<keyof typeof SPECIAL, Promise<Tried>>();
function at(name: keyof typeof SPECIAL): Promise<Tried> {
  const tried = started.get(name) ?? serve(SPECIAL[name]);
  started.set(name, tried);
  return tried;
}
afterAll(async () => {
  for (const tried of started.values()) await (await tried).service.stop();
});

const pieces = (quantity: number, ...skus: readonly string[]) => skus.map((sku) => ({ sku, quantity }));
/** 48 cases of what the fork may hold, each put onto another bike with much renewed, kits at hand and a reason for every line: several seconds of work. */
const LONG = {
  chassis: 'kerrolt-622',
  travelNow: 160,
  wants: { travel: 150, renew: ['wipers', 'foam-rings', 'damper', 'lowers', 'upper'] },
  onto: 'dallowick-hullock',
  supplies: 'bulk',
  substitutes: true,
  why: true,
  have: pieces(1, 'KO-KIT-130-W', 'KO-KIT-OPEN', 'KO-KIT-OPEN-N', 'KO-KIT-SEALS', 'KO-KIT-SERVICE', 'KO-KIT-VS4'),
  maybe: {
    damper: pieces(1, 'KO-DMP-T-178', 'KO-DMP-TX'),
    wipers: pieces(2, 'VH-W-34'),
    'foam-rings': pieces(2, 'VH-F-34'),
    'top-cap': pieces(1, 'KO-CAP-LOW'),
    'volume-spacers': [null],
  },
  allowUnknown: true,
};
const SHORT = { chassis: 'quennet-622', travelNow: 150, wants: { spacers: 3 } };
const FIT = '/v1/fit?part=QN-AIR-192&chassis=quennet-622';

const pause = (): Promise<void> => new Promise((resolve) => setTimeout(resolve, 10));

async function socketTo({ service }: Tried): Promise<Socket> {
  const { hostname, port } = new URL(service.url);
  const socket = connect(Number(port), hostname);
  await new Promise((resolve) => socket.once('connect', resolve));
  return socket;
}

/** All that comes back until the other side hangs up. */
function whole(socket: Socket): Promise<string> {
  return new Promise((resolve) => {
    let text = '';
    socket.setEncoding('utf8');
    socket.on('data', (chunk: string) => {
      text += chunk;
    });
    socket.on('error', () => undefined);
    socket.on('close', () => resolve(text));
  });
}

const rawProblem = (text: string): string => {
  const [head = '', body = '{}'] = text.split('\r\n\r\n');
  const { code, status } = problemSchema.parse(JSON.parse(body));
  expect(head).toContain(`HTTP/1.1 ${status} `);
  expect(head).toContain('application/problem+json');
  return code;
};

describe('clients that are slow', () => {
  for (const [what, begun, code] of [
    ['headers that do not end', 'GET /health HTTP/1.1\r\nHost: a\r\n', 'too-slow'],
    [
      'a body that does not come',
      'POST /v1/plan HTTP/1.1\r\nHost: a\r\nContent-Type: application/json\r\nContent-Length: 100\r\n\r\n{"a"',
      'too-slow',
    ],
  ] as const) {
    it(`${what}: 408, and hung up on`, async () => {
      const socket = await socketTo(await at('impatient'));
      socket.write(begun);
      expect(rawProblem(await whole(socket))).toBe(code);
    });
  }

  it('nothing at all is sent: 408, and hung up on', async () => {
    const socket = await socketTo(await at('impatient'));
    expect(rawProblem(await whole(socket))).toBe('too-slow');
  });

  it('an answer that is not taken in: hung up on', async () => {
    const tried = await at('impatient');
    const socket = await socketTo(tried);
    socket.pause();
    socket.on('error', () => undefined);
    // far more than what the system keeps for a reader
    socket.write('GET /v1/catalog/parts HTTP/1.1\r\nHost: a\r\nAccept-Encoding: identity\r\n\r\n'.repeat(60));
    const connections = async (): Promise<number> =>
      Number(/^legwork_connections (\d+)$/m.exec(await (await tried.ask('/metrics')).text())?.[1]);
    const before = await connections();
    while ((await connections()) >= before) await pause();
    socket.destroy();
  });
});

describe('requests that are not well formed', () => {
  for (const [what, text, code] of [
    ['no HTTP', 'what fits my fork?\r\n\r\n', 'malformed-request'],
    [
      'two lengths',
      'POST /v1/plan HTTP/1.1\r\nHost: a\r\nContent-Length: 1\r\nContent-Length: 2\r\n\r\n',
      'malformed-request',
    ],
    ['a strange method', 'FETCH /health HTTP/1.1\r\nHost: a\r\n\r\n', 'malformed-request'],
    ['headers without end', `GET /health HTTP/1.1\r\nHost: a\r\nX: ${'x'.repeat(20_000)}\r\n\r\n`, 'headers-too-large'],
    [
      'an endless address',
      `GET /v1/plan?question=${'x'.repeat(20_000)} HTTP/1.1\r\nHost: a\r\n\r\n`,
      'headers-too-large',
    ],
  ] as const) {
    it(`${what}: refused, and hung up on`, async () => {
      const socket = await socketTo(await at('strict'));
      socket.write(text);
      expect(rawProblem(await whole(socket))).toBe(code);
    });
  }

  it('an address that is no address: refused', async () => {
    const { ask } = await at('strict');
    for (const path of ['/v1/catalog/parts/%', '/v1/catalog/parts/%ff', '/%2e%2e/%2e%2e/etc/passwd', '//v1/fit']) {
      const { status } = await ask(path);
      expect([path, status === 400 || status === 404]).toEqual([path, true]);
    }
  });

  it('a body cut off: nothing is left behind', async () => {
    const tried = await at('strict');
    const socket = await socketTo(tried);
    socket.on('error', () => undefined);
    socket.write(
      'POST /v1/plan HTTP/1.1\r\nHost: a\r\nContent-Type: application/json\r\nContent-Length: 100\r\n\r\n{"a"',
    );
    socket.destroy();
    expect((await tried.ask('/health')).status).toBe(200);
  });
});

describe('limits', () => {
  it('rate: too many searches are refused with the time to wait; what is quick is not', async () => {
    const { post, ask } = await at('counted');
    const codes: number[] = [];
    for (let turn = 0; turn < 4; turn++) codes.push((await post('/v1/fit', { pairs: [] })).status);
    expect(codes).toEqual([400, 400, 400, 429]);
    const refused = await post('/v1/plan', {});
    const wait = Number(refused.headers.get('retry-after'));
    expect([refused.status, wait >= 1 && wait <= 60]).toEqual([429, true]);
    expect(problemSchema.parse(await refused.json()).code).toBe('too-many-requests');
    expect((await ask(FIT)).status).toBe(200);
    const reloads = await Promise.all([1, 2, 3].map(() => ask('/v1/reload', { method: 'POST' })));
    expect(reloads.map(({ status }) => status).sort()).toEqual([401, 401, 429]);
  });

  it('a long search: verdicts are given meanwhile', async () => {
    const tried = await at('usual');
    const { crew } = tried.service.desk.current;
    const hangUp = new AbortController();
    let ended = false;
    const search = tried
      .post('/v1/plan', LONG, {}, hangUp.signal)
      .then(() => 'answered')
      .catch(() => 'hung up')
      .finally(() => {
        ended = true;
      });
    while (crew.load().working === 0) await pause();
    for (let turn = 0; turn < 30; turn++) expect((await tried.ask(FIT)).status).toBe(200);
    expect([ended, crew.load().working]).toEqual([false, 1]);
    // who hangs up is not searched for any more, and the thread is there for others
    hangUp.abort();
    expect(await search).toBe('hung up');
    while (crew.load().working > 0) await pause();
    expect((await tried.post('/v1/plan', SHORT)).status).toBe(200);
  });

  it('searches that take too long are ended, though who waits is not hung up on, and when too many wait one is told so', async () => {
    const { post } = await at('small');
    const searches = [LONG, LONG, LONG].map(async (question) => {
      const response = await post('/v1/plan', question);
      const { code } = problemSchema.parse(await response.json());
      return [response.status, code, response.headers.has('retry-after')];
    });
    expect((await Promise.all(searches)).sort()).toEqual([
      [503, 'busy', true],
      [503, 'out-of-time', true],
      [503, 'out-of-time', true],
    ]);
    // the thread that was ended is there again
    const fresh = await post('/v1/fit', { pairs: [{ part: 'QN-VS', chassis: 'quennet-622' }] });
    expect(fresh.status).toBe(200);
  });

  it('steps: the service bounds what a question may ask for, and the answer says so', async () => {
    const { post } = await at('frugal');
    const answer = answerSchema.parse(await (await post('/v1/plan', SHORT)).json());
    expect([answer.status, answer.question.stepLimit]).toEqual(['stopped', 1]);
  });
});

describe('stopping', () => {
  it('what is brief is finished, what goes on for too long is cut off, and nothing more is taken', async () => {
    const tried = await serve({ farewell: 3_000 });
    const { crew } = tried.service.desk.current;
    const statusOf = (asked: Promise<Response>): Promise<number | 'cut off'> =>
      asked.then(({ status }) => status).catch(() => 'cut off');
    const long = statusOf(tried.post('/v1/plan', LONG));
    const pairs = Array.from({ length: 2_000 }, () => ({ part: 'QN-VS', chassis: 'quennet-622' }));
    const brief = statusOf(tried.post('/v1/fit', { pairs }));
    while (crew.load().working < 2) await pause();
    await tried.service.stop();
    expect([await brief, await long]).toEqual([200, 'cut off']);
    await expect(tried.ask('/health')).rejects.toThrow();
    expect(tried.log.join('')).toContain('"msg":"stopped"');
  });
});
