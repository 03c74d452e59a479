import type { Request, RequestHandler, Response } from 'express';
import type { Logger } from 'pino';
import type { Metrics } from './metrics.ts';

/** Addresses that are asked every few seconds by whoever watches over the service: counted, and not written down. */
const QUIET = new Set(['/health', '/ready', '/metrics']);

/**
 * Counts each request when its answer is out, by the operation that it turned out to be, and writes a line about it into the log: no header, for
 * headers bear tokens.
 */
export function account(metrics: Metrics, log: Logger): RequestHandler {
  let last = 0;
  return (request, response, next) => {
    const id = ++last;
    const begun = performance.now();
    response.once('close', () => {
      const time = performance.now() - begun;
      const name: unknown = response.locals.operation;
      metrics.answered(typeof name === 'string' ? name : 'none', response.statusCode, time / 1000);
      if (!QUIET.has(request.originalUrl)) write(log, { id, request, response, time });
    });
    next();
  };
}

interface Answered {
  readonly id: number;
  readonly request: Request;
  readonly response: Response;
  /** ms */
  readonly time: number;
}

function write(log: Logger, { id, request, response, time }: Answered): void {
  const { method, originalUrl: url, socket } = request;
  const { statusCode } = response;
  const line = {
    req: { id, method, url, remoteAddress: socket.remoteAddress },
    res: { statusCode },
    responseTime: Math.round(time),
  };
  const said = response.writableFinished ? 'request completed' : 'request aborted';
  if (statusCode >= 500) log.error(line, said);
  else log.info(line, said);
}
