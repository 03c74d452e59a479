import express, { type RequestHandler } from 'express';
import type { Problem } from './problems.ts';
import { sendProblem } from './send.ts';
import type { Settings } from './settings.ts';

/** Reads a JSON body within limits of size and depth. */
export function bodyReader({ body: { bytes, depth } }: Settings): RequestHandler {
  const read = express.json({
    limit: bytes,
    type: 'application/json',
    verify: (_request, _response, text) => {
      if (isDeeper(text, depth)) throw new TooDeep(depth);
    },
  });
  return (request, response, next) => {
    // null: there is no body, which is for the question to refuse
    if (request.is('application/json') === false)
      sendProblem(response, {
        code: 'unsupported-media-type',
        detail: 'The body must be application/json.',
        headers: { 'Accept-Post': 'application/json' },
      });
    else read(request, response, next);
  };
}

class TooDeep extends Error {
  constructor(depth: number) {
    super(`The body nests lists and objects more than ${depth} deep.`);
  }
}

/** Whether brackets outside of strings nest deeper than that: known before anything is made of the text. */
function isDeeper(text: Uint8Array, most: number): boolean {
  let depth = 0;
  let inString = false;
  for (let at = 0; at < text.length; at++) {
    const byte = text[at];
    if (inString) {
      if (byte === 0x5c) at++;
      else if (byte === 0x22) inString = false;
    } else if (byte === 0x22) inString = true;
    else if (byte === 0x7b || byte === 0x5b) {
      depth++;
      if (depth > most) return true;
    } else if (byte === 0x7d || byte === 0x5d) depth--;
  }
  return false;
}

const KINDS: Readonly<Record<string, Problem>> = {
  'entity.too.large': { code: 'too-large', detail: 'Send less at once.' },
  'encoding.unsupported': {
    code: 'unsupported-media-type',
    detail: 'A body may be packed with gzip, deflate or br, or not at all.',
    headers: { 'Accept-Encoding': 'gzip, deflate, br' },
  },
  'charset.unsupported': { code: 'unsupported-media-type', detail: 'The body must be UTF-8.' },
  'entity.parse.failed': { code: 'malformed-request', detail: 'The body is not JSON.' },
  'request.aborted': { code: 'malformed-request', detail: 'The body ended too early.' },
  'request.size.invalid': { code: 'malformed-request', detail: 'The body is not as long as Content-Length says.' },
};

/** What an error on the way through the chain is for the client; its own text never reaches one. */
export function problemOfError(error: unknown): Problem {
  if (typeof error !== 'object' || error === null) return BROKEN;
  const type = 'type' in error ? String(error.type) : '';
  const known = KINDS[type];
  if (known) return known;
  if (type === 'entity.verify.failed' && 'message' in error)
    return { code: 'malformed-request', detail: String(error.message) };
  const status = 'status' in error ? Number(error.status) : 500;
  return status >= 400 && status < 500
    ? { code: 'malformed-request', detail: 'The address, the headers or the body are not well formed.' }
    : BROKEN;
}

const BROKEN: Problem = { code: 'broken', detail: 'Nothing was changed. The log of the service says more.' };
