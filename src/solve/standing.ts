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
  /** For each solution found the members that it breaks, as bits. */
  private readonly broken: Int32Array[] = [];
  /** The members that held in a choice that failed, as bits. */
  private readonly failed: Int32Array[] = [];

  constructor(problem: Problem, order: readonly number[], terms: Terms = {}) {
    this.problem = problem;
    this.order = order;
    this.terms = terms;
  }

  /** True where some assignment meets the members that hold; null where the steps ran out. */
  canStand(holds: (member: number) => boolean, budget: StepBudget): boolean | null {
    const held = this.bits();
    for (let member = 0; member < this.problem.members; member++) if (holds(member)) put(held, member);
    if (this.broken.some((members) => !share(members, held))) return true;
    if (this.failed.some((members) => within(members, held))) return false;
    const end = new Search(this.problem, (member) => has(held, member), this.order).run(budget, {
      ...(this.terms.cut ? { cut: this.terms.cut } : {}),
      leaf: (values) => {
        if (this.terms.accepts?.(values) === false) return true;
        const members = this.bits();
        for (const member of brokenBy(this.problem, values)) put(members, member);
        this.broken.push(members);
        return false;
      },
    });
    if (end === 'whole') this.failed.push(held);
    return end === 'stopped' ? null : end === 'enough';
  }

  private bits(): Int32Array {
    return new Int32Array((this.problem.members >> 5) + 1);
  }
}

const put = (bits: Int32Array, member: number): void => {
  bits[member >> 5] = (bits[member >> 5] ?? 0) | (1 << (member & 31));
};
const has = (bits: Int32Array, member: number): boolean => ((bits[member >> 5] ?? 0) & (1 << (member & 31))) !== 0;

function share(one: Int32Array, other: Int32Array): boolean {
  for (let word = 0; word < one.length; word++) if (((one[word] ?? 0) & (other[word] ?? 0)) !== 0) return true;
  return false;
}

function within(one: Int32Array, other: Int32Array): boolean {
  for (let word = 0; word < one.length; word++) if (((one[word] ?? 0) & ~(other[word] ?? 0)) !== 0) return false;
  return true;
}
