import type { Chassis } from '../catalog/index.ts';
import type { ForkProblem } from '../fork/index.ts';
import { type Domains, sameVector, type Vector } from '../solve/index.ts';
import { ANY_OFFER, daysFor, type Market, type Within } from '../supply/index.ts';
import { type Job, jobOf } from './job.ts';
import { MoneyFloor } from './money-floor.ts';
import type { Prepared } from './prepare.ts';
import { States } from './states.ts';
import { type Amounts, leastUsed } from './supplies-floor.ts';
import { type Below, type Fate, tiedGroups } from './tied.ts';
import type { World } from './world.ts';

/** Floors of the nodes of a search: one vector, and the set of vectors that stands where one is too low. */
export interface PlanFloors {
  /** A vector that no plan below is under in any part. */
  readonly floor: (domains: Domains) => Vector;
  /**
   * Vectors of which each plan below has one that it is under in no part: for each waiting time the least money of what comes by then, and with every line that goes without a price
   * as much less as that can save. Slower than `floor`, for searches that are long.
   */
  readonly floors: (domains: Domains) => readonly Vector[];
  /** Money and minutes: with every waiting time and any number of lines without a price the set has the one floor in it. */
  readonly alike: readonly number[];
}

/** Most waiting times that are told apart. */
const MOST_LEVELS = 12;
/** Nodes in a row at which the one floor was as good, after which the others are not asked for any more. */
const MOST_IDLE = 50;

/**
 * Lower bounds on the vectors of the plans below a node. Slots that have lost their content of now are changed in all of them; the operations
 * these need are in all of them, since the closure only grows; so are the pieces, each at a price that nothing undercuts (`floorFor`; what kits and packs tie together, at
 * the least that it costs together: `TiedFloor`), and the amounts that those operations use.
 */
export function planFloors(world: World, prepared: Prepared, fork: ForkProblem): PlanFloors {
  const goods = goodsOf(world, prepared, fork);
  const below = belowOf(world, prepared, fork, goods.states);
  const { withAny } = goods;
  const whole = (labour: number, money: number): number => labour + Math.ceil(money - 1e-6);
  const floor = (domains: Domains): Vector => {
    const { job, node } = below(domains);
    const money = withAny.weigh(node);
    return [whole(job.labour, money), job.minutes, withAny.days, 0, 0];
  };
  let idle = 0;
  const floors = (domains: Domains): readonly Vector[] => {
    if (daysIn(world.market).length > MOST_LEVELS || idle > MOST_IDLE) return [floor(domains)];
    const { job, node } = below(domains);
    const one: Vector = [whole(job.labour, withAny.weigh(node)), job.minutes, withAny.days, 0, 0];
    const several: Vector[] = [];
    for (const { days, every, priced } of goods.levels()) {
      if (every.weighAlone(node) === Number.POSITIVE_INFINITY) continue;
      priced.weighAlone(node);
      for (const [lines, money] of byLines(every, priced, node))
        several.push([whole(job.labour, money), job.minutes, days, lines, 0]);
      // as cheap as it can be, with a price for every line: waiting longer gains nothing
      if (several.some(([money, , , lines]) => money === one[0] && lines === 0)) break;
    }
    idle = several.some((vector) => sameVector(vector, one)) ? idle + 1 : 0;
    return several;
  };
  return { floor, floors, alike: [0, 1] };
}

/** The floors of what is bought, whatever work is asked for. */
interface GoodsFloors {
  readonly market: Market;
  readonly atHand: Prepared['atHand'];
  readonly buying: string;
  readonly states: States;
  readonly withAny: MoneyFloor;
  readonly levels: () => readonly Level[];
}

const remembered = new WeakMap<ForkProblem, GoodsFloors>();

/** The floors of the goods, remembered with the problem: what services and looks would add is asked of the same one again and again. */
function goodsOf(world: World, prepared: Prepared, fork: ForkProblem): GoodsFloors {
  const { market } = world;
  const { atHand } = prepared;
  const buying = JSON.stringify(prepared.buying);
  const known = remembered.get(fork);
  if (known && known.market === market && known.atHand === atHand && known.buying === buying) return known;
  const free = atHandOf(world, prepared);
  const groups = tiedGroups(market, prepared.buying, fork);
  const floorWithin = (within: Within): MoneyFloor => new MoneyFloor(world, prepared, fork, groups, free, within);
  let levels: readonly Level[] | null = null;
  const goods: GoodsFloors = {
    market,
    atHand,
    buying,
    states: new States(fork, groups),
    withAny: floorWithin(ANY_OFFER),
    levels: () => {
      levels ??= daysIn(market).map((days) => ({
        days,
        every: floorWithin({ days, priced: false }),
        priced: floorWithin({ days, priced: true }),
      }));
      return levels;
    },
  };
  remembered.set(fork, goods);
  return goods;
}

