import { promisify } from 'node:util';
import { brotliCompress, constants, gzip } from 'node:zlib';
import type { Request, Response } from 'express';
import { asJson } from '../report/json.ts';
import { codedTag } from './entity-tag.ts';
import { PROBLEMS, type Problem, problemDocument } from './problems.ts';

/** Below this many bytes packing costs more than it saves. */
const WORTH_PACKING = 1_400;
const packers = {
  br: (text: string): Promise<Buffer> =>
    promisify(brotliCompress)(text, { params: { [constants.BROTLI_PARAM_QUALITY]: 4 } }),
  gzip: (text: string): Promise<Buffer> => promisify(gzip)(text),
};

/** An answer as it goes out: its text, its media type, and its entity tag where it has one. */
export interface Sent {
  readonly text: string;
  readonly type: string;
  readonly tag: string | null;
}

/** Sends an answer in UTF-8, packed where it is worth it and the client takes it. Express drops the body for HEAD. */
export async function sendText(request: Request, response: Response, { text, type, tag }: Sent): Promise<void> {
  response.setHeader('Content-Type', `${type}; charset=utf-8`);
  response.vary('Accept-Encoding');
  if (text.length < WORTH_PACKING) {
    if (tag !== null) response.setHeader('ETag', tag);
    response.setHeader('Content-Length', Buffer.byteLength(text));
    response.end(text);
    return;
  }
  const coding = request.acceptsEncodings('br', 'gzip', 'identity') || 'identity';
  if (tag !== null) response.setHeader('ETag', codedTag(tag, coding));
  if (coding !== 'br' && coding !== 'gzip') {
    response.setHeader('Content-Length', Buffer.byteLength(text));
    response.end(text);
    return;
  }
  const packed = await packers[coding](text);
  response.setHeader('Content-Encoding', coding);
  response.setHeader('Content-Length', packed.length);
  response.end(packed);
}

/** Says that the client has the answer already (RFC 9110, 15.4.5). */
export function sendKnown(response: Response, tag: string): void {
  response.vary('Accept-Encoding');
  response.setHeader('ETag', tag);
  response.status(304).end();
}

/** Sends a problem (RFC 9457). */
export function sendProblem(response: Response, problem: Problem): void {
  if (response.headersSent) {
    response.destroy();
    return;
  }
  const text = asJson(problemDocument(problem));
  response.status(PROBLEMS[problem.code].status);
  for (const [name, value] of Object.entries(problem.headers ?? {})) response.setHeader(name, value);
  response.removeHeader('ETag');
  response.setHeader('Cache-Control', 'no-store');
  response.setHeader('Content-Type', 'application/problem+json; charset=utf-8');
  response.setHeader('Content-Length', Buffer.byteLength(text));
  response.end(text);
}
