import type { Catalog, Content } from '../catalog/index.ts';
import { amountNumber, byCodeUnit, formatMoney, groupBy, type Minor, minor } from '../quantity/index.ts';
import type { Line } from './answer.ts';
import type { Prepared } from './prepare.ts';
import type { Candidate } from './search.ts';
import { sourceOf } from './source.ts';
import type { World } from './world.ts';

/** Something that a take, buy or kit line puts in hand: what is left of it by SKU of part or supply. */
interface Pool {
  readonly action: 'take' | 'buy';
  readonly sku: string;
  readonly left: Map<string, number>;
  readonly used: boolean;
  taken: number;
}
type Unit = Line['unit'];

/** Every line of a plan: buy, take, install, renew, use, reuse, remove, waste. model.md, section 6. */
export function planLines(world: World, prepared: Prepared, candidate: Candidate): Line[] {
  const pools = poolsOf(world, prepared, candidate);
  const consumed = [...pieceLines(world, prepared, candidate, pools), ...useLines(world, candidate, pools)];
  return [
    ...buyLines(world, candidate, pools, consumed),
    ...takeLines(world, candidate, pools, consumed),
    ...consumed,
    ...oldPieceLines(world, prepared, candidate),
    ...drainLines(world, candidate),
  ];
}

const blank = {
  packs: null,
  unitPrice: null,
  total: null,
  leftOver: null,
  from: null,
  why: null,
  bin: null,
  days: null,
} as const;

/** In the order in which they are used up: packs that the question names, what is at hand, kits at hand, then what else is bought, by SKU. */
function poolsOf(world: World, prepared: Prepared, candidate: Candidate): Pool[] {
  const { atHand } = prepared;
  const single = (sku: string, amount: number, used: boolean): Pool => ({
    action: 'take',
    sku,
    left: new Map([[sku, amount]]),
    used,
    taken: 0,
  });
  const sorted = (from: ReadonlyMap<string, number>): [string, number][] =>
    [...from].sort(([a], [b]) => byCodeUnit(a, b));
  const packed = (action: 'take' | 'buy', sku: string, packs: number): Pool => ({
    action,
    sku,
    left: new Map((world.market.offers.get(sku)?.gives ?? []).map((given) => [given.sku, given.amount * packs])),
    used: false,
    taken: 0,
  });
  const bought = candidate.purchase.bought.map(({ offer, packs }) => packed('buy', offer.sku, packs));
  const isNamed = ({ sku }: Pool): boolean => prepared.buying.usePacks.includes(sku);
  return [
    ...bought.filter(isNamed),
    ...sorted(atHand.used).map(([sku, amount]) => single(sku, amount, true)),
    ...sorted(atHand.fresh).map(([sku, amount]) => single(sku, amount, false)),
    ...sorted(atHand.supplies).map(([sku, amount]) => single(sku, amount, false)),
    ...sorted(candidate.purchase.takenKits).map(([sku, packs]) => packed('take', sku, packs)),
    ...bought.filter((pool) => !isNamed(pool)),
  ];
}

/** Takes an amount from the pools in order; one draw for each pool that gives some. */
function draw(
  pools: readonly Pool[],
  sku: string,
  amount: number,
  allowUsed: 'used-allowed' | 'fresh-only',
): { readonly from: string | null; readonly amount: number }[] {
  const draws: { from: string | null; amount: number }[] = [];
  let left = amount;
  for (const pool of pools) {
    const here = Math.min(left, pool.left.get(sku) ?? 0);
    if (here <= 0 || (pool.used && allowUsed === 'fresh-only')) continue;
    pool.left.set(sku, (pool.left.get(sku) ?? 0) - here);
    pool.taken += here;
    left -= here;
    draws.push({ from: pool.sku, amount: here });
  }
  if (left > 0) draws.push({ from: null, amount: left });
  return draws;
}

