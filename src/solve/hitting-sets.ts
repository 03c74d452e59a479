/**
 * Every minimal hitting set: a set with a member of each of the sets, of which no member can be left out; each once, its members in the order in which they were taken.
 * Depth first over an unhit set with the fewest members to choose from; a branch ends where a member chosen before has no set left that it alone hits.
 * No sets at all are hit by nothing; a set without members by no set.
 * Ref: K. Murakami, T. Uno, "Efficient algorithms for dualizing large-scale hypergraphs", Discrete Applied Mathematics 170 (2014), algorithm MMCS.
 */
export function minimalHittingSets(sets: readonly (readonly number[])[]): Generator<readonly number[]> {
  return new HittingSets(sets).descend();
}

/** Members and sets as bits in words of 32. */
class HittingSets {
  private readonly members: readonly number[];
  private readonly words: number;
  private readonly sets: readonly Int32Array[];
  /** For each member the sets that hold it. */
  private readonly holding: readonly (readonly number[])[];
  private readonly free: Int32Array;
  /** For each set how many chosen members it has, and the sum of their numbers: of one, its number. */
  private readonly hits: Int32Array;
  private readonly hitters: Int32Array;
  /** For each chosen member how many sets it alone hits. */
  private readonly alone: Int32Array;
  private readonly chosen: number[] = [];

  constructor(sets: readonly (readonly number[])[]) {
    this.members = [...new Set(sets.flat())].sort((a, b) => a - b);
    this.words = (this.members.length >> 5) + 1;
    const number = new Map(this.members.map((member, at) => [member, at]));
    const numbered = sets.map((set) => [...new Set(set)].map((member) => number.get(member) ?? 0));
    this.sets = numbered.map((set) => this.bits(set));
    this.holding = this.members.map((_member, at) =>
      numbered.flatMap((set, index) => (set.includes(at) ? [index] : [])),
    );
    this.free = this.bits([...this.members.keys()]);
    this.hits = new Int32Array(sets.length);
    this.hitters = new Int32Array(sets.length);
    this.alone = new Int32Array(this.members.length);
  }

  *descend(): Generator<readonly number[]> {
    const set = this.nextSet();
    if (set < 0) {
      yield this.chosen.map((at) => this.members[at] ?? 0);
      return;
    }
    const open: number[] = [];
    this.members.forEach((_member, at) => {
      if (((this.sets[set]?.[at >> 5] ?? 0) & (this.free[at >> 5] ?? 0) & (1 << (at & 31))) !== 0) open.push(at);
    });
    for (const at of open) this.flip(at);
    const back: number[] = [...open];
    for (const at of open) {
      if (this.take(at)) {
        yield* this.descend();
        this.flip(at);
        back.splice(back.indexOf(at), 1);
      }
      this.giveBack(at);
    }
    for (const at of back) this.flip(at);
  }

  private flip(at: number): void {
    this.free[at >> 5] = (this.free[at >> 5] ?? 0) ^ (1 << (at & 31));
  }

  private bits(numbers: readonly number[]): Int32Array {
    const bits = new Int32Array(this.words);
    for (const at of numbers) bits[at >> 5] = (bits[at >> 5] ?? 0) | (1 << (at & 31));
    return bits;
  }

  /** Chooses a member; false where another chosen one is then of no use. */
  private take(member: number): boolean {
    let useful = true;
    let mine = 0;
    for (const set of this.holding[member] ?? []) {
      const before = this.hits[set] ?? 0;
      if (before === 0) mine++;
      else if (before === 1) {
        const other = this.hitters[set] ?? 0;
        this.alone[other] = (this.alone[other] ?? 0) - 1;
        if (this.alone[other] === 0) useful = false;
      }
      this.hits[set] = before + 1;
      this.hitters[set] = (this.hitters[set] ?? 0) + member;
    }
    this.chosen.push(member);
    this.alone[member] = mine;
    return useful;
  }

  private giveBack(member: number): void {
    this.chosen.pop();
    for (const set of this.holding[member] ?? []) {
      const left = (this.hits[set] ?? 0) - 1;
      this.hits[set] = left;
      this.hitters[set] = (this.hitters[set] ?? 0) - member;
      if (left !== 1) continue;
      const other = this.hitters[set] ?? 0;
      this.alone[other] = (this.alone[other] ?? 0) + 1;
    }
  }

  /** An unhit set with the fewest free members; -1 where all are hit. */
  private nextSet(): number {
    let [best, fewest] = [-1, Number.POSITIVE_INFINITY];
    for (let set = 0; set < this.sets.length && fewest > 1; set++) {
      if ((this.hits[set] ?? 0) > 0) continue;
      const bits = this.sets[set];
      let count = 0;
      for (let word = 0; word < this.words; word++) count += ones((bits?.[word] ?? 0) & (this.free[word] ?? 0));
      if (count < fewest) [best, fewest] = [set, count];
    }
    return best;
  }
}

/** How many bits of a word are 1. */
function ones(word: number): number {
  let pairs = word - ((word >>> 1) & 0x55555555);
  pairs = (pairs & 0x33333333) + ((pairs >>> 2) & 0x33333333);
  return (((pairs + (pairs >>> 4)) & 0x0f0f0f0f) * 0x01010101) >>> 24;
}
