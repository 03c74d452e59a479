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
    handler: (_request, response) => {
      sendProblem(response, {
        code: 'too-many-requests',
        detail: `At most ${limit} requests of this kind a minute. Ask again when Retry-After says.`,
      });
    },
  });
}
