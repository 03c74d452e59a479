import type { Operation } from '../catalog/index.ts';
import { type Build, buildOf, byCanonical, type ForkProblem, sameContent } from '../fork/index.ts';
import { type Minor, minor, multiplyDivide, roundUpAmount } from '../quantity/index.ts';
import { beats, enumerate, Front, type SearchEnd, type StepBudget, type Vector } from '../solve/index.ts';
import { comparePurchases, type Demand, type Purchase, purchases, unitFloor } from '../supply/index.ts';
import { type Amount, amountsOf, type Needed, neededOperations, orderOfWork } from '../work/index.ts';
import type { Prepared } from './prepare.ts';
import type { World } from './world.ts';

/** A build with the work and the purchase that bring it about. */
export interface Candidate {
  readonly values: readonly number[];
  readonly build: Build;
  readonly work: Work;
  readonly purchase: Purchase;
  readonly vector: PlanVector;
  readonly labour: Minor;
  /** Slots whose changed content has a fit that the catalogue does not know. */
  readonly unknown: readonly string[];
}

/** (total, minutes, days, lines without a price, unknown fits); days Infinity where nobody knows. */
export type PlanVector = readonly [total: number, minutes: number, days: number, unpriced: number, unknowns: number];

/** The work that a build takes. */
export interface Work {
  readonly changed: readonly string[];
  readonly needed: Needed;
  readonly order: readonly Operation[];
  readonly amounts: readonly Amount[];
  readonly minutes: number;
  /** New pieces by slot. */
  readonly fresh: ReadonlyMap<string, { readonly sku: string; readonly quantity: number; readonly renewed: boolean }>;
  /** Parts without a slot that parts newly put in need, and who needs them. */
  readonly extras: ReadonlyMap<string, { readonly quantity: number; readonly because: readonly string[] }>;
  readonly demand: Demand;
}

export interface SearchResult {
  readonly candidates: readonly Candidate[];
  readonly end: SearchEnd;
  /** Builds that meet the wants and rules. */
  readonly builds: number;
}

/** Works out every plan that no other beats. Complete: every build that the tables allow is looked at, or proved to be beaten. */
export function searchPlans(world: World, prepared: Prepared, fork: ForkProblem, budget: StepBudget): SearchResult {
  const front = new Front<Candidate>(
    (a, b) => byCanonical(fork, a.values, b.values) || comparePurchases(a.purchase, b.purchase),
  );
  const memo = new Map<string, readonly Purchase[]>();
  let builds = 0;
  const end = enumerate(
    fork.problem,
    () => true,
    budget,
    (values) => {
      builds++;
      const build = buildOf(fork, values);
      const work = workOf(world, prepared, build);
      if (!work) return true;
      const labour = labourOf(world, prepared, work.order);
      const unknown = unknownFits(fork, values, build);
      const floor: Vector = [labour + floorOf(world, prepared, work.demand), work.minutes, 0, 0, unknown.length];
      if (front.entries.some((entry) => beats(entry.vector, floor))) return true;
      for (const purchase of purchasesOf(world, prepared, work.demand, memo)) {
        const vector: PlanVector = [
          purchase.parts + purchase.supplies + labour,
          work.minutes,
          purchase.days,
          purchase.unpriced,
          unknown.length,
        ];
        front.offer(vector, { values: [...values], build, work, purchase, vector, labour, unknown });
      }
      return true;
    },
  );
  return { candidates: front.entries.map(({ item }) => item), end, builds };
}

/** True where some build meets wants and rules, whatever it costs; null where the steps ran out. */
export function canBuild(fork: ForkProblem, holds: (member: number) => boolean, budget: StepBudget): boolean | null {
  const end = enumerate(fork.problem, holds, budget, () => false);
  return end === 'stopped' ? null : end === 'enough';
}

/** The work that turns the fork of now into a build; null where its operations contradict each other. */
export function workOf(world: World, prepared: Prepared, build: Build): Work | null {
  const { catalog } = world;
  const { family, now, wants } = prepared;
  const changed = family.slots
    .filter(({ name }) => !sameContent(now.build.slots.get(name) ?? null, build.slots.get(name) ?? null))
    .map(({ name }) => name);
  const needed = neededOperations(catalog, family, { changed, renewed: wants.renew, services: wants.services });
  const order = orderOfWork(needed.operations);
  if (!order) return null;
  const amounts = amountsOf(catalog, order, now.build, build);
  const fresh = freshPieces(prepared, build, changed, new Set(needed.renewed));
  const extras = extraParts(world, fresh);
  return {
    changed,
    needed,
    order,
    amounts,
    minutes: order.reduce((sum, { minutes }) => sum + minutes, 0),
    fresh,
    extras,
    demand: demandOf(world, prepared, fresh, extras, amounts),
  };
}

function freshPieces(
  prepared: Prepared,
  build: Build,
  changed: readonly string[],
  renewed: ReadonlySet<string>,
): Work['fresh'] {
  const fresh = new Map<string, { sku: string; quantity: number; renewed: boolean }>();
  for (const { name } of prepared.family.slots) {
    const content = build.slots.get(name) ?? null;
    if (!content) continue;
    if (renewed.has(name)) {
      fresh.set(name, { ...content, renewed: true });
    } else if (changed.includes(name)) {
      const before = prepared.now.build.slots.get(name) ?? null;
      const reused = before?.sku === content.sku ? Math.min(before.quantity, content.quantity) : 0;
      if (content.quantity > reused)
        fresh.set(name, { sku: content.sku, quantity: content.quantity - reused, renewed: false });
    }
  }
  return fresh;
}

