import { nearest } from '../catalog/nearest.ts';
import { codeLines, explainLines, knownCodes } from '../report/explain.ts';
import { asText, pageWidth } from '../report/layout.ts';
import { en } from '../report/words/en.ts';
import { EXIT, type ExitCode, type Io } from './io.ts';
import type { Given } from './read-options.ts';
import { sayFaults } from './say-faults.ts';

/** `legwork explain [CODE]`. */
export async function runExplain({ argument }: Given, io: Io): Promise<ExitCode> {
  const page = { width: pageWidth(io.columns), paint: io.paintOut };
  if (argument === null) {
    io.out(asText(codeLines(page, en)));
    return EXIT.yes;
  }
  const lines = explainLines(page, en, argument);
  if (lines === null)
    return sayFaults(io, [
      { list: 'usage', code: 'unknown-code', params: { found: argument, nearest: nearest(argument, knownCodes(en)) } },
    ]);
  io.out(asText(lines));
  return EXIT.yes;
}
