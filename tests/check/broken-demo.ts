import { type Problem, type ProblemCode, readCatalog, type TextFile } from '../../src/catalog/index.ts';
import { loadFiles } from '../../src/catalog/read.ts';
import { senseProblems } from '../../src/check/index.ts';
import { demoFolder } from '../support/demo.ts';

/** Where a problem is expected: before this mark, which is taken out of the text. */
export const HERE = '⟦';

/** One small change to the demo catalogue, and what is said of it. */
export interface Broken {
  readonly code: ProblemCode;
  readonly what: string;
  readonly file: string;
  /** This text, which stands once in the file, becomes that one. */
  readonly from: string;
  readonly to: string;
  /** Text of the line at which the record begins, where that is not the line with the mark. It stands once, in `in` or the same file. */
  readonly at?: string;
  readonly in?: string;
  /** What follows from the mistake: other codes that may be said too. */
  readonly follows?: readonly ProblemCode[];
}

const demo = loadFiles(demoFolder);

/** The problems of the demo catalogue; with a change, of a copy of it. */
export async function problemsOf(broken: Broken | null): Promise<{
  readonly problems: readonly Problem[];
  readonly expectedAt: string;
}> {
  const { files } = await demo;
  const changed =
    broken === null ? files : files.map((file) => (file.name === broken.file ? change(file, broken) : file));
  const read = readCatalog(changed.map(withoutMark), 'demo');
  if (!read.value) throw new Error(`the copy can not be read: ${JSON.stringify(read.problems.slice(0, 3))}`);
  return { problems: senseProblems(read.value), expectedAt: broken === null ? '' : placeIn(changed, broken) };
}

function change({ name, text }: TextFile, { from, to }: Broken): TextFile {
  return { name, text: text.replace(once(name, text, from), () => to) };
}

function once(name: string, text: string, part: string): string {
  const found = text.split(part).length - 1;
  if (found !== 1) throw new Error(`${found} times in ${name}: ${part}`);
  return part;
}

const withoutMark = ({ name, text }: TextFile): TextFile => ({ name, text: text.replace(HERE, '') });

/** `file:line` of the mark, or of the line that is named. */
function placeIn(files: readonly TextFile[], broken: Broken): string {
  const name = broken.at === undefined ? broken.file : (broken.in ?? broken.file);
  const text = files.find((file) => file.name === name)?.text ?? '';
  const before = text.split(once(name, text, broken.at ?? HERE), 1)[0] ?? '';
  return `${name}:${before.split('\n').length}`;
}
