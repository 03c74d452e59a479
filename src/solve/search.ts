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
  /** In which order the variables are decided, all of them; that of the search where it is left out. */
  readonly order?: readonly number[];
}

/** A problem made ready for searches in one order of its variables; which members hold is settled. */
export class Search {
  private readonly propagator: Propagator;
  private readonly order: readonly number[];
  private readonly sizes: readonly number[];
  private readonly settled: ReadonlyMap<number, number>;

  /** `order` lists the variables as they are decided; those left out follow in their own order. `settled`: variables that have one value and no other. */
  constructor(
    problem: Problem,
    holds: (member: number) => boolean,
    order: readonly number[] = [],
    settled: ReadonlyMap<number, number> = new Map(),
  ) {
    this.propagator = new Propagator(problem, holds);
    this.sizes = problem.sizes;
    this.settled = settled;
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
    const domains = this.start();
    if (!domains) return 'whole';
    return this.descend(domains, 0, budget, visitor);
  }

  /**
   * An order of variables and values by a score of what is left once a variable has a value, propagated, parts compared in turn: of each variable the values from the least on, and
   * first the variables whose least is greatest, for they show soonest what cannot be had.
   */
  ranked(score: (domains: Domains) => readonly number[]): Required<Pick<Visitor, 'valuesOf' | 'order'>> {
    const domains = this.start();
    const values = this.sizes.map((size, variable) =>
      Array.from({ length: size }, (_, value) => value)
        .flatMap((value) => {
          const scored = domains?.has(variable, value) ? this.scoreWith(domains, variable, value, score) : null;
          return scored === null ? [] : [{ value, scored }];
        })
        .sort((a, b) => compareLists(a.scored, b.scored)),
    );
    const least = (variable: number): readonly number[] => values[variable]?.[0]?.scored ?? [];
    const valuesOf = values.map((ranked) => ranked.map(({ value }) => value));
    return {
      valuesOf: (variable) => valuesOf[variable] ?? [],
      order: [...this.order].sort((a, b) => compareLists(least(b), least(a))),
    };
  }

  /** What the variables may be before the first decision; null where one of them may be nothing. */
  private start(): Domains | null {
    const domains = new Domains(this.sizes);
    for (const [variable, value] of this.settled) domains.keepOnly(variable, value);
    return this.propagator.start(domains) ? domains : null;
  }

  private scoreWith(
    domains: Domains,
    variable: number,
    value: number,
    score: (domains: Domains) => readonly number[],
  ): readonly number[] | null {
    const mark = domains.mark();
    domains.keepOnly(variable, value);
    const scored = this.propagator.changed(domains, variable) ? [...score(domains)] : null;
    domains.undo(mark);
    return scored;
  }

  private descend(domains: Domains, depth: number, budget: StepBudget, visitor: Visitor): SearchEnd {
    if (visitor.cut?.(domains)) return 'whole';
    const order = visitor.order ?? this.order;
    let at = depth;
    while (at < order.length && domains.isFixed(order[at] ?? 0)) at++;
    const variable = order[at];
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

function compareLists(a: readonly number[], b: readonly number[]): number {
  const at = a.findIndex((one, place) => one !== b[place]);
  return at < 0 ? 0 : (a[at] ?? 0) < (b[at] ?? 0) ? -1 : 1;
}
