import type { StepBudget } from '../solve/index.ts';
import { type Ordered, precedence } from './order.ts';

/**
 * In how many orders the operations can be done, exact: 0 where the precedence has a cycle. By what is still to do: first one of those that wait for nothing, then the
 * rest; parts that nothing ties together are counted apart and shuffled into each other, and of operations that stand alike only one is tried. Each set of what is still
 * to do is counted once. One step is one such set; null where the steps ran out.
 * Ref: G. Brightwell, P. Winkler, "Counting linear extensions", Order 8 (1991); K. Kangas, T. Hankala, T. Niinimäki, M. Koivisto, "Counting linear extensions of sparse
 * posets", IJCAI 2016, for counting the parts apart.
 */
export function countOrders(operations: readonly Ordered[], budget: StepBudget): bigint | null {
  const ids = operations.map(({ id }) => id);
  const place = new Map(ids.map((id, at) => [id, at]));
  const before = precedence(operations);
  const direct = ids.map((id) => [...(before.get(id) ?? [])].flatMap((first) => place.get(first) ?? []));
  return new OrderCount(direct, budget).all();
}

/** A set of operations as bits in words of 32. */
type Bits = Int32Array;

class OrderCount {
  private readonly size: number;
  private readonly words: number;
  private readonly before: readonly Bits[];
  /** For each operation those that are tied to it directly, either way. */
  private readonly tied: readonly Bits[];
  /** For each operation the number of the first that stands exactly like it. */
  private readonly like: readonly number[];
  private readonly known = new Map<string, bigint>();
  private readonly budget: StepBudget;

  constructor(direct: readonly (readonly number[])[], budget: StepBudget) {
    this.size = direct.length;
    this.words = (this.size >> 5) + 1;
    this.budget = budget;
    this.before = direct.map((first) => this.bits(first));
    const after = direct.map((_first, at) => direct.flatMap((first, other) => (first.includes(at) ? [other] : [])));
    this.tied = direct.map((first, at) => this.bits([...first, ...(after[at] ?? [])]));
    const looks = direct.map((first, at) => `${[...first].sort((a, b) => a - b).join()}|${after[at]?.join()}`);
    this.like = looks.map((look) => looks.indexOf(look));
  }

  all(): bigint | null {
    return this.count(this.bits([...Array(this.size).keys()]));
  }

  private count(set: Bits): bigint | null {
    let [ways, done] = [1n, 0];
    for (const part of this.parts(set)) {
      const found = this.countPart(part);
      if (found === null) return null;
      const length = sizeOf(part);
      done += length;
      ways *= found * chooseOf(done, length);
    }
    return ways;
  }

  /** Counts a part that hangs together. */
  private countPart(set: Bits): bigint | null {
    if (sizeOf(set) === 1) return 1n;
    const key = keyOf(set);
    const known = this.known.get(key);
    if (known !== undefined) return known;
    if (!this.budget.take()) return null;
    const alike = new Map<number, { readonly first: number; times: bigint }>();
    for (const at of this.members(set)) {
      if (!this.isFirst(set, at)) continue;
      const like = this.like[at] ?? at;
      const one = alike.get(like);
      if (one) one.times++;
      else alike.set(like, { first: at, times: 1n });
    }
    let ways = 0n;
    for (const { first, times } of alike.values()) {
      const rest = set.slice();
      rest[first >> 5] = (rest[first >> 5] ?? 0) & ~(1 << (first & 31));
      const found = this.count(rest);
      if (found === null) return null;
      ways += times * found;
    }
    this.known.set(key, ways);
    return ways;
  }

  /** True where nothing in the set comes before the operation. */
  private isFirst(set: Bits, at: number): boolean {
    const before = this.before[at];
    for (let word = 0; word < this.words; word++) if (((before?.[word] ?? 0) & (set[word] ?? 0)) !== 0) return false;
    return true;
  }

  /** The parts of a set that nothing ties together. */
  private parts(set: Bits): Bits[] {
    const left = set.slice();
    const parts: Bits[] = [];
    for (let start = firstOf(left); start >= 0; start = firstOf(left)) {
      const part = new Int32Array(this.words);
      const edge = new Int32Array(this.words);
      edge[start >> 5] = 1 << (start & 31);
      left[start >> 5] = (left[start >> 5] ?? 0) & ~(1 << (start & 31));
      for (let at = start; at >= 0; at = firstOf(edge)) {
        const bit = 1 << (at & 31);
        edge[at >> 5] = (edge[at >> 5] ?? 0) & ~bit;
        part[at >> 5] = (part[at >> 5] ?? 0) | bit;
        const tied = this.tied[at];
        for (let word = 0; word < this.words; word++) {
          const fresh = (tied?.[word] ?? 0) & (left[word] ?? 0);
          edge[word] = (edge[word] ?? 0) | fresh;
          left[word] = (left[word] ?? 0) & ~fresh;
        }
      }
      parts.push(part);
    }
    return parts;
  }

  private members(set: Bits): number[] {
    const found: number[] = [];
    for (let at = 0; at < this.size; at++) if (((set[at >> 5] ?? 0) & (1 << (at & 31))) !== 0) found.push(at);
    return found;
  }

  private bits(numbers: readonly number[]): Bits {
    const bits = new Int32Array(this.words);
    for (const at of numbers) bits[at >> 5] = (bits[at >> 5] ?? 0) | (1 << (at & 31));
    return bits;
  }
}

function firstOf(set: Bits): number {
  for (let word = 0; word < set.length; word++) {
    const bits = set[word] ?? 0;
    if (bits !== 0) return word * 32 + 31 - Math.clz32(bits & -bits);
  }
  return -1;
}

function sizeOf(set: Bits): number {
  let size = 0;
  for (let word = 0; word < set.length; word++) for (let bits = set[word] ?? 0; bits !== 0; bits &= bits - 1) size++;
  return size;
}

function keyOf(set: Bits): string {
  let key = '';
  for (let word = 0; word < set.length; word++) {
    const bits = set[word] ?? 0;
    key += String.fromCharCode(bits & 0xffff, bits >>> 16);
  }
  return key;
}

/** In how many ways `chosen` places can be chosen among `of`. */
function chooseOf(of: number, chosen: number): bigint {
  let ways = 1n;
  for (let at = 1; at <= chosen; at++) ways = (ways * BigInt(of - at + 1)) / BigInt(at);
  return ways;
}
