import type { ForkProblem } from '../fork/index.ts';
import { floorFor, type Within } from '../supply/index.ts';
import { type PieceFloors, pieceFloors, type SharedNeed } from './piece-floors.ts';
import type { Prepared } from './prepare.ts';
import { lookedUp } from './states.ts';
import { type Amounts, type SuppliesFloor, suppliesFloor } from './supplies-floor.ts';
import { type Below, type Tied, TiedFloor } from './tied.ts';
import type { World } from './world.ts';

/** What is left of a slot comes to at least: its pieces, with what else they need where no group has the slot; when the first is there; and what else is needed. */
interface SlotFloor {
  readonly least: number;
  readonly soonest: number;
  readonly extra: number;
}

/**
 * What the goods of every plan below a node cost at least, with some of the offers. In items that nothing ties together: each slot by itself, the groups that kits and packs tie, all other
 * supplies, and each part that contents of several slots need, which is no money here but may not be had; so a line without a price lowers one item only.
 */
export class MoneyFloor {
  /** By item that no group has, after `weighAlone`: slots, then supplies, then what several slots need. Infinity where an item cannot be had with these offers. */
  readonly items: Float64Array;
  /** Days until the last piece is there, at least; after `weigh`. */
  days = 0;
  private readonly fork: ForkProblem;
  private readonly pieces: PieceFloors;
  /** By slot and the number of what is certain of it. */
  private readonly known: readonly (SlotFloor | undefined)[][];
  private readonly tied: readonly TiedFloor[];
  private readonly groupOf: readonly number[];
  private readonly alone: Float64Array;
  private readonly supplies = new WeakMap<Amounts, SuppliesFloor>();
  private readonly priced: (amounts: Amounts) => SuppliesFloor;
  private readonly canHave: (sku: string, count: number) => boolean;

  constructor(
    world: World,
    prepared: Prepared,
    fork: ForkProblem,
    groups: readonly Tied[],
    free: ReadonlySet<string>,
    within: Within,
  ) {
    this.fork = fork;
    this.pieces = pieceFloors(world, prepared, fork, free, within);
    this.tied = groups.map(
      (group, at) => new TiedFloor(world.market, prepared.buying, fork, group, at, free, this.pieces.counts, within),
    );
    this.groupOf = fork.domains.map((_domain, slot) => groups.findIndex(({ slots }) => slots.includes(slot)));
    this.known = fork.domains.map(() => []);
    this.alone = new Float64Array(groups.length);
    this.items = new Float64Array(fork.domains.length + 1 + this.pieces.shared.length);
    this.canHave = (sku, count) => floorFor(world.market, sku, count, within).money < Number.POSITIVE_INFINITY;
    this.priced = (amounts) => suppliesFloor(world, prepared, amounts, groups, free, within);
  }

  /** What all items below a node come to. */
  weigh(below: Below): number {
    let sum = this.weighAlone(below);
    for (const [at, group] of this.tied.entries()) sum += group.cost(below) ?? this.apart(at);
    return sum;
  }

  /** Works out the items below a node that no group has; their sum. */
  weighAlone(below: Below): number {
    const { items, alone } = this;
    const supplies = this.supplies.get(below.amounts) ?? this.priced(below.amounts);
    this.supplies.set(below.amounts, supplies);
    for (let group = 0; group < alone.length; group++) alone[group] = supplies.tied[group] ?? 0;
    this.days = 0;
    const slots = this.fork.domains.length;
    for (let slot = 0; slot < slots; slot++) {
      const state = below.states.slots[slot] ?? 0;
      items[slot] = state === 0 ? 0 : this.slot(slot, state, below);
    }
    let item = slots;
    items[item++] = supplies.alone;
    for (const need of this.pieces.shared) items[item++] = this.shared(need, below);
    let sum = 0;
    for (const one of items) sum += one;
    return sum;
  }

  /** By how many of its lines may go without a price, what each group comes to at least. Null where the group is too large to be worked out: then it comes to `apart`. */
  linesOf(below: Below): readonly (readonly number[] | null)[] {
    return this.tied.map((group) => group.byLines(below));
  }

  /** What a group comes to by the floors of its slots and supplies; after `weighAlone`. */
  apart(group: number): number {
    return this.alone[group] ?? 0;
  }

  /** The count that every plan below needs at least of a part that several slots' contents need: 0 where it can be had, else Infinity. */
  private shared({ sku, counts, least }: SharedNeed, { states, domains }: Below): number {
    let count = 0;
    for (let slot = 0; slot < counts.length; slot++) {
      const state = states.slots[slot] ?? 0;
      if (state === 0) continue;
      const needed = counts[slot] ?? [];
      count += lookedUp(least[slot] ?? [], state, () =>
        Math.min(...needed.filter((_count, value) => domains.has(slot + 1, value))),
      );
    }
    return count === 0 || this.canHave(sku, count) ? 0 : Number.POSITIVE_INFINITY;
  }

  /** What a slot comes to; of one in a group only what it needs besides. */
  private slot(slot: number, state: number, below: Below): number {
    const { least, soonest, extra } = lookedUp(this.known[slot] ?? [], state, () => this.slotFloor(slot, below));
    if (soonest > this.days) this.days = soonest;
    const group = this.groupOf[slot] ?? -1;
    if (group < 0) return least;
    this.alone[group] = (this.alone[group] ?? 0) + least;
    return extra;
  }

  private slotFloor(slot: number, { fates, domains }: Below): SlotFloor {
    const floors = this.pieces[fates[slot] === 'renewed' ? 'renewed' : 'changed'][slot] ?? [];
    const extras = this.pieces.extras[slot] ?? [];
    const isAlone = (this.groupOf[slot] ?? -1) < 0;
    let [least, soonest, extra] = [Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY];
    for (let value = 0; value < floors.length; value++) {
      const floor = floors[value];
      if (!floor || !domains.has(slot + 1, value)) continue;
      const beside = extras[value] ?? 0;
      least = Math.min(least, isAlone ? floor.money + beside : floor.money);
      extra = Math.min(extra, beside);
      soonest = Math.min(soonest, floor.days);
    }
    return { least, soonest, extra };
  }
}
