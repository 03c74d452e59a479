import type { QuestionInput } from '../../src/plan/index.ts';
import { byChassis } from './by-chassis.ts';
import { type Demo, putTo } from './share.ts';

/** One of so many equal shares. */
export interface Part {
  readonly at: number;
  readonly of: number;
}

/** `2/3` is the second of three shares; nothing is all of it. Throws on anything else. */
export function readPart(text: string | undefined): Part {
  if (text === undefined || text === '') return { at: 1, of: 1 };
  const [, at, of] = /^([1-9][0-9]*)\/([1-9][0-9]*)$/.exec(text) ?? [];
  if (at === undefined || of === undefined || Number(at) > Number(of)) throw new Error(`not a share: ${text}`);
  return { at: Number(at), of: Number(of) };
}

export interface Findings {
  readonly questions: number;
  readonly refusals: number;
  readonly found: readonly string[];
}

/** Puts the questions of a share of all chassis to engine and oracle, reasons of refusals too; what is found is printed as it is found. */
export function findingsIn(
  demo: Demo,
  what: string,
  questions: readonly QuestionInput[],
  part: Part,
  isOver: () => boolean,
): Findings {
  let [asked, refusals] = [0, 0];
  const found: string[] = [];
  const bodies = byChassis(questions).filter((_, at) => at % part.of === part.at - 1);
  const all = bodies.reduce((total, body) => total + body.length, 0);
  for (const body of bodies) {
    if (isOver()) break;
    for (const question of body) {
      if (isOver()) break;
      const one = putTo(demo, question, 'the answer and its reasons');
      for (const finding of one.found) console.log(finding);
      found.push(...one.found);
      refusals += one.isRefused ? 1 : 0;
      asked++;
    }
    const { chassis, bike } = body[0] ?? {};
    console.log(
      `${what}, up to ${chassis ?? bike}: ${asked} of ${all} asked, ${refusals} refused, ${found.length} found`,
    );
  }
  return { questions: asked, refusals, found };
}