interface Level {
  readonly days: number;
  readonly every: MoneyFloor;
  readonly priced: MoneyFloor;
}

/** For each number of lines without a price, from the fewest, the least money; no number that saves nothing over a smaller one. After both have weighed what is alone below the node. */
function byLines(
  every: MoneyFloor,
  priced: MoneyFloor,
  node: Below,
): readonly (readonly [lines: number, money: number])[] {
  let costs: readonly number[] = [0];
  const add = (cheap: number, dear: number): void => {
    costs = together(costs, dear > cheap ? [dear, cheap] : [cheap]);
  };
  for (const [item, cheap] of every.items.entries()) add(cheap, priced.items[item] ?? 0);
  for (const [group, lines] of every.linesOf(node).entries())
    if (lines) costs = together(costs, lines);
    else add(every.apart(group), priced.apart(group));
  let least = Number.POSITIVE_INFINITY;
  return costs.flatMap((money, lines) => {
    if (money >= least) return [];
    least = money;
    return [[lines, money] as const];
  });
}

/** What two items come to together, by how many lines go without a price at most. */
function together(one: readonly number[], other: readonly number[]): readonly number[] {
  const [only] = other;
  if (other.length === 1 && only !== undefined) return only === 0 ? one : one.map((cost) => cost + only);
  const costs = new Array<number>(one.length + other.length - 1).fill(Number.POSITIVE_INFINITY);
  for (let a = 0; a < one.length; a++)
    for (let b = 0; b < other.length; b++) costs[a + b] = Math.min(costs[a + b] ?? 0, (one[a] ?? 0) + (other[b] ?? 0));
  return costs;
}

const levelsOf = new WeakMap<Market, readonly number[]>();

/** The waiting times of everything that is sold, soonest first; Infinity where of some nobody knows. Looked through once for a market. */
function daysIn(market: Market): readonly number[] {
  const known = levelsOf.get(market);
  if (known) return known;
  const days = new Set([0]);
  for (const offer of market.offers.values()) {
    const later = daysFor(offer, Number.MAX_SAFE_INTEGER);
    if (later !== null) days.add(later);
  }
  const levels = [...days].sort((a, b) => a - b);
  levelsOf.set(market, levels);
  return levels;
}

/** What is certain below a node: the job of what has changed already, the fate of each slot, the amounts used. */
function belowOf(
  world: World,
  prepared: Prepared,
  fork: ForkProblem,
  states: States,
): (domains: Domains) => { readonly job: Job; readonly node: Below } {
  const used = new Map<Job, Map<Chassis | null, (domains: Domains) => Amounts>>();
  const names = [...fork.domains.map(({ slot }) => slot.name), ...fork.settings.map(({ setting }) => setting.name)];
  const fates: Fate[] = fork.domains.map(() => 'kept');
  return (domains) => {
    const changed = names.filter((_name, at) => !domains.has(at + 1, 0));
    const body = domains.isFixed(0) ? (fork.chassis[domains.first(0)] ?? null) : null;
    const job = jobOf(world, prepared, changed);
    const byBody = used.get(job) ?? new Map<Chassis | null, (domains: Domains) => Amounts>();
    used.set(job, byBody);
    const amounts = byBody.get(body) ?? leastUsed(world, prepared, fork, job.operations, body);
    byBody.set(body, amounts);
    for (let at = 0; at < fates.length; at++)
      fates[at] = job.renewed.has(names[at] ?? '') ? 'renewed' : domains.has(at + 1, 0) ? 'kept' : 'changed';
    const least = amounts(domains);
    states.read(fates, domains, least);
    return { job, node: { fates, domains, amounts: least, states } };
  };
}

/** Parts and supplies of which some are at hand, by themselves or in a kit: of these nothing is certain to be bought. */
const atHandOf = ({ market }: World, { atHand: { fresh, used, supplies, kits } }: Prepared): ReadonlySet<string> =>
  new Set([
    ...[fresh, used, supplies].flatMap((held) => [...held.keys()]),
    ...[...kits.keys()].flatMap((sku) => market.offers.get(sku)?.gives.map((given) => given.sku) ?? []),
  ]);
