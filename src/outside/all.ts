import { existsSync } from 'node:fs';
import { type Known, knownAnswers } from './known.ts';
import type { Said } from './main.ts';

/** Where the outside data is: what the call says, else LEGWORK_OUTSIDE_DATA, else beside the project. */
export const outsideFolder = (args: readonly string[], env: NodeJS.ProcessEnv): string =>
  args[0] ?? env.LEGWORK_OUTSIDE_DATA ?? '../shared/data';

/** Every instance of a folder against its known answer: a line for each as it ends, the differences, and how many there are. */
export async function outsideAll(folder: string, line: (text: string) => void): Promise<Said['code']> {
  if (!existsSync(folder)) {
    line(`outside data: there is no folder ${folder}; nothing was run (LEGWORK_OUTSIDE_DATA or an argument names it)`);
    return 0;
  }
  const known = knownAnswers(folder);
  if (known.length === 0) {
    line(`outside data: ${folder} holds no instance with a known answer`);
    return 2;
  }
  const width = Math.max(...known.map(({ name }) => name.length));
  line(`${'kind'.padEnd(9)}  ${'instance'.padEnd(width)}  seconds  same  answer`);
  let different = 0;
  for (const one of known) {
    const begun = performance.now();
    const answer = await answerOf(one);
    const seconds = ((performance.now() - begun) / 1000).toFixed(2);
    const same = answer === one.expected;
    if (!same) different++;
    line(
      `${one.kind.padEnd(9)}  ${one.name.padEnd(width)}  ${seconds.padStart(7)}  ${same ? 'yes ' : 'NO  '}  ${short(answer)}`,
    );
    if (!same) line(`${' '.repeat(11)}known: ${one.expected}\n${' '.repeat(11)}ours:  ${answer}`);
  }
  line(`${known.length} instances, ${different} differences`);
  return different > 0 ? 1 : 0;
}

async function answerOf({ answer }: Known): Promise<string> {
  try {
    return await answer();
  } catch (error) {
    return `no answer: ${error instanceof Error ? error.message : String(error)}`;
  }
}

/** An answer in one line; lists of sets by their number. */
function short(answer: string): string {
  const [conflicts, corrections] = answer.split(' / ');
  if (corrections !== undefined)
    return `${conflicts?.split(' | ').length} conflicts, ${corrections.split(' | ').length} corrections`;
  return answer.length > 70 ? `${answer.slice(0, 67)}...` : answer;
}
