import type { StepBudget } from './budget.ts';
import { Domains } from './domains.ts';
import type { Problem } from './problem.ts';
import { Propagator } from './propagate.ts';

/** How a search ended: the whole space was seen, the visitor had enough, or the steps ran out. */
export type SearchEnd = 'whole' | 'enough' | 'stopped';

/** What is done on the way: a node may be cut off where nothing of worth lies below; a leaf returns false when it is enough. */
export interface Visitor {
  readonly cut?: (domains: Domains) => boolean;
  readonly leaf: (values: readonly number[]) => boolean;
}

/** A problem made ready for searches in one order of its variables; which members hold is settled. */
export class Search {
  private readonly propagator: Propagator;
  private readonly order: readonly number[];
  private readonly sizes: readonly number[];

  /** `order` lists the variables as they are decided; those left out follow in their own order. */
  constructor(problem: Problem, holds: (member: number) => boolean, order: readonly number[] = []) {
    this.propagator = new Propagator(problem, holds);
    this.sizes = problem.sizes;
    const listed = new Set(order);
    this.order = [
      ...order,
      ...problem.sizes.map((_size, variable) => variable).filter((variable) => !listed.has(variable)),
    ];
  }

  /**
   * Depth-first, values in ascending order, propagating after each decision: complete up to cuts. Leaves come in lexicographic order of the
   * decided variables. One step is one value tried.
   */
  run(budget: StepBudget, visitor: Visitor): SearchEnd {
    const domains = new Domains(this.sizes);
    if (!this.propagator.start(domains)) return 'whole';
    return this.descend(domains, 0, budget, visitor);
  }

  private descend(domains: Domains, depth: number, budget: StepBudget, visitor: Visitor): SearchEnd {
    if (visitor.cut?.(domains)) return 'whole';
    let at = depth;
    while (at < this.order.length && domains.isFixed(this.order[at] ?? 0)) at++;
    const variable = this.order[at];
    if (variable === undefined)
      return visitor.leaf(this.sizes.map((_size, one) => domains.first(one))) ? 'whole' : 'enough';
    for (let value = 0; value < (this.sizes[variable] ?? 0); value++) {
      if (!domains.has(variable, value)) continue;
      if (!budget.take()) return 'stopped';
      const mark = domains.mark();
      for (let other = 0; other < (this.sizes[variable] ?? 0); other++)
        if (other !== value) domains.remove(variable, other);
      const end = this.propagator.changed(domains, variable) ? this.descend(domains, at + 1, budget, visitor) : 'whole';
      domains.undo(mark);
      if (end !== 'whole') return end;
    }
    return 'whole';
  }
}
