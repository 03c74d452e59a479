import type { Answer } from '../../src/plan/answer.ts';
import type { Model } from './model.ts';
import { evaluated } from './programme.ts';
import type { Solver, Verdict } from './solver.ts';

/** What a solver has against an answer, and how often it gave no verdict. */
export interface Held {
  readonly differences: readonly string[];
  readonly noVerdict: number;
}

const NAMES = ['total', 'minutes', 'days', 'unpriced', 'unknown'] as const;
type Numbers = readonly [number, number, number, number, number];

/** Whether there is a plan, each single least value, and that no plan is missing from the front. */
export function heldAgainst(answer: Answer, model: Model, solver: Solver): Held {
  const front = answer.plans.map((plan) => numbersOf(plan, model));
  const expected = answer.status === 'nothing-to-do' ? [[0, 0, 0, 0, 0] as const] : front;
  if (answer.status === 'stopped') return { differences: ['the answer is stopped'], noVerdict: 0 };
  const leasts = (expected.length === 0 ? [0] : [0, 1, 2]).map((part) => leastOf(model, solver, expected, part));
  const verdicts = [...leasts, ...(answer.status === 'answered' ? [missing(model, solver, front)] : [])];
  return {
    differences: verdicts.flatMap(({ difference }) => (difference === null ? [] : [difference])),
    noVerdict: verdicts.filter(({ verdict }) => verdict.kind === 'no-verdict').length,
  };
}

interface Judged {
  readonly verdict: Verdict;
  readonly difference: string | null;
}

function numbersOf({ money, minutes, readyInDays, unknowns }: Answer['plans'][number], { days }: Model): Numbers {
  return [Math.round(Number(money.total) * 100), minutes, days.indexOf(readyInDays), money.unpriced, unknowns];
}

function leastOf(model: Model, solver: Solver, expected: readonly Numbers[], part: number): Judged {
  const objective = model.parts[part];
  if (objective === undefined) throw new Error('no such part');
  const ours = expected.length === 0 ? null : Math.min(...expected.map((numbers) => numbers[part] ?? 0));
  const first = solver(model.programme, objective);
  const verdict = first.kind === 'none' && ours !== null ? solver(model.programme, objective, true) : first;
  const theirs = verdict.kind === 'least' ? verdict.value : null;
  const agree = verdict.kind === 'no-verdict' || ours === theirs;
  return {
    verdict,
    difference: agree ? null : `least ${NAMES[part]}: ${ours ?? 'no plan'}, the solver ${theirs ?? 'no plan'}`,
  };
}

/** A plan that no listed vector beats or equals: in each listed one something is above it. */
function missing({ programme, parts }: Model, solver: Solver, front: readonly Numbers[]): Judged {
  const other = programme.copy();
  for (const vector of front) {
    const below = parts.map(({ terms, plus }, part) => {
      const is = other.yesOrNo();
      const bound = (vector[part] ?? 0) - 1 - plus;
      other.add([...terms, [FAR, is]], '<=', bound + FAR);
      return is;
    });
    other.imply([], below);
  }
  const verdict = solver(other, parts[0]);
  const found = verdict.kind === 'least' ? parts.map((part) => evaluated(part, verdict.values)).join(', ') : null;
  return { verdict, difference: found === null ? null : `a plan is missing: (${found})` };
}

/** Above every value that a part of a vector can have in a generated catalogue, in minor units. */
const FAR = 2_000_000;
