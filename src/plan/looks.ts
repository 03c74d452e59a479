import type { Look } from '../catalog/index.ts';
import type { ForkProblem } from '../fork/index.ts';
import { minor } from '../quantity/index.ts';
import type { StepBudget } from '../solve/index.ts';
import type { Step } from './answer.ts';
import { money } from './lines.ts';
import type { Prepared } from './prepare.ts';
import { bestValue, type Candidate, type PlanVector } from './search.ts';
import type { World } from './world.ts';

type Shown = Step['looks'][number];

/**
 * Looks with what each would add to a plan, should it find what it looks for: model.md, section 5. Several looks may add the same, and plans that differ
 * only in what is bought come to the same with it.
 */
export class Looks {
  /** False where steps ran out before it was known what some look adds. */
  complete = true;
  private readonly world: World;
  private readonly prepared: Prepared;
  private readonly fork: ForkProblem;
  private readonly budget: StepBudget;
  private readonly known = new Map<string, PlanVector | null>();

  constructor(world: World, prepared: Prepared, fork: ForkProblem, budget: StepBudget) {
    this.world = world;
    this.prepared = prepared;
    this.fork = fork;
    this.budget = budget;
  }

  /** A look with what it would add to this very plan; null where it adds nothing, or no new piece can be had. */
  in(candidate: Candidate, look: Look): Shown {
    const adds = look.adds.filter((slot) => candidate.build.slots.get(slot));
    if (adds.length === 0) return { ...look, adds, extra: null };
    const key = [...adds, ...candidate.values].join(' ');
    const found = this.known.get(key);
    const best = found === undefined ? this.bestWith(candidate, adds) : found;
    this.known.set(key, best);
    return { ...look, adds, extra: best && this.extra(candidate.vector, best) };
  }

  /**
   * What the plan with those slots renewed too comes to: everything that is not renewed stays, what is renewed may be any number that the rest of the build allows (a kit may
   * bring others), bought the preferred way. Null where no new piece can be had.
   */
  private bestWith({ values, work }: Candidate, slots: readonly string[]): PlanVector | null {
    const { world, prepared, fork, budget } = this;
    const renewed = new Set([...work.renewed, ...slots]);
    const isFree = (variable: number): boolean => renewed.has(fork.domains[variable - 1]?.slot.name ?? '');
    const settled = new Map([...values.entries()].filter(([variable]) => !isFree(variable)));
    const renew = [...new Set([...prepared.wants.renew, ...slots])];
    const more: Prepared = { ...prepared, wants: { ...prepared.wants, renew } };
    const best = bestValue(world, more, fork, { known: values, settled }, budget);
    if (best === 'stopped') this.complete = false;
    return typeof best === 'string' ? null : best;
  }

  /** What a plan comes to, less the plan without. */
  private extra([total, minutes, , unpriced]: PlanVector, best: PlanVector): Shown['extra'] {
    return {
      money: money(this.world, minor(best[0] - total)),
      minutes: best[1] - minutes,
      days: Number.isFinite(best[2]) ? best[2] : null,
      atLeast: best[3] > unpriced || !this.world.hasShop,
    };
  }
}
