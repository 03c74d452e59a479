import { createHash } from 'node:crypto';
import { VERSION } from '../cli/version.ts';
import type { Edition } from './edition.ts';

/**
 * The strong entity tag (RFC 9110, 8.8.3) of an answer: a hash over what the answer is a function of, namely the program, catalogue, stock and
 * shop, the address and the question. The same tag therefore means the same bytes, without working them out.
 */
export function entityTag(edition: Edition, operation: string, key: string): string {
  const digest = createHash('sha256').update(`${VERSION}\0${edition.hash}\0${operation}\0${key}`).digest('base64url');
  return `"${digest.slice(0, 27)}"`;
}

/** The tag of the same answer in another coding: other bytes, so another tag. */
export const codedTag = (tag: string, coding: string): string =>
  coding === 'identity' ? tag : `${tag.slice(0, -1)}.${coding}"`;

/** Whether If-None-Match (RFC 9110, 13.1.2, weak comparison) names the tag in some coding. */
export function isKnown(header: string | undefined, tag: string): boolean {
  if (header === undefined) return false;
  if (header.trim() === '*') return true;
  const core = tag.slice(1, -1);
  return [...header.matchAll(/(?:W\/)?"([^"]*)"/g)].some(
    ([, found = '']) => found === core || found === `${core}.gzip` || found === `${core}.br`,
  );
}
