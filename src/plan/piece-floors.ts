import type { ForkProblem } from '../fork/index.ts';
import { type Floor, floorFor, shareFloorFor, type Within } from '../supply/index.ts';
import type { Prepared } from './prepare.ts';
import { extraParts } from './work-of.ts';
import type { World } from './world.ts';

/** How many new pieces a content takes where its slot is renewed, and where it changes to it; what they cost and wait at least. */
export interface PieceFloors {
  readonly renewed: readonly (readonly Floor[])[];
  readonly changed: readonly (readonly Floor[])[];
  readonly counts: Readonly<Record<'renewed' | 'changed', readonly (readonly number[])[]>>;
  /** What else a content needs costs at least. */
  readonly extras: readonly (readonly number[])[];
  /** What contents of several slots need besides, so that it is one line for all of them. */
  readonly shared: readonly SharedNeed[];
}

/** A part without a slot that contents of several slots need: how many of it each content needs. */
export interface SharedNeed {
  readonly sku: string;
  readonly counts: readonly (readonly number[])[];
  /** By slot and the number of what is certain of it, the least count: filled as it is asked for. */
  readonly least: readonly (number | undefined)[][];
}

/** What the contents of every slot cost and wait at least; what is at hand counts as nothing. */
export function pieceFloors(
  world: World,
  prepared: Prepared,
  { domains }: ForkProblem,
  free: ReadonlySet<string>,
  within: Within,
): PieceFloors {
  const { market } = world;
  const nothing: Floor = { money: 0, days: 0 };
  // one number in two slots shares its packs
  const slotsOf = new Map<string, number>();
  for (const { contents } of domains)
    for (const sku of new Set(contents.flatMap((content) => content?.sku ?? [])))
      slotsOf.set(sku, (slotsOf.get(sku) ?? 0) + 1);
  const counts = {
    renewed: domains.map(({ contents }) => contents.map((content) => content?.quantity ?? 0)),
    changed: domains.map(({ contents }) => {
      const before = contents[0] ?? null;
      return contents.map((content) => {
        if (content === null) return 0;
        return content.quantity - (before?.sku === content.sku ? Math.min(before.quantity, content.quantity) : 0);
      });
    }),
  };
  const floors = (numbers: readonly (readonly number[])[]): Floor[][] =>
    domains.map(({ contents }, at) =>
      contents.map((content, value) => {
        const count = numbers[at]?.[value] ?? 0;
        if (content === null || count <= 0 || free.has(content.sku)) return nothing;
        return (slotsOf.get(content.sku) === 1 ? floorFor : shareFloorFor)(market, content.sku, count, within);
      }),
    );
  return {
    renewed: floors(counts.renewed),
    changed: floors(counts.changed),
    counts,
    ...extraFloors(world, prepared, domains, counts.changed, new Set([...free, ...slotsOf.keys()]), within),
  };
}

/**
 * What the parts without a slot cost at least that each content needs. Those that a kit gives, or a slot may hold, are left out. What is renewed by the same number needs no
 * more than what is marked so.
 */
function extraFloors(
  world: World,
  prepared: Prepared,
  domains: ForkProblem['domains'],
  changed: readonly (readonly number[])[],
  leftOut: ReadonlySet<string>,
  within: Within,
): Pick<PieceFloors, 'extras' | 'shared'> {
  const { catalog, market } = world;
  const needed = domains.map(({ slot: { name }, contents }, at) =>
    contents.map((content, value) => {
      if (content === null || (catalog.parts.get(content.sku)?.needs.length ?? 0) === 0) return [];
      const { quantity } = content;
      // where some of it goes back in, how many are new hangs on why the slot is opened, and with that what stands for a replaced number
      if (value !== 0 && changed[at]?.[value] !== quantity) return [];
      const fresh = new Map([[name, { sku: content.sku, quantity, renewed: true }]]);
      return [...extraParts(world, prepared, fresh, value === 0 ? [] : [name])];
    }),
  );
  const slotsOf = new Map<string, Set<number>>();
  needed.forEach((ofSlot, at) => {
    for (const [sku] of ofSlot.flat()) slotsOf.set(sku, (slotsOf.get(sku) ?? new Set()).add(at));
  });
  const counts = (sku: string): boolean => !leftOut.has(sku) && !market.goods.isInKits(sku);
  const costOf = (sku: string, quantity: number): number => {
    if (!counts(sku)) return 0;
    if (slotsOf.get(sku)?.size === 1) return floorFor(market, sku, quantity, within).money;
    // whether its one line has a price is asked once for all slots
    return shareFloorFor(market, sku, quantity, { ...within, priced: false }).money;
  };
  const extras = needed.map((ofSlot) =>
    ofSlot.map((all) => all.reduce((sum, [sku, { quantity }]) => sum + costOf(sku, quantity), 0)),
  );
  const shared = [...slotsOf].flatMap(([sku, { size }]): SharedNeed[] => {
    if (size === 1 || !counts(sku)) return [];
    const countOf = (all: (typeof needed)[number][number]): number =>
      all.find(([other]) => other === sku)?.[1].quantity ?? 0;
    return [{ sku, counts: needed.map((ofSlot) => ofSlot.map(countOf)), least: needed.map(() => []) }];
  });
  return { extras, shared };
}
