import { type CompiledSum, type CompiledTable, compiled } from './compiled.ts';
import type { Domains } from './domains.ts';
import type { Problem } from './problem.ts';

/**
 * Takes away values that no longer have a partner. A table with one open variable is filtered exactly; one with two open variables keeps
 * the values that have a partner (arc consistency); more open variables wait. A sum is filtered by its bounds. Sound: never takes away a value of a solution.
 */
export class Propagator {
  private readonly tables: readonly CompiledTable[];
  private readonly sums: readonly CompiledSum[];
  private readonly watching: readonly Int32Array[];
  /** 1 where the constraint's member holds; one that does not says nothing. */
  private readonly held: Uint8Array;
  private readonly queue: Int32Array;
  private readonly queued: Uint8Array;
  private waiting = 0;

  constructor(problem: Problem, holds: (member: number) => boolean) {
    const { tables, sums, watching } = compiled(problem);
    this.tables = tables;
    this.sums = sums;
    this.watching = watching;
    this.held = new Uint8Array(tables.length + sums.length);
    this.queue = new Int32Array(this.held.length);
    this.queued = new Uint8Array(this.held.length);
    for (let at = 0; at < this.held.length; at++) {
      const member = (tables[at] ?? sums[at - tables.length])?.member ?? null;
      this.held[at] = member === null || holds(member) ? 1 : 0;
    }
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
    const touched = this.watching[variable];
    if (touched) for (let at = 0; at < touched.length; at++) this.enqueue(touched[at] ?? 0);
  }

  private enqueue(at: number): void {
    if (this.queued[at] === 1 || this.held[at] === 0) return;
    this.queued[at] = 1;
    this.queue[this.waiting++] = at;
  }

  private run(domains: Domains): boolean {
    let sound = true;
    while (this.waiting > 0) {
      const at = this.queue[--this.waiting] ?? 0;
      this.queued[at] = 0;
      if (sound) sound = this.filter(domains, at);
    }
    return sound;
  }

  private filter(domains: Domains, at: number): boolean {
    const table = this.tables[at];
    if (table) return this.filterTable(domains, table);
    const sum = this.sums[at - this.tables.length];
    return sum ? this.filterSum(domains, sum) : true;
  }

  private filterTable(domains: Domains, { scope, allowed, strides }: CompiledTable): boolean {
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
    const [one, step] = [scope[first] ?? 0, strides[first] ?? 0];
    if (second < 0) return this.filterOne(domains, one, allowed, base, step);
    const [other, otherStep] = [scope[second] ?? 0, strides[second] ?? 0];
    return (
      this.filterTwo(domains, one, other, allowed, base, step, otherStep) &&
      this.filterTwo(domains, other, one, allowed, base, otherStep, step)
    );
  }

  /** Keeps the values of a variable that the table allows. */
  private filterOne(domains: Domains, variable: number, allowed: Uint8Array, base: number, step: number): boolean {
    const values = domains.alive[variable];
    if (!values) return true;
    let changed = false;
    for (let value = 0; value < values.length; value++) {
      if (values[value] === 1 && allowed[base + value * step] !== 1)
        changed = domains.remove(variable, value) || changed;
    }
    if (changed) this.wake(variable);
    return (domains.count[variable] ?? 0) > 0;
  }

  /** Keeps the values of a variable that have a partner among those of another. */
  private filterTwo(
    domains: Domains,
    variable: number,
    partner: number,
    allowed: Uint8Array,
    base: number,
    step: number,
    partnerStep: number,
  ): boolean {
    const values = domains.alive[variable];
    const partners = domains.alive[partner];
    if (!values || !partners) return true;
    let changed = false;
    for (let value = 0; value < values.length; value++) {
      if (values[value] !== 1) continue;
      const from = base + value * step;
      let has = false;
      for (let at = 0; at < partners.length && !has; at++)
        has = partners[at] === 1 && allowed[from + at * partnerStep] === 1;
      if (!has) changed = domains.remove(variable, value) || changed;
    }
    if (changed) this.wake(variable);
    return (domains.count[variable] ?? 0) > 0;
  }

  private filterSum(domains: Domains, { scope, weights, least, greatest }: CompiledSum): boolean {
    const ranges = scope.map((variable, at) => range(domains.alive[variable], weights[at] ?? []));
    const low = ranges.reduce((sum, [from]) => sum + from, 0);
    const high = ranges.reduce((sum, [, to]) => sum + to, 0);
    if (low > greatest || high < least) return false;
    return scope.every((variable, at) => {
      const [from, to] = ranges[at] ?? [0, 0];
      return this.keepWithin(domains, variable, weights[at] ?? [], least - high + to, greatest - low + from);
    });
  }

  /** Keeps the values of a variable whose weights lie within bounds. */
  private keepWithin(
    domains: Domains,
    variable: number,
    weights: readonly number[],
    least: number,
    greatest: number,
  ): boolean {
    const values = domains.alive[variable];
    let changed = false;
    for (let value = 0; value < (values?.length ?? 0); value++) {
      const weight = weights[value] ?? 0;
      if (values?.[value] === 1 && (weight < least || weight > greatest))
        changed = domains.remove(variable, value) || changed;
    }
    if (changed) this.wake(variable);
    return (domains.count[variable] ?? 0) > 0;
  }
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