function pieceLines(world: World, prepared: Prepared, candidate: Candidate, pools: readonly Pool[]): Line[] {
  const { catalog } = world;
  const lines: Line[] = [];
  const put = (
    action: 'install' | 'renew',
    sku: string,
    quantity: number,
    because: readonly string[],
    fresh: 'used-allowed' | 'fresh-only',
  ): void => {
    const part = catalog.parts.get(sku);
    for (const { from, amount } of draw(pools, sku, quantity, fresh)) {
      lines.push({
        ...blank,
        action,
        sku,
        name: part?.name ?? sku,
        role: part?.role ?? '',
        quantity: amount,
        unit: 'piece',
        from,
        because,
        source: part ? sourceOf(part.source) : null,
      });
    }
  };
  // fresh-only draws first, so that a new piece at hand is not spent where a used one would do
  const slots = [...candidate.work.fresh].map(([name, piece]) => {
    const slot = prepared.now.slots.find((known) => known.name === name);
    return { name, ...piece, mustBeNew: piece.renewed || slot?.singleUse === true || slot?.wears === true };
  });
  for (const { name, sku, quantity, renewed, mustBeNew } of [...slots].sort(
    (a, b) => Number(b.mustBeNew) - Number(a.mustBeNew),
  )) {
    put(renewed ? 'renew' : 'install', sku, quantity, [name], mustBeNew ? 'fresh-only' : 'used-allowed');
  }
  for (const [sku, { quantity, because }] of candidate.work.extras)
    put('install', sku, quantity, because, 'used-allowed');
  return lines.sort((a, b) => (a.action === b.action ? 0 : a.action === 'install' ? -1 : 1));
}

function useLines(world: World, candidate: Candidate, pools: readonly Pool[]): Line[] {
  const { catalog } = world;
  const { purchase, work } = candidate;
  const byProduct = groupBy(
    [...work.demand.supplies].filter(([, amount]) => amount > 0),
    ([specification]) => purchase.products.get(specification),
  );
  return [...byProduct]
    .flatMap(([sku, demands]): Line[] => {
      const supply = sku === undefined ? undefined : catalog.supplies.get(sku);
      if (!supply) return [];
      const specifications = demands.map(([specification]) => specification);
      const because = work.amounts
        .filter((use) => use.action === 'use' && specifications.includes(use.specification))
        .map(({ operation }) => operation);
      const amount = demands.reduce((sum, [, part]) => sum + part, 0);
      return draw(pools, supply.sku, amount, 'fresh-only').map((part): Line => {
        const price = part.from === null ? (purchase.dosed.get(supply.sku)?.price ?? null) : null;
        return {
          ...blank,
          action: 'use',
          sku: supply.sku,
          name: supply.name,
          role: supply.use,
          quantity: amountNumber(part.amount, supply.unit),
          unit: supply.unit,
          total: price === null ? null : money(world, price),
          from: part.from,
          because: [...new Set(because)],
          source: sourceOf(supply.source),
        };
      });
    })
    .sort((a, b) => byCodeUnit(a.sku ?? '', b.sku ?? ''));
}

function buyLines(world: World, candidate: Candidate, pools: readonly Pool[], consumed: readonly Line[]): Line[] {
  const { catalog } = world;
  return candidate.purchase.bought.map(({ offer, packs, days }): Line => {
    const pool = pools.find(({ action, sku }) => action === 'buy' && sku === offer.sku);
    const described = describe(catalog, offer.sku);
    const only = offer.kind === 'kit' ? null : offer.gives[0];
    return {
      ...blank,
      action: 'buy',
      sku: offer.sku,
      name: described.name,
      role: described.role,
      quantity: only ? amountNumber(only.amount * packs, described.unit) : packs,
      unit: described.unit,
      packs,
      unitPrice: offer.price === null ? null : formatMoney(offer.price, catalog.digits),
      total: offer.price === null ? null : formatMoney(minor(offer.price * packs), catalog.digits),
      leftOver: pool ? leftOver(catalog, pool) : null,
      because: reasons(consumed, offer.sku),
      source: described.source,
      bin: offer.stock?.bin ?? null,
      days: Number.isFinite(days) ? days : null,
    };
  });
}

