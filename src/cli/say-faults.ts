import { faultLines, type ListedFault } from '../report/faults.ts';
import { asText, pageWidth } from '../report/layout.ts';
import { en } from '../report/words/en.ts';
import { EXIT, type ExitCode, type Io } from './io.ts';

/** Says what is wrong with a command line or a question, on standard error. */
export function sayFaults(io: Io, faults: readonly ListedFault[]): ExitCode {
  io.err(asText(faultLines({ width: pageWidth(io.columns), paint: io.paintErr }, en, faults)));
  return EXIT.fault;
}
