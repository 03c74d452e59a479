import type { Look } from '../catalog/index.ts';
import type { ForkProblem } from '../fork/index.ts';
import { minor } from '../quantity/index.ts';
import { isSolution } from '../solve/index.ts';
import type { Step } from './answer.ts';
import { money } from './lines.ts';
import { byPreference } from './preference.ts';
import type { Prepared } from './prepare.ts';
import { type Candidate, type PlanVector, waysToPayFor } from './search.ts';
import type { World } from './world.ts';

type Extra = Step['looks'][number]['extra'];

/** A look with what it would add to a plan. */
export type LookIn = (candidate: Candidate, look: Look) => Step['looks'][number];

/**
 * Looks with what each would add to this very plan, should it find what it looks for: model.md, section 5. Several looks may add the same, and plans that differ
 * only in what is bought come to the same with it.
 */
export function looksOf(world: World, prepared: Prepared, fork: ForkProblem): LookIn {
  const known = new Map<string, PlanVector | null>();
  return (candidate, look) => {
    const adds = look.adds.filter((slot) => candidate.build.slots.get(slot));
    if (adds.length === 0) return { ...look, adds, extra: null };
    const key = [...adds, ...candidate.values].join(' ');
    const found = known.get(key);
    const best = found === undefined ? bestWith(world, prepared, fork, candidate, adds) : found;
    known.set(key, best);
    return { ...look, adds, extra: best && extraOf(world, candidate.vector, best) };
  };
}

/**
 * What the plan with those slots renewed too comes to. What is renewed may be any number that the rest of the build allows (a kit may bring others),
 * bought the preferred way; null where no new piece can be had.
 */
function bestWith(
  world: World,
  prepared: Prepared,
  fork: ForkProblem,
  candidate: Candidate,
  slots: readonly string[],
): PlanVector | null {
  const more: Prepared = {
    ...prepared,
    wants: { ...prepared.wants, renew: [...new Set([...prepared.wants.renew, ...slots])] },
  };
  const renewed = new Set([...candidate.work.renewed, ...slots]);
  const variables = fork.domains.flatMap(({ slot }, at) => (renewed.has(slot.name) ? [at + 1] : []));
  const ways = waysToPayFor(world, more, fork);
  const vectors = allValues(fork, candidate.values, variables)
    .filter((values) => isSolution(fork.problem, values))
    .flatMap((values) => ways(values).map(({ vector }) => vector));
  const [best] = vectors.sort((a, b) => byPreference(prepared.question.prefer, a, b));
  return best ?? null;
}

/** What a plan comes to, less the plan without. */
function extraOf(world: World, [total, minutes, , unpriced]: PlanVector, best: PlanVector): Extra {
  return {
    money: money(world, minor(best[0] - total)),
    minutes: best[1] - minutes,
    days: Number.isFinite(best[2]) ? best[2] : null,
    atLeast: best[3] > unpriced || !world.hasShop,
  };
}

/** The assignment with every combination of values of some variables. */
const allValues = (fork: ForkProblem, values: readonly number[], variables: readonly number[]): readonly number[][] =>
  variables.reduce<readonly number[][]>(
    (found, variable) =>
      found.flatMap((one) =>
        Array.from({ length: fork.sizes[variable] ?? 0 }, (_, value) => one.with(variable, value)),
      ),
    [[...values]],
  );
