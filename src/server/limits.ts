import type { RequestHandler } from 'express';
import { rateLimit } from 'express-rate-limit';
import { sendProblem } from './send.ts';
import type { Settings } from './settings.ts';

const MINUTE = 60_000;

/** Limits of requests a minute for each client: on everything, on what searches, and on what needs a token. */
export function makeLimits({ rate }: Settings): Readonly<Record<'all' | 'search' | 'guarded', RequestHandler>> {
  return { all: limitTo(rate.all), search: limitTo(rate.search), guarded: limitTo(rate.guarded) };
}

function limitTo(limit: number): RequestHandler {
  return rateLimit({
    windowMs: MINUTE,
    limit,
    standardHeaders: false,
    legacyHeaders: false,
    handler: (request, response) => {
      sendProblem(response, {
        code: 'too-many-requests',
        detail: `At most ${limit} requests of this kind a minute. Ask again when Retry-After says.`,
        headers: { 'Retry-After': String(secondsLeft(request)) },
      });
    },
  });
}

/** Seconds until the client may ask again, as the limiter notes it on the request. */
function secondsLeft(request: object): number {
  const noted: unknown = Reflect.get(request, 'rateLimit');
  const until = typeof noted === 'object' && noted !== null ? Reflect.get(noted, 'resetTime') : null;
  return until instanceof Date ? Math.max(1, Math.ceil((until.getTime() - Date.now()) / 1000)) : MINUTE / 1000;
}
