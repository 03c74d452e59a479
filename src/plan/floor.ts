import type { Operation } from '../catalog/index.ts';
import type { ForkProblem } from '../fork/index.ts';
import type { Domains, Vector } from '../solve/index.ts';
import { daysFor, productsFor } from '../supply/index.ts';
import { type Needed, neededOperations } from '../work/index.ts';
import type { Prepared } from './prepare.ts';
import { labourOf } from './work-of.ts';
import type { World } from './world.ts';

/**
 * A lower bound on the vector of every plan below a node. Slots that have lost their content of now are changed in all of them; the operations
 * these need are in all of them, since the closure only grows; so are the pieces, each at a price that no offer undercuts (`floors` of the market:
 * a feasible dual solution of the cover), and the amounts that those operations use.
 */
export function planFloor(world: World, prepared: Prepared, fork: ForkProblem): (domains: Domains) => Vector {
  const memo = new Map<string, WorkFloor>();
  const piece = pieceFloors(world, prepared, fork);
  return (domains) => {
    const names = [...fork.domains.map(({ slot }) => slot.name), ...fork.settings.map(({ setting }) => setting.name)];
    const changed = names.filter((_name, at) => !domains.has(at + 1, 0));
    const key = changed.join(' ');
    const work = memo.get(key) ?? workFloor(world, prepared, changed);
    memo.set(key, work);
    let money = work.supplies;
    let days = 0;
    for (let at = 0; at < fork.domains.length; at++) {
      const variable = at + 1;
      const name = fork.domains[at]?.slot.name ?? '';
      const renewed = work.renewed.has(name);
      if (!renewed && domains.has(variable, 0)) continue;
      const floors = (renewed ? piece.renewed : piece.changed)[at] ?? [];
      let [least, soonest] = [Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY];
      for (let value = 0; value < floors.length; value++) {
        const floor = floors[value];
        if (!floor || !domains.has(variable, value)) continue;
        least = Math.min(least, floor.money);
        soonest = Math.min(soonest, floor.days);
      }
      if (Number.isFinite(least)) money += least;
      days = Math.max(days, soonest);
    }
    return [work.labour + Math.ceil(money - 1e-6), work.minutes, days, 0, 0];
  };
}

interface WorkFloor {
  readonly labour: number;
  readonly minutes: number;
  readonly renewed: ReadonlySet<string>;
  readonly supplies: number;
}

function workFloor(world: World, prepared: Prepared, changed: readonly string[]): WorkFloor {
  const needed: Needed = neededOperations(world.catalog, prepared.family, {
    changed,
    renewed: prepared.wants.renew,
    services: prepared.wants.services,
  });
  return {
    labour: labourOf(world, prepared, needed.operations),
    minutes: needed.operations.reduce((sum, { minutes }) => sum + minutes, 0),
    renewed: new Set(needed.renewed),
    supplies: suppliesFloor(world, prepared, needed.operations),
  };
}

/** What the amounts that operations state cost at least; doses, bulk and what is at hand count as nothing. */
function suppliesFloor(world: World, prepared: Prepared, operations: readonly Operation[]): number {
  if (prepared.buying.bulk) return 0;
  const amounts = new Map<string, number>();
  for (const { uses } of operations) {
    for (const use of uses)
      if (use.kind === 'amount') amounts.set(use.specification, (amounts.get(use.specification) ?? 0) + use.amount);
  }
  let sum = 0;
  for (const [specification, amount] of amounts) {
    const supplies = productsFor(world.market, prepared.buying, specification);
    if (supplies.some((sku) => prepared.atHand.supplies.has(sku)) || prepared.atHand.kits.size > 0) continue;
    const least = Math.min(...supplies.map((sku) => world.market.floors.get(sku) ?? 0));
    if (Number.isFinite(least)) sum += least * amount;
  }
  return sum;
}

interface PieceFloor {
  readonly money: number;
  readonly days: number;
}

/** For every content of every slot what its new pieces cost and wait at least, where the slot is renewed and where it changes. */
function pieceFloors(
  world: World,
  prepared: Prepared,
  fork: ForkProblem,
): { readonly renewed: PieceFloor[][]; readonly changed: PieceFloor[][] } {
  const { market } = world;
  const { atHand } = prepared;
  const floor = (sku: string, quantity: number): PieceFloor => {
    const covered = atHand.fresh.has(sku) || atHand.used.has(sku) || atHand.kits.size > 0;
    if (quantity <= 0 || covered) return { money: 0, days: 0 };
    const waits = (market.giving.get(sku) ?? []).map((offer) => daysFor(offer, 1) ?? Number.POSITIVE_INFINITY);
    return {
      money: (market.floors.get(sku) ?? 0) * quantity,
      days: waits.length === 0 ? Number.POSITIVE_INFINITY : Math.min(...waits),
    };
  };
  const per = (
    count: (
      sku: string,
      quantity: number,
      before: { readonly sku: string; readonly quantity: number } | null,
    ) => number,
  ): PieceFloor[][] =>
    fork.domains.map(({ contents }) =>
      contents.map((content) =>
        content ? floor(content.sku, count(content.sku, content.quantity, contents[0] ?? null)) : { money: 0, days: 0 },
      ),
    );
  return {
    renewed: per((_sku, quantity) => quantity),
    changed: per((sku, quantity, before) => quantity - (before?.sku === sku ? Math.min(before.quantity, quantity) : 0)),
  };
}
