import type { Operation } from '../catalog/index.ts';
import { type Build, sameContent } from '../fork/index.ts';
import { type Minor, roundUpAmount } from '../quantity/index.ts';
import { type Demand, purchases } from '../supply/index.ts';
import { type Amount, amountsOf } from '../work/index.ts';
import { inOrder, jobOf } from './job.ts';
import type { Prepared } from './prepare.ts';
import { standingFor } from './replaced.ts';
import type { World } from './world.ts';

/** The work that a build takes. */
export interface Work {
  readonly changed: readonly string[];
  readonly renewed: ReadonlySet<string>;
  readonly order: readonly Operation[];
  readonly amounts: readonly Amount[];
  readonly minutes: number;
  readonly labour: Minor;
  /** New pieces by slot. */
  readonly fresh: ReadonlyMap<string, { readonly sku: string; readonly quantity: number; readonly renewed: boolean }>;
  /** Parts without a slot that parts newly put in need, and who needs them. */
  readonly extras: ReadonlyMap<string, { readonly quantity: number; readonly because: readonly string[] }>;
  readonly demand: Demand;
}

/** The work that turns the fork of now into a build; null where its operations contradict each other. */
export function workOf(world: World, prepared: Prepared, build: Build): Work | null {
  const { catalog } = world;
  const { now } = prepared;
  const changed = now.slots
    .filter(({ name }) => !sameContent(now.build.slots.get(name) ?? null, build.slots.get(name) ?? null))
    .map(({ name }) => name)
    .concat(
      [...build.settings].filter(([name, value]) => now.build.settings.get(name) !== value).map(([name]) => name),
    );
  const { operations, renewed, minutes, labour } = jobOf(world, prepared, changed);
  const order = inOrder(operations);
  if (!order) return null;
  const amounts = amountsOf(catalog, order, now.build, build);
  const fresh = freshPieces(prepared, build, changed, renewed);
  const extras = extraParts(world, prepared, fresh, changed);
  return {
    changed,
    renewed,
    order,
    amounts,
    minutes,
    labour,
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
  for (const { name } of prepared.now.slots) {
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

/** Parts without a slot that newly fitted parts need (renewed by the same number: only needs marked so), and what those need in turn. What is replaced and cannot be had stands for its last replacement. */
export function extraParts(
  world: World,
  prepared: Prepared,
  fresh: Work['fresh'],
  changed: readonly string[],
): Work['extras'] {
  const extras = new Map<string, { quantity: number; because: string[] }>();
  const add = (sku: string, times: number, only: 'all' | 'with-renewal'): void => {
    for (const need of world.catalog.parts.get(sku)?.needs ?? []) {
      if (need.kind !== 'part' || (only === 'with-renewal' && !need.withRenewal)) continue;
      for (const { sku: standing, quantity } of standingFor(world, prepared, need.sku, need.quantity * times)) {
        const known = extras.get(standing) ?? { quantity: 0, because: [] };
        const wanted = need.quantity * quantity * times;
        extras.set(standing, { quantity: known.quantity + wanted, because: [...new Set([...known.because, sku])] });
        add(standing, wanted, 'all');
      }
    }
  };
  for (const [slot, { sku, quantity }] of fresh) add(sku, quantity, changed.includes(slot) ? 'all' : 'with-renewal');
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
    const slot = prepared.now.slots.find((candidate) => candidate.name === name);
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

/** Why a build's work cannot be supplied: SKUs and ids of specifications that cannot be had by themselves, and supplies to be used that serve nothing in it. */
export interface Lacking {
  readonly skus: readonly string[];
  /** Names of specifications that the work asks for and that no supply of the catalogue meets. */
  readonly unmet: readonly string[];
  readonly idle: readonly string[];
}

export const LACKING_NOTHING: Lacking = { skus: [], unmet: [], idle: [] };

export function lackingFor(world: World, prepared: Prepared, build: Build): Lacking {
  const work = workOf(world, prepared, build);
  if (!work) return LACKING_NOTHING;
  const none = { pieces: new Map<string, { fresh: number; any: number }>(), supplies: new Map<string, number>() };
  const policy = {
    bulk: prepared.buying.bulk,
    substitutes: prepared.buying.substitutes,
    useKits: [],
    useSupplies: [],
    usePacks: [],
  };
  const lacks = (demand: Demand): boolean => purchases(world.market, demand, prepared.atHand, policy).length === 0;
  const skus = [
    ...[...work.demand.pieces]
      .filter(([sku, count]) => lacks({ ...none, pieces: new Map([[sku, count]]) }))
      .map(([sku]) => sku),
    ...[...work.demand.supplies]
      .filter(([id, amount]) => lacks({ ...none, supplies: new Map([[id, amount]]) }))
      .map(([id]) => id)
      .filter((id) => meets(world, id).length > 0),
  ];
  const unmet = [...work.demand.supplies.keys()]
    .filter((id) => meets(world, id).length === 0)
    .map((id) => world.catalog.specifications.get(id)?.name ?? id);
  const wanted = [...prepared.buying.useSupplies, ...prepared.buying.usePacks];
  return { skus, unmet, idle: wanted.filter((sku) => !servesNeed(world, work, sku)) };
}

const servesNeed = (world: World, work: Work, sku: string): boolean => {
  const supply = world.catalog.packs.get(sku)?.supply ?? sku;
  return [...work.demand.supplies.keys()].some((id) => meets(world, id).includes(supply));
};

const meets = (world: World, specification: string): readonly string[] => world.market.meeting.get(specification) ?? [];
