import { once } from 'node:events';
import { createServer, type Server, STATUS_CODES } from 'node:http';
import type { AddressInfo, Socket } from 'node:net';
import { promisify } from 'node:util';
import { type DestinationStream, type Logger, pino } from 'pino';
import { asJson } from '../report/json.ts';
import { makeApp } from './app.ts';
import { Desk, type Press } from './desk.ts';
import { type Edition, makeEdition } from './edition.ts';
import { type LoadOrder, type LoadResult, load } from './loader.ts';
import { makeMetrics } from './metrics.ts';
import type { Operation } from './operation.ts';
import { QUESTIONS } from './operations.ts';
import { readPage } from './page.ts';
import { PROBLEMS, type ProblemCode, problemDocument } from './problems.ts';
import type { Settings } from './settings.ts';

/** A service that listens. */
export interface Service {
  readonly url: string;
  readonly edition: Edition;
  readonly desk: Desk;
  /** Takes no new request, finishes what is under way, and ends the rest when the time for that is up. */
  readonly stop: () => Promise<void>;
}
export type Started =
  | { readonly kind: 'listening'; readonly service: Service }
  /** The catalogue, stock or shop is not sound. */
  | { readonly kind: 'refused'; readonly loaded: LoadResult }
  /** The address cannot be had: the code of the system, such as EADDRINUSE. */
  | { readonly kind: 'no-address'; readonly code: string };

/** Loads the catalogue, then listens. `logTo`: where the log goes, one JSON object a line. */
export async function start(
  settings: Settings,
  order: LoadOrder,
  logTo: DestinationStream,
  questions: readonly Operation[] = QUESTIONS,
): Promise<Started> {
  const log = pino({ level: settings.log, base: null }, logTo);
  const limits = { searchers: settings.searchers, waiting: settings.waiting, time: settings.searchTime };
  const press: Press = {
    load: () => load(order),
    make: (loaded) => makeEdition(loaded, limits, settings.mostSteps),
  };
  const loaded = await press.load();
  const { pack } = loaded;
  if (pack === null) return { kind: 'refused', loaded };
  const desk = new Desk(await press.make({ ...loaded, pack }), press);
  let stopping = false;
  const server = listener(settings);
  const connections = (): Promise<number> => promisify(server.getConnections.bind(server))();
  const metrics = makeMetrics(desk, connections);
  const page = await readPage();
  server.on('request', makeApp({ desk, settings, log, metrics, page, stopping: () => stopping }, questions));
  try {
    server.listen(settings.port, settings.host);
    await once(server, 'listening');
  } catch (error) {
    await desk.current.crew.dismiss();
    const code = typeof error === 'object' && error !== null && 'code' in error ? String(error.code) : 'unknown';
    return { kind: 'no-address', code };
  }
  const url = urlOf(server);
  log.info({ url, catalog: desk.current.world.catalog.hash }, 'listening');
  const stop = async (): Promise<void> => {
    stopping = true;
    await farewell(server, settings.farewell, log);
    await desk.current.crew.dismiss();
  };
  return { kind: 'listening', service: { url, edition: desk.current, desk, stop } };
}

const MOST_CONNECTIONS = 4_000;

/** A server that cuts off what is slow, and answers what is not HTTP with a problem. */
function listener({ patience }: Settings): Server {
  const server = createServer({
    headersTimeout: patience.headers,
    requestTimeout: patience.request,
    connectionsCheckingInterval: patience.check,
    keepAliveTimeout: patience.between,
  });
  server.maxHeadersCount = 100;
  server.maxConnections = MOST_CONNECTIONS;
  // who takes nothing of the answer in for so long, or sends nothing, is cut off
  server.setTimeout(patience.idle);
  server.on('clientError', (error: NodeJS.ErrnoException, socket: Socket) => {
    if (error.code === 'ECONNRESET' || !socket.writable) socket.destroy();
    else socket.end(rawProblem(codeOf(error)));
  });
  return server;
}

function codeOf({ code }: NodeJS.ErrnoException): ProblemCode {
  if (code === 'HPE_HEADER_OVERFLOW') return 'headers-too-large';
  return code === 'ERR_HTTP_REQUEST_TIMEOUT' ? 'too-slow' : 'malformed-request';
}

/** A problem for what never became a request. */
function rawProblem(code: ProblemCode): string {
  const text = asJson(problemDocument({ code, detail: 'The connection is closed.' }));
  const { status } = PROBLEMS[code];
  return [
    `HTTP/1.1 ${status} ${STATUS_CODES[status] ?? ''}`,
    'Content-Type: application/problem+json; charset=utf-8',
    `Content-Length: ${Buffer.byteLength(text)}`,
    'Cache-Control: no-store',
    'X-Content-Type-Options: nosniff',
    'Connection: close',
    '',
    text,
  ].join('\r\n');
}

async function farewell(server: Server, time: number, log: Logger): Promise<void> {
  const closed = once(server, 'close');
  server.close();
  server.closeIdleConnections();
  const cut = setTimeout(() => {
    log.warn('what was still under way is cut off');
    server.closeAllConnections();
  }, time);
  await closed;
  clearTimeout(cut);
  log.info('stopped');
}

function urlOf(server: Server): string {
  const { address, port, family } = server.address() as AddressInfo;
  return `http://${family === 'IPv6' ? `[${address}]` : address}:${port}`;
}
