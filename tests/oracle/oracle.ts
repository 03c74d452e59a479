import type { QuestionInput } from '../../src/plan/question.ts';
import type { Book } from './book.ts';
import { type Build, buildsOf, frontOf, inOrderOf, type OraclePlan } from './plans.ts';
import { isChanged, type Scene, sceneOf, slotsOf } from './scene.ts';

type OracleStatus = 'at-fault' | 'nothing-to-do' | 'answered' | 'impossible' | 'not-known' | 'not-obtainable';

/** What the plain way of looking at everything finds. */
export interface OracleAnswer {
  readonly status: OracleStatus;
  /** Builds that meet wishes and rules, before anything is bought. */
  readonly builds: readonly Build[];
  /** In the order that is preferred. */
  readonly front: readonly OraclePlan[];
}

export function oracle(book: Book, question: QuestionInput): OracleAnswer {
  const scene = sceneOf(book, question);
  return scene === null ? { status: 'at-fault', builds: [], front: [] } : solve(scene);
}

export function solve(scene: Scene): OracleAnswer {
  const builds = buildsOf(scene, scene.question.allowUnknown);
  const staying = builds.find((build) => isNothing(scene, build));
  if (staying?.unknowns === 0) return { status: 'nothing-to-do', builds, front: [] };
  const unbeaten = frontOf(scene, builds).filter(({ build }) => build !== staying);
  const front = inOrderOf(scene.question.prefer, unbeaten);
  if (front.length > 0) return { status: 'answered', builds, front };
  if (staying !== undefined) return { status: 'nothing-to-do', builds, front };
  if (builds.length > 0) return { status: 'not-obtainable', builds, front };
  return { status: buildsOf(scene, true).length > 0 ? 'not-known' : 'impossible', builds, front };
}

/** The fork is as it is wished, nothing is renewed, and nothing has to be bought. */
const isNothing = (scene: Scene, { draft, work }: Build): boolean =>
  work.steps.length === 0 &&
  slotsOf(scene).every((slot) => !isChanged(scene, draft, slot)) &&
  scene.question.wants.use.every((sku) => scene.book.parts.has(sku));
