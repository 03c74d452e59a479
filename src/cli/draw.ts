import { writeFileSync } from 'node:fs';
import { pictureSvg } from '../picture/index.ts';
import type { PictureData } from '../plan/index.ts';
import type { ListedFault } from '../report/faults.ts';
import { en } from '../report/words/en.ts';
import type { Io } from './io.ts';

/** Draws into a file, and says so on standard error; what is wrong with the file otherwise. Without a plan nothing is drawn. */
export function drawInto(file: string, data: PictureData | null, io: Io): ListedFault | null {
  if (data === null) {
    io.err(`legwork: there is no plan, so nothing was drawn into ${file}\n`);
    return null;
  }
  try {
    writeFileSync(file, pictureSvg(data, en.phrases.picture));
  } catch (error) {
    return {
      list: 'usage',
      code: 'file-not-writable',
      params: { file, reason: reasonOf(error), option: '--picture' },
    };
  }
  io.err(`legwork: drawn into ${file}\n`);
  return null;
}

const REASONS: Readonly<Record<string, string>> = {
  ENOENT: 'its folder is not there',
  EACCES: 'it may not be written',
  EISDIR: 'it is a folder',
  EROFS: 'nothing can be written there',
  ENOSPC: 'there is no room left',
};
const reasonOf = (error: unknown): string =>
  error instanceof Error && 'code' in error
    ? (REASONS[String(error.code)] ?? String(error.code))
    : 'it cannot be opened';
