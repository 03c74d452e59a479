import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex, utf8ToBytes } from '@noble/hashes/utils.js';
import { byCodeUnit } from '../quantity/index.ts';

/** Hash of a value's canonical JSON: keys sorted by code unit, no white space. The first 32 hex digits of SHA-256. */
export const canonicalHash = (value: unknown): string =>
  bytesToHex(sha256(utf8ToBytes(canonicalJson(value)))).slice(0, 32);

function canonicalJson(value: unknown): string {
  if (Array.isArray(value)) return `[${value.map(canonicalJson).join(',')}]`;
  if (typeof value === 'object' && value !== null) {
    const entries = Object.entries(value)
      .filter(([, item]) => item !== undefined)
      .sort(([a], [b]) => byCodeUnit(a, b));
    return `{${entries.map(([key, item]) => `${JSON.stringify(key)}:${canonicalJson(item)}`).join(',')}}`;
  }
  return JSON.stringify(value) ?? 'null';
}
