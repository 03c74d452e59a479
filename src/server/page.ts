import { createHash } from 'node:crypto';
import { readdir, readFile } from 'node:fs/promises';
import { extname, join, sep } from 'node:path';
import { fileURLToPath } from 'node:url';
import { brotliCompressSync, gzipSync } from 'node:zlib';
import type { Express, RequestHandler } from 'express';
import { codedTag, isAny, knownTag } from './entity-tag.ts';
import { named, otherMethod } from './routing.ts';
import { sendKnown } from './send.ts';

/** The built page: as far from a source file as from a built one. */
const BUILT = fileURLToPath(new URL(import.meta.url.endsWith('.ts') ? '../../dist/web' : './web', import.meta.url));

const TYPES: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.svg': 'image/svg+xml',
  '.txt': 'text/plain; charset=utf-8',
};
/** What stands under this name bears a hash of its content in it, and never changes. */
const HASHED = '/assets/';
const MARK = /^\/assets\/mark-[^/]+\.svg$/;
const YEAR = 31_536_000;

/** The page as one answer for each of its addresses, read once: what is built meanwhile is not mixed with it. */
export type PageFiles = ReadonlyMap<string, PageFile>;
interface PageFile {
  readonly type: string;
  readonly tag: string;
  readonly identity: Buffer;
  readonly gzip: Buffer;
  readonly br: Buffer;
}

/** Reads the built page; nothing where there is none. */
export async function readPage(folder: string = BUILT): Promise<PageFiles> {
  const entries = await readdir(folder, { recursive: true, withFileTypes: true }).catch(() => []);
  const listed = entries.filter((entry) => entry.isFile() && extname(entry.name) in TYPES);
  const read = listed.map(async (entry): Promise<[string, PageFile]> => {
    const path = join(entry.parentPath, entry.name);
    const address = `/${path.slice(folder.length + 1).replaceAll(sep, '/')}`;
    return [address === '/index.html' ? '/' : address, pageFile(extname(path), await readFile(path))];
  });
  const files = new Map(await Promise.all(read));
  // a browser asks for this one beside whatever has no page around it, such as a picture opened by itself
  const mark = [...files].find(([address]) => MARK.test(address))?.[1];
  return mark ? files.set('/favicon.ico', mark) : files;
}

const pageFile = (extension: string, plain: Buffer): PageFile => ({
  type: TYPES[extension] ?? 'application/octet-stream',
  tag: `"${createHash('sha256').update(plain).digest('base64url').slice(0, 27)}"`,
  identity: plain,
  gzip: gzipSync(plain, { level: 9 }),
  br: brotliCompressSync(plain),
});

/** Serves the page at `/` and its parts beside it. */
export function servePage(app: Express, files: PageFiles): void {
  for (const [address, file] of files) {
    app
      .route(address)
      .get(named('page'), send(address, file))
      .all(otherMethod(['get']));
  }
}

function send(address: string, file: PageFile): RequestHandler {
  const cached = address.startsWith(HASHED) ? `public, max-age=${YEAR}, immutable` : 'no-cache';
  return (request, response) => {
    const coding = request.acceptsEncodings('br', 'gzip', 'identity') || 'identity';
    const body = file[coding === 'br' || coding === 'gzip' ? coding : 'identity'];
    const noneMatch = request.headers['if-none-match'];
    const known = knownTag(noneMatch, file.tag) ?? (isAny(noneMatch) ? file.tag : null);
    response.setHeader('Cache-Control', cached);
    if (known !== null) return sendKnown(response, known);
    response.vary('Accept-Encoding');
    response.setHeader('ETag', codedTag(file.tag, coding));
    response.setHeader('Content-Type', file.type);
    if (body !== file.identity) response.setHeader('Content-Encoding', coding);
    response.setHeader('Content-Length', body.length);
    response.end(body);
  };
}
