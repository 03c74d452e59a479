import type { Domains } from './domains.ts';
import type { Problem, Sum, Table } from './problem.ts';

/**
 * Takes away values that no longer have a partner. A table with one open variable is filtered exactly; one with two open variables keeps
 * the values that have a partner (arc consistency); more open variables wait. A sum is filtered by its bounds. Sound: never takes away a value of a solution.
 */
export class Propagator {
  private readonly tables: readonly Table[];
  private readonly sums: readonly Sum[];
  private readonly strides: readonly (readonly number[])[];
  private readonly watching: readonly (readonly number[])[];
  private readonly queue: number[] = [];
  private readonly queued: Uint8Array;

  constructor(problem: Problem, holds: (member: number) => boolean) {
    const held = ({ member }: { readonly member: number | null }): boolean => member === null || holds(member);
    this.tables = problem.tables.filter(held);
    this.sums = problem.sums.filter(held);
    this.strides = this.tables.map(({ scope }) => stridesOf(problem.sizes, scope));
    const watching: number[][] = problem.sizes.map(() => []);
    this.constraints.forEach(({ scope }, at) => {
      for (const variable of scope) watching[variable]?.push(at);
    });
    this.watching = watching;
    this.queued = new Uint8Array(this.constraints.length);
  }

  private get constraints(): readonly { readonly scope: readonly number[] }[] {
    return [...this.tables, ...this.sums];
  }

  /** Filters everything once, to begin with. False where some variable has no value left. */
  start(domains: Domains): boolean {
    for (let at = 0; at < this.queued.length; at++) this.enqueue(at);
    return this.run(domains);
  }

  /** Filters what a change of one variable touches. False where some variable has no value left. */
  changed(domains: Domains, variable: number): boolean {
    this.wake(variable);
    return this.run(domains);
  }

  private wake(variable: number): void {
    for (const at of this.watching[variable] ?? []) this.enqueue(at);
  }

  private enqueue(at: number): void {
    if (this.queued[at] === 1) return;
    this.queued[at] = 1;
    this.queue.push(at);
  }

  private run(domains: Domains): boolean {
    let sound = true;
    for (let at = this.queue.pop(); at !== undefined; at = this.queue.pop()) {
      this.queued[at] = 0;
      if (sound) sound = this.filter(domains, at);
    }
    return sound;
  }

  private filter(domains: Domains, at: number): boolean {
    const table = this.tables[at];
    if (table) return this.filterTable(domains, table, this.strides[at] ?? []);
    const sum = this.sums[at - this.tables.length];
    return sum ? this.filterSum(domains, sum) : true;
  }

  private filterTable(domains: Domains, { scope, allowed }: Table, strides: readonly number[]): boolean {
    let base = 0;
    let first = -1;
    let second = -1;
    for (let at = 0; at < scope.length; at++) {
      const variable = scope[at] ?? 0;
      if (domains.isFixed(variable)) base += domains.first(variable) * (strides[at] ?? 0);
      else if (first < 0) first = at;
      else if (second < 0) second = at;
      else return true;
    }
    if (first < 0) return allowed[base] === 1;
    if (second < 0)
      return this.filterOne(domains, scope[first] ?? 0, (value) => allowed[base + value * (strides[first] ?? 0)] === 1);
    const [one, other] = [scope[first] ?? 0, scope[second] ?? 0];
    const [step, otherStep] = [strides[first] ?? 0, strides[second] ?? 0];
    const partner = (values: Uint8Array | undefined, from: number, stride: number): boolean => {
      for (let value = 0; value < (values?.length ?? 0); value++)
        if (values?.[value] === 1 && allowed[from + value * stride] === 1) return true;
      return false;
    };
    return (
      this.filterOne(domains, one, (value) => partner(domains.alive[other], base + value * step, otherStep)) &&
      this.filterOne(domains, other, (value) => partner(domains.alive[one], base + value * otherStep, step))
    );
  }

  private filterOne(domains: Domains, variable: number, may: (value: number) => boolean): boolean {
    const values = domains.alive[variable];
    let changed = false;
    for (let value = 0; value < (values?.length ?? 0); value++) {
      if (values?.[value] === 1 && !may(value)) changed = domains.remove(variable, value) || changed;
    }
    if (changed) this.wake(variable);
    return (domains.count[variable] ?? 0) > 0;
  }

  private filterSum(domains: Domains, { scope, weights, least, greatest }: Sum): boolean {
    const ranges = scope.map((variable, at) => range(domains.alive[variable], weights[at] ?? []));
    const low = ranges.reduce((sum, [from]) => sum + from, 0);
    const high = ranges.reduce((sum, [, to]) => sum + to, 0);
    if (low > greatest || high < least) return false;
    return scope.every((variable, at) => {
      const [from, to] = ranges[at] ?? [0, 0];
      const mine = weights[at] ?? [];
      return this.filterOne(domains, variable, (value) => {
        const weight = mine[value] ?? 0;
        return low - from + weight <= greatest && high - to + weight >= least;
      });
    });
  }
}

function stridesOf(sizes: readonly number[], scope: readonly number[]): number[] {
  const strides = scope.map(() => 1);
  for (let at = scope.length - 2; at >= 0; at--)
    strides[at] = (strides[at + 1] ?? 1) * (sizes[scope[at + 1] ?? 0] ?? 1);
  return strides;
}

function range(values: Uint8Array | undefined, weights: readonly number[]): [number, number] {
  let [low, high] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (let value = 0; value < (values?.length ?? 0); value++) {
    if (values?.[value] !== 1) continue;
    low = Math.min(low, weights[value] ?? 0);
    high = Math.max(high, weights[value] ?? 0);
  }
  return [low, high];
}