/** Parts without a slot that newly fitted parts need, and what those need in turn. */
function extraParts(world: World, fresh: Work['fresh']): Work['extras'] {
  const extras = new Map<string, { quantity: number; because: string[] }>();
  const add = (sku: string, times: number): void => {
    for (const need of world.catalog.parts.get(sku)?.needs ?? []) {
      if (need.kind !== 'part') continue;
      const known = extras.get(need.sku) ?? { quantity: 0, because: [] };
      extras.set(need.sku, { quantity: known.quantity + need.quantity * times, because: [...known.because, sku] });
      add(need.sku, need.quantity * times);
    }
  };
  for (const { sku, quantity } of fresh.values()) add(sku, quantity);
  return extras;
}

function demandOf(
  world: World,
  prepared: Prepared,
  fresh: Work['fresh'],
  extras: Work['extras'],
  amounts: readonly Amount[],
): Demand {
  const pieces = new Map<string, { fresh: number; any: number }>();
  const add = (sku: string, kind: 'fresh' | 'any', quantity: number): void => {
    const known = pieces.get(sku) ?? { fresh: 0, any: 0 };
    pieces.set(sku, { ...known, [kind]: known[kind] + quantity });
  };
  for (const [name, { sku, quantity, renewed }] of fresh) {
    const slot = prepared.family.slots.find((candidate) => candidate.name === name);
    add(sku, renewed || slot?.singleUse || slot?.wears ? 'fresh' : 'any', quantity);
  }
  for (const [sku, { quantity }] of extras) add(sku, 'any', quantity);
  const supplies = new Map<string, number>();
  for (const { action, specification, amount } of amounts) {
    if (action === 'use') supplies.set(specification, (supplies.get(specification) ?? 0) + amount);
  }
  for (const [specification, amount] of supplies) {
    supplies.set(
      specification,
      roundUpAmount(amount, world.catalog.specifications.get(specification)?.unit ?? 'piece'),
    );
  }
  return { pieces, supplies };
}

/** Labour: minutes at the hourly rate, rounded half up once; a wanted service with a flat price stands for the operations it lists. */
export function labourOf(world: World, prepared: Prepared, operations: readonly Operation[]): Minor {
  const { shop, catalog } = world;
  let flat = 0;
  const covered = new Set<string>();
  for (const id of prepared.wants.services) {
    const price = shop.flat.get(id);
    if (price === undefined) continue;
    flat += price;
    for (const operation of catalog.services.get(id)?.operations ?? []) covered.add(operation);
  }
  const minutes = operations
    .filter(({ id }) => !covered.has(id))
    .reduce((sum, operation) => sum + operation.minutes, 0);
  return minor(flat + multiplyDivide(minutes, shop.rate, 60));
}

function unknownFits(fork: ForkProblem, values: readonly number[], build: Build): string[] {
  return fork.domains.flatMap(({ slot }, at) => {
    const content = build.slots.get(slot.name);
    if (!content || slot.name === 'upper' || slot.name === 'lowers' || ((values[at + 1] ?? 0) === 0 && values[0] === 0))
      return [];
    const part = fork.catalog.parts.get(content.sku);
    return part && fork.verdict(part, build.chassis).kind === 'unknown' ? [slot.name] : [];
  });
}

/** What the pieces of a demand cost at least: see `unitFloor`. */
function floorOf(world: World, prepared: Prepared, demand: Demand): number {
  const { atHand } = prepared;
  if (atHand.kits.size > 0) return 0;
  let sum = 0;
  for (const [sku, { fresh, any }] of demand.pieces) {
    const left = fresh + any - (atHand.fresh.get(sku) ?? 0) - (atHand.used.get(sku) ?? 0);
    if (left > 0) sum += left * unitFloor(world.market, sku);
  }
  return Math.floor(sum);
}

function purchasesOf(
  world: World,
  prepared: Prepared,
  demand: Demand,
  memo: Map<string, readonly Purchase[]>,
): readonly Purchase[] {
  const key = JSON.stringify([[...demand.pieces].sort(), [...demand.supplies].sort()]);
  const known = memo.get(key) ?? purchases(world.market, demand, prepared.atHand, prepared.buying);
  memo.set(key, known);
  return known;
}

/** What a build's work needs and cannot be bought or covered on its own: SKUs of parts, ids of specifications. */
export function missingSkus(world: World, prepared: Prepared, build: Build): string[] {
  const work = workOf(world, prepared, build);
  if (!work) return [];
  const none = { pieces: new Map<string, { fresh: number; any: number }>(), supplies: new Map<string, number>() };
  const policy = { bulk: prepared.buying.bulk, useKits: [], useSupplies: [], usePacks: [] };
  const lacks = (demand: Demand): boolean => purchases(world.market, demand, prepared.atHand, policy).length === 0;
  return [
    ...[...work.demand.pieces]
      .filter(([sku, count]) => lacks({ ...none, pieces: new Map([[sku, count]]) }))
      .map(([sku]) => sku),
    ...[...work.demand.supplies]
      .filter(([id, amount]) => lacks({ ...none, supplies: new Map([[id, amount]]) }))
      .map(([id]) => id),
    ...[...prepared.buying.useSupplies, ...prepared.buying.usePacks].filter((sku) => !servesNeed(world, work, sku)),
  ];
}

const servesNeed = (world: World, work: Work, sku: string): boolean => {
  const supply = world.catalog.packs.get(sku)?.supply ?? sku;
  return [...work.demand.supplies.keys()].some((id) => world.market.meeting.get(id)?.includes(supply));
};
