import type { StepBudget } from './budget.ts';
import { type CompiledSum, type CompiledTable, compiled } from './compiled.ts';
import { components } from './components.ts';
import { Domains } from './domains.ts';
import type { Problem } from './problem.ts';
import { Propagator } from './propagate.ts';

/**
 * How many solutions a problem has, exact, whoever the members are. Depth first as the search goes, but: variables that nothing ties together any more are counted apart
 * and multiplied, and what is left of a group is counted once, however often a search comes to it. One step is one group of variables that is taken apart; null where the
 * steps ran out.
 * Ref: M. Thurley, "sharpSAT: counting models with advanced component caching and implicit BCP", SAT 2006, for the parts and the memory.
 */
export function countSolutions(problem: Problem, budget: StepBudget): bigint | null {
  return new SolutionCount(problem, budget).all();
}

class SolutionCount {
  private readonly problem: Problem;
  private readonly constraints: readonly (CompiledTable | CompiledSum)[];
  private readonly watching: readonly Int32Array[];
  private readonly domains: Domains;
  private readonly propagator: Propagator;
  private readonly known = new Map<string, bigint>();
  private readonly budget: StepBudget;

  constructor(problem: Problem, budget: StepBudget) {
    const { tables, sums, watching } = compiled(problem);
    this.problem = problem;
    this.constraints = [...tables, ...sums];
    this.watching = watching;
    this.domains = new Domains(problem.sizes);
    this.propagator = new Propagator(problem, () => true);
    this.budget = budget;
  }

  all(): bigint | null {
    if (this.problem.sizes.includes(0) || !this.propagator.start(this.domains)) return 0n;
    return this.among(this.problem.sizes.map((_size, variable) => variable));
  }

  /** Counts the ways to settle some variables, all others that they are tied to being settled. */
  private among(variables: readonly number[]): bigint | null {
    const open = new Set(variables.filter((variable) => !this.domains.isFixed(variable)));
    const tying = this.tying(open);
    let ways = 1n;
    const scopes = tying.map(({ scope }) => scope);
    for (const group of components(this.problem.sizes.length, scopes, (variable) => open.has(variable))) {
      const found = this.ofGroup(group, tying);
      if (found === null) return null;
      if (found === 0n) return 0n;
      ways *= found;
    }
    return ways;
  }

  /** The constraints that still rule something out among open variables. */
  private tying(open: ReadonlySet<number>): Tie[] {
    const seen = new Set<number>();
    for (const variable of open) for (const at of this.watching[variable] ?? []) seen.add(at);
    const found: Tie[] = [];
    for (const at of [...seen].sort((a, b) => a - b)) {
      const constraint = this.constraints[at];
      const rest = constraint && ('allowed' in constraint ? this.restOfTable(constraint) : this.restOfSum(constraint));
      if (!constraint || !rest || rest.says === '') continue;
      found.push({ scope: rest.open, says: `${at}:${rest.says}` });
    }
    return found;
  }

  private ofGroup(group: readonly number[], tying: readonly Tie[]): bigint | null {
    const inside = new Set(group);
    const mine = tying.filter(({ scope }) => scope.some((variable) => inside.has(variable)));
    if (mine.length === 0)
      return group.reduce((ways, variable) => ways * BigInt(this.domains.count[variable] ?? 0), 1n);
    const alive = group.map((variable) => `${variable}=${this.domains.alive[variable]?.join('')}`);
    const key = `${alive.join(' ')}|${mine.map(({ says }) => says).join(' ')}`;
    const known = this.known.get(key);
    if (known !== undefined) return known;
    if (!this.budget.take()) return null;
    const variable = this.most(group, mine);
    let ways = 0n;
    for (let value = 0; value < (this.problem.sizes[variable] ?? 0); value++) {
      if (!this.domains.has(variable, value)) continue;
      const mark = this.domains.mark();
      for (let other = 0; other < (this.problem.sizes[variable] ?? 0); other++)
        if (other !== value) this.domains.remove(variable, other);
      const found = this.propagator.changed(this.domains, variable) ? this.among(group) : 0n;
      this.domains.undo(mark);
      if (found === null) return null;
      ways += found;
    }
    this.known.set(key, ways);
    return ways;
  }

  /** The variable that most constraints tie; of these the one with the most values. */
  private most(group: readonly number[], tying: readonly Tie[]): number {
    const ties = new Map<number, number>();
    for (const { scope } of tying)
      for (const variable of scope) ties.set(variable, (ties.get(variable) ?? 0) + scope.length - 1);
    let best = group[0] ?? 0;
    const score = (variable: number): number => (ties.get(variable) ?? 0) * 1000 + (this.domains.count[variable] ?? 0);
    for (const variable of group) if (score(variable) > score(best)) best = variable;
    return best;
  }

  /** What a table still says about its open variables, as text; '' where it rules nothing out. */
  private restOfTable({ scope, allowed, strides }: CompiledTable): Rest {
    let base = 0;
    let choices = 1;
    const open: number[] = [];
    scope.forEach((variable, at) => {
      if (this.domains.isFixed(variable)) base += this.domains.first(variable) * (strides[at] ?? 0);
      else {
        open.push(at);
        choices *= this.domains.count[variable] ?? 0;
      }
    });
    const variables = open.map((at) => scope[at] ?? 0);
    if (choices > MOST_LISTED) return { open: variables, says: `@${base}` };
    let indices = [base];
    for (const at of open) {
      const values = this.domains.alive[scope[at] ?? 0] ?? [];
      const next: number[] = [];
      for (const index of indices)
        for (let value = 0; value < values.length; value++)
          if (values[value] === 1) next.push(index + value * (strides[at] ?? 0));
      indices = next;
    }
    let says = '';
    let all = true;
    for (const index of indices) {
      const holds = allowed[index] === 1;
      all &&= holds;
      says += holds ? '1' : '0';
    }
    return { open: variables, says: all ? '' : says };
  }

  private restOfSum({ scope, weights, least, greatest }: CompiledSum): Rest {
    let [settled, low, high] = [0, 0, 0];
    const open: number[] = [];
    scope.forEach((variable, at) => {
      if (this.domains.isFixed(variable)) {
        settled += weights[at]?.[this.domains.first(variable)] ?? 0;
        return;
      }
      open.push(variable);
      const left = (weights[at] ?? []).filter((_weight, value) => this.domains.has(variable, value));
      low += Math.min(...left);
      high += Math.max(...left);
    });
    return { open, says: settled + low >= least && settled + high <= greatest ? '' : `+${settled}` };
  }
}

/** What a constraint still says, and about which variables. */
interface Rest {
  readonly open: readonly number[];
  readonly says: string;
}
interface Tie {
  readonly scope: readonly number[];
  readonly says: string;
}

/** Most choices of open variables that are written out, so that tables that say the same are known as the same. */
const MOST_LISTED = 512;
