import { createHash, randomBytes, timingSafeEqual } from 'node:crypto';
import type { RequestHandler } from 'express';
import { sendProblem } from './send.ts';

/**
 * The hash of a token as it is kept. A token is 256 bits of chance, so that a plain SHA-256 cannot be tried through; a slow hash is for
 * passwords that people choose.
 */
export const tokenHash = (token: string): string => createHash('sha256').update(token, 'utf8').digest('hex');

/** A new token. It is shown once and never kept. */
export const makeToken = (): string => randomBytes(32).toString('base64url');

/** Lets only those through who show one of the tokens (RFC 6750, in the header). */
export function mayReload(hashes: readonly string[]): RequestHandler {
  const known = hashes.map((hash) => Buffer.from(hash, 'hex'));
  return (request, response, next) => {
    const shown = /^Bearer +([A-Za-z0-9._~+/=-]{1,200})$/i.exec(request.headers.authorization ?? '')?.[1];
    const hash = Buffer.from(tokenHash(shown ?? ''), 'hex');
    // all are compared, so that the time says nothing of which or whether
    const matches = known.filter((one) => timingSafeEqual(one, hash)).length;
    if (shown !== undefined && matches > 0) return next();
    sendProblem(response, {
      code: 'unauthorized',
      detail:
        known.length === 0
          ? 'This service was started without a token, so that nobody can do this. `legwork token` makes one.'
          : 'Send a token that `legwork token` made: Authorization: Bearer TOKEN.',
      headers: { 'WWW-Authenticate': `Bearer realm="legwork"${shown === undefined ? '' : ', error="invalid_token"'}` },
    });
  };
}
