import { hash } from 'node:crypto';
import { VERSION } from '../cli/version.ts';
import type { Edition } from './edition.ts';

/**
 * The strong entity tag (RFC 9110, 8.8.3) of an answer: a hash over what the answer is a function of, namely the program, catalogue, stock and
 * shop, the address and the question. The same tag therefore means the same bytes, without working them out.
 */
export function entityTag(edition: Edition, operation: string, key: string): string {
  const digest = hash('sha256', `${VERSION}\0${edition.hash}\0${operation}\0${key}`, 'base64url');
  return `"${digest.slice(0, 27)}"`;
}

/** The tag of the same answer in another coding: other bytes, so another tag. */
export const codedTag = (tag: string, coding: string): string =>
  coding === 'identity' ? tag : `${tag.slice(0, -1)}.${coding}"`;

/** The tag, in the coding in which If-None-Match names it (RFC 9110, 13.1.2, weak comparison); null where it does not. */
export function knownTag(header: string | undefined, tag: string): string | null {
  if (header === undefined) return null;
  const named = [...header.matchAll(/(?:W\/)?("[^"]*")/g)].map(([, one]) => one);
  return ['identity', 'gzip', 'br'].map((coding) => codedTag(tag, coding)).find((one) => named.includes(one)) ?? null;
}

/** Whether If-None-Match names any answer, if there is one: only the answer itself can tell (RFC 9110, 13.2.1). */
export const isAny = (header: string | undefined): boolean => header?.trim() === '*';