function takeLines(world: World, candidate: Candidate, pools: readonly Pool[], consumed: readonly Line[]): Line[] {
  const { catalog } = world;
  return pools
    .filter(({ action, taken, sku }) => action === 'take' && (taken > 0 || catalog.kits.has(sku)))
    .map((pool): Line => {
      const described = describe(catalog, pool.sku);
      const isKit = catalog.kits.has(pool.sku);
      return {
        ...blank,
        action: 'take',
        sku: pool.sku,
        name: described.name,
        role: described.role,
        quantity: isKit ? (candidate.purchase.takenKits.get(pool.sku) ?? 0) : amountNumber(pool.taken, described.unit),
        unit: described.unit,
        leftOver: isKit ? leftOver(catalog, pool) : null,
        because: reasons(consumed, pool.sku),
        source: described.source,
        bin: world.market.offers.get(pool.sku)?.stock?.bin ?? null,
      };
    });
}

const reasons = (consumed: readonly Line[], sku: string): string[] => [
  ...new Set(consumed.filter(({ from }) => from === sku).flatMap(({ because }) => because)),
];

function leftOver(catalog: Catalog, pool: Pool): Line['leftOver'] {
  const rest = [...pool.left].filter(([, amount]) => amount > 0).sort(([a], [b]) => byCodeUnit(a, b));
  if (rest.length === 0) return null;
  return rest.map(([sku, amount]) => {
    const { name, unit } = describe(catalog, sku);
    return { sku, name, quantity: amountNumber(amount, unit), unit };
  });
}

interface Described {
  readonly name: string;
  readonly role: string;
  readonly unit: Unit;
  readonly source: Line['source'];
}

function describe(catalog: Catalog, sku: string): Described {
  const part = catalog.parts.get(sku);
  if (part) return { name: part.name, role: part.role, unit: 'piece', source: sourceOf(part.source) };
  const kit = catalog.kits.get(sku);
  if (kit) return { name: kit.name, role: 'kit', unit: 'piece', source: sourceOf(kit.source) };
  const supply = catalog.supplies.get(catalog.packs.get(sku)?.supply ?? sku);
  return supply
    ? { name: supply.name, role: supply.use, unit: supply.unit, source: sourceOf(supply.source) }
    : { name: sku, role: '', unit: 'piece', source: null };
}

/** What was in the changed and renewed slots: what goes back in, what goes back to the customer, what is waste. */
function oldPieceLines(world: World, prepared: Prepared, candidate: Candidate): Line[] {
  const lines: Line[] = [];
  const { work, build } = candidate;
  for (const slot of prepared.now.slots) {
    const before: Content = prepared.now.build.slots.get(slot.name) ?? null;
    const after = build.slots.get(slot.name) ?? null;
    const changed = work.changed.includes(slot.name);
    const renewed = work.renewed.has(slot.name);
    if (!before || (!changed && !renewed)) continue;
    const back = changed && !renewed && after?.sku === before.sku ? Math.min(before.quantity, after.quantity) : 0;
    const part = world.catalog.parts.get(before.sku);
    const line = (action: Line['action'], quantity: number): Line => ({
      ...blank,
      action,
      sku: before.sku,
      name: part?.name ?? before.sku,
      role: part?.role ?? slot.role,
      quantity,
      unit: 'piece',
      because: [slot.name],
      source: part ? sourceOf(part.source) : null,
    });
    if (back > 0) lines.push(line('reuse', back));
    if (before.quantity > back) lines.push(line(slot.singleUse ? 'waste' : 'remove', before.quantity - back));
  }
  const order: readonly Line['action'][] = ['reuse', 'remove', 'waste'];
  return lines.sort((a, b) => order.indexOf(a.action) - order.indexOf(b.action));
}

/** Drained oil, by specification: waste of which nobody knows the product. */
function drainLines(world: World, candidate: Candidate): Line[] {
  const drained = groupBy(
    candidate.work.amounts.filter(({ action }) => action === 'drain'),
    ({ specification }) => specification,
  );
  return [...drained].flatMap(([id, amounts]): Line[] => {
    const specification = world.catalog.specifications.get(id);
    if (!specification) return [];
    const amount = amounts.reduce((sum, one) => sum + one.amount, 0);
    return [
      {
        ...blank,
        action: 'waste',
        sku: null,
        name: specification.name,
        role: specification.use,
        quantity: amountNumber(amount, specification.unit),
        unit: specification.unit,
        because: [...new Set(amounts.map(({ operation }) => operation))],
        source: sourceOf(specification.source),
      },
    ];
  });
}

/** Money as the answer writes it. */
export const money = (world: World, amount: Minor): string => formatMoney(amount, world.catalog.digits);
