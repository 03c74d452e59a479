import type { StepBudget } from './budget.ts';
import type { Domains } from './domains.ts';
import type { Problem } from './problem.ts';
import { Search } from './search.ts';
import { brokenBy } from './solution.ts';

/** What a solution has to meet beyond the tables and sums, and a cut that leaves none of those out. */
export interface Terms {
  readonly cut?: (domains: Domains) => boolean;
  readonly accepts?: (values: readonly number[]) => boolean;
}

/**
 * Whether a problem can be solved while only some of its members hold, asked again and again. A solution found once answers for every choice of members
 * that it meets; a choice that failed answers for every choice that holds the same and more. What neither settles is searched.
 */
export class Standing {
  private readonly problem: Problem;
  private readonly order: readonly number[];
  private readonly terms: Terms;
  /** For each solution found the members that it breaks. */
  private readonly broken: (readonly number[])[] = [];
  /** Members that hold in a choice that failed. */
  private readonly failed: (readonly number[])[] = [];

  constructor(problem: Problem, order: readonly number[], terms: Terms = {}) {
    this.problem = problem;
    this.order = order;
    this.terms = terms;
  }

  /** True where some assignment meets the members that hold; null where the steps ran out. */
  canStand(holds: (member: number) => boolean, budget: StepBudget): boolean | null {
    if (this.broken.some((members) => !members.some(holds))) return true;
    if (this.failed.some((members) => members.every(holds))) return false;
    const end = new Search(this.problem, holds, this.order).run(budget, {
      ...(this.terms.cut ? { cut: this.terms.cut } : {}),
      leaf: (values) => {
        if (this.terms.accepts?.(values) === false) return true;
        this.broken.push([...brokenBy(this.problem, values)]);
        return false;
      },
    });
    if (end === 'whole') this.failed.push(Array.from({ length: this.problem.members }, (_, at) => at).filter(holds));
    return end === 'stopped' ? null : end === 'enough';
  }
}
