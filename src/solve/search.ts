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
  /** In which order the values of a variable are tried; ascending where it is left out. */
  readonly valuesOf?: (variable: number) => readonly number[];
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

  /** For each variable its values by a score of the problem in which it has that value alone, the least first; nothing is propagated. */
  ranked(score: (domains: Domains) => readonly number[]): readonly (readonly number[])[] {
    const domains = new Domains(this.sizes);
    this.propagator.start(domains);
    return this.sizes.map((size, variable) => {
      const scored = Array.from({ length: size }, (_, value) => value)
        .filter((value) => domains.has(variable, value))
        .map((value) => ({ value, score: scoreWith(domains, variable, value, score) }));
      return scored.sort((a, b) => compareLists(a.score, b.score) || a.value - b.value).map(({ value }) => value);
    });
  }

  private descend(domains: Domains, depth: number, budget: StepBudget, visitor: Visitor): SearchEnd {
    if (visitor.cut?.(domains)) return 'whole';
    let at = depth;
    while (at < this.order.length && domains.isFixed(this.order[at] ?? 0)) at++;
    const variable = this.order[at];
    if (variable === undefined)
      return visitor.leaf(this.sizes.map((_size, one) => domains.first(one))) ? 'whole' : 'enough';
    const preferred = visitor.valuesOf?.(variable);
    for (let place = 0; place < (preferred?.length ?? this.sizes[variable] ?? 0); place++) {
      const value = preferred?.[place] ?? place;
      if (!domains.has(variable, value)) continue;
      if (!budget.take()) return 'stopped';
      const mark = domains.mark();
      domains.keepOnly(variable, value);
      const end = this.propagator.changed(domains, variable) ? this.descend(domains, at + 1, budget, visitor) : 'whole';
      domains.undo(mark);
      if (end !== 'whole') return end;
    }
    return 'whole';
  }
}

function scoreWith(
  domains: Domains,
  variable: number,
  value: number,
  score: (domains: Domains) => readonly number[],
): readonly number[] {
  const mark = domains.mark();
  domains.keepOnly(variable, value);
  const scored = [...score(domains)];
  domains.undo(mark);
  return scored;
}

function compareLists(a: readonly number[], b: readonly number[]): number {
  const at = a.findIndex((one, place) => one !== b[place]);
  return at < 0 ? 0 : (a[at] ?? 0) < (b[at] ?? 0) ? -1 : 1;
}
