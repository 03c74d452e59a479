import type { ForkProblem } from '../fork/index.ts';
import type { Domains } from '../solve/index.ts';
import type { Amounts } from './supplies-floor.ts';
import type { Fate, Tied } from './tied.ts';

/** The most values of which a set is told apart by one whole number with its fate. */
const MOST_BITS = 28;

/**
 * Numbers for what is certain of each slot below a node (its fate, and which contents are left) and of each group, so that what hangs on it alone is worked out once and looked up by
 * number. The number 0 of a slot is that nothing is certain of it; -1 stands for one number too many: what hangs on it is worked out and not kept.
 */
export class States {
  /** By slot, after `read`. */
  readonly slots: Int32Array;
  /** By group, after `read`. */
  readonly groups: Int32Array;
  private readonly tied: readonly Tied[];
  private readonly ofSlot: readonly Map<number | string, number>[];
  private readonly ofAmount = new Map<number, number>();
  private readonly pairs = new Map<number, number>();

  constructor({ domains }: ForkProblem, tied: readonly Tied[]) {
    this.slots = new Int32Array(domains.length);
    this.groups = new Int32Array(tied.length);
    this.tied = tied;
    this.ofSlot = domains.map(() => new Map());
  }

  read(fates: readonly Fate[], domains: Domains, amounts: Amounts): void {
    const { slots, groups, tied } = this;
    for (let slot = 0; slot < slots.length; slot++) slots[slot] = this.stateOf(slot, fates[slot] ?? 'kept', domains);
    for (let group = 0; group < groups.length; group++) {
      const { slots: own = [], specifications = [] } = tied[group] ?? {};
      let state = 0;
      for (const slot of own) state = this.pair(state, slots[slot] ?? 0);
      for (const id of specifications) state = this.pair(state, numberOf(this.ofAmount, amounts.get(id) ?? 0));
      groups[group] = state;
    }
  }

  private stateOf(slot: number, fate: Fate, domains: Domains): number {
    if (fate === 'kept') return 0;
    const alive = domains.alive[slot + 1];
    const size = alive?.length ?? 0;
    let key: number | string = fate === 'renewed' ? 0 : 1;
    if (size <= MOST_BITS) {
      for (let value = 0; value < size; value++) key = key * 2 + (alive?.[value] ?? 0);
    } else key = `${fate} ${alive}`;
    return numberOf(this.ofSlot[slot], key);
  }

  /** One number for two, the same for the same. */
  private pair(one: number, other: number): number {
    return one < 0 || other < 0 ? -1 : numberOf(this.pairs, one * 2 * MOST_NUMBERS + other);
  }
}

/** Most numbers that are given: a long search must not fill the memory. */
const MOST_NUMBERS = 2 ** 20;

/** The number of a key: from 1 on, as keys come. */
function numberOf<K>(known: Map<K, number> | undefined, key: K): number {
  const before = known?.get(key);
  if (before !== undefined) return before;
  if (!known || known.size >= MOST_NUMBERS) return -1;
  const number = known.size + 1;
  known.set(key, number);
  return number;
}

/** What hangs on a state, by its number; worked out anew for the number -1. */
export function lookedUp<T>(known: (T | undefined)[], state: number, work: () => T): T {
  const before = known[state];
  if (before !== undefined) return before;
  const found = work();
  if (state >= 0) known[state] = found;
  return found;
}
