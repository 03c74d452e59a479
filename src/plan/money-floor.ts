import type { ForkProblem } from '../fork/index.ts';
import type { Within } from '../supply/index.ts';
import { type PieceFloors, pieceFloors } from './piece-floors.ts';
import type { Prepared } from './prepare.ts';
import { type Amounts, type SuppliesFloor, suppliesFloor } from './supplies-floor.ts';
import { type Below, type Tied, TiedFloor } from './tied.ts';
import type { World } from './world.ts';

/**
 * What the goods of every plan below a node cost at least, with some of the offers. In items that nothing ties together: each slot by itself, the groups that kits and packs tie, and all other
 * supplies; so a line without a price lowers one item only.
 */
export class MoneyFloor {
  /** By item, after `weigh`: slots, then groups, then supplies. Infinity where an item cannot be had with these offers. */
  readonly items: Float64Array;
  /** Days until the last piece is there, at least; after `weigh`. */
  days = 0;
  private readonly fork: ForkProblem;
  private readonly pieces: PieceFloors;
  private readonly tied: readonly TiedFloor[];
  private readonly groupOf: readonly number[];
  private readonly alone: Float64Array;
  private readonly supplies = new WeakMap<Amounts, SuppliesFloor>();
  private readonly priced: (amounts: Amounts) => SuppliesFloor;

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
      (group) => new TiedFloor(world.market, prepared.buying, fork, group, free, this.pieces.counts, within),
    );
    this.groupOf = fork.domains.map((_domain, slot) => groups.findIndex(({ slots }) => slots.includes(slot)));
    this.alone = new Float64Array(groups.length);
    this.items = new Float64Array(fork.domains.length + groups.length + 1);
    this.priced = (amounts) => suppliesFloor(world, prepared, amounts, groups, free, within);
  }

  /** Works out the items below a node; their sum. */
  weigh(below: Below): number {
    const { items, alone } = this;
    const supplies = this.supplies.get(below.amounts) ?? this.priced(below.amounts);
    this.supplies.set(below.amounts, supplies);
    alone.fill(0);
    this.days = 0;
    for (let slot = 0; slot < this.fork.domains.length; slot++) items[slot] = this.slot(slot, below);
    const slots = this.fork.domains.length;
    for (const [at, group] of this.tied.entries())
      items[slots + at] = group.cost(below) ?? (alone[at] ?? 0) + (supplies.tied[at] ?? 0);
    items[items.length - 1] = supplies.alone;
    let sum = 0;
    for (const item of items) sum += item;
    return sum;
  }

  /** What a slot comes to; of one in a group only what it needs besides. */
  private slot(slot: number, { fates, domains }: Below): number {
    const fate = fates[slot] ?? 'kept';
    if (fate === 'kept') return 0;
    const [floors, extras, group] = [
      this.pieces[fate][slot] ?? [],
      this.pieces.extras[slot] ?? [],
      this.groupOf[slot] ?? -1,
    ];
    let [least, soonest, extra] = [Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY];
    for (let value = 0; value < floors.length; value++) {
      const floor = floors[value];
      if (!floor || !domains.has(slot + 1, value)) continue;
      const beside = extras[value] ?? 0;
      least = Math.min(least, group < 0 ? floor.money + beside : floor.money);
      extra = Math.min(extra, beside);
      soonest = Math.min(soonest, floor.days);
    }
    this.days = Math.max(this.days, soonest);
    if (group < 0) return least;
    this.alone[group] = (this.alone[group] ?? 0) + least;
    return extra;
  }
}
