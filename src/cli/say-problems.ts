import type { Problem } from '../catalog/index.ts';
import { asText, pageWidth } from '../report/layout.ts';
import { problemLines } from '../report/problems.ts';
import { en } from '../report/words/en.ts';
import type { Io } from './io.ts';

/** Says what is wrong with a catalogue. */
export function sayProblems(write: (text: string) => void, io: Io, problems: readonly Problem[], folder: string): void {
  const paint = write === io.err ? io.paintErr : io.paintOut;
  write(asText(problemLines({ width: pageWidth(io.columns), paint }, en, problems, folder)));
}
