import type { Chassis, Operation } from '../catalog/index.ts';
import type { ForkProblem } from '../fork/index.ts';
import type { Domains, Vector } from '../solve/index.ts';
import { type Floor, floorFor, productsFor } from '../supply/index.ts';
import { type Job, jobOf } from './job.ts';
import type { Prepared } from './prepare.ts';
import type { World } from './world.ts';

/**
 * A lower bound on the vector of every plan below a node. Slots that have lost their content of now are changed in all of them; the operations
 * these need are in all of them, since the closure only grows; so are the pieces, each at a price that nothing undercuts (`floorFor`), and the amounts that those operations use.
 */
export function planFloor(world: World, prepared: Prepared, fork: ForkProblem): (domains: Domains) => Vector {
  const memo = new Map<Job, Map<Chassis | null, WorkFloor>>();
  const piece = pieceFloors(world, prepared, fork);
  const names = [...fork.domains.map(({ slot }) => slot.name), ...fork.settings.map(({ setting }) => setting.name)];
  return (domains) => {
    const changed = names.filter((_name, at) => !domains.has(at + 1, 0));
    const body = domains.isFixed(0) ? (fork.chassis[domains.first(0)] ?? null) : null;
    const job = jobOf(world, prepared, changed);
    const floors = memo.get(job) ?? new Map<Chassis | null, WorkFloor>();
    memo.set(job, floors);
    const work = floors.get(body) ?? workFloor(world, prepared, job, body);
    floors.set(body, work);
    let money = work.supplies;
    let days = 0;
    for (let at = 0; at < fork.domains.length; at++) {
      const variable = at + 1;
      const name = fork.domains[at]?.slot.name ?? '';
      const renewed = work.renewed.has(name);
      if (!renewed && domains.has(variable, 0)) continue;
      const pieces = (renewed ? piece.renewed : piece.changed)[at] ?? [];
      let [least, soonest] = [Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY];
      for (let value = 0; value < pieces.length; value++) {
        const floor = pieces[value];
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

function workFloor(world: World, prepared: Prepared, job: Job, body: Chassis | null): WorkFloor {
  const { labour, minutes, renewed, operations } = job;
  return { labour, minutes, renewed, supplies: suppliesFloor(world, prepared, operations, body) };
}

/** What the amounts that operations state, and doses of the chassis where it is settled, cost at least; doses of parts, bulk and what is at hand count as nothing. */
function suppliesFloor(
  world: World,
  prepared: Prepared,
  operations: readonly Operation[],
  body: Chassis | null,
): number {
  if (prepared.buying.bulk) return 0;
  const free = atHandOf(world, prepared);
  const amounts = leastAmounts(operations, body);
  // a product that serves two specifications shares its packs between them: their floors must not be added up
  const products = [...amounts.keys()].map((specification) =>
    productsFor(world.market, prepared.buying, specification),
  );
  let sum = 0;
  [...amounts].forEach(([, amount], at) => {
    const own = products[at] ?? [];
    const shared = own.some((sku) => products.some((other, to) => to !== at && other.includes(sku)));
    if (shared || own.some((sku) => free.has(sku))) return;
    const least = Math.min(...own.map((sku) => floorFor(world.market, sku, amount).money));
    if (Number.isFinite(least)) sum += least;
  });
  return sum;
}

/** Parts and supplies of which some are at hand, by themselves or in a kit: of these nothing is certain to be bought. */
const atHandOf = ({ market }: World, { atHand: { fresh, used, supplies, kits } }: Prepared): ReadonlySet<string> =>
  new Set([
    ...[fresh, used, supplies].flatMap((held) => [...held.keys()]),
    ...[...kits.keys()].flatMap((sku) => market.offers.get(sku)?.gives.map((given) => given.sku) ?? []),
  ]);

/** What operations use at least, by specification, held units: the amounts that they state, and doses of the chassis where it is settled. */
export function leastAmounts(operations: readonly Operation[], body: Chassis | null): ReadonlyMap<string, number> {
  const amounts = new Map<string, number>();
  const add = (specification: string, amount: number): void =>
    void amounts.set(specification, (amounts.get(specification) ?? 0) + amount);
  for (const { uses } of operations) {
    for (const use of uses) {
      if (use.kind === 'amount') add(use.specification, use.amount);
      const dose = use.kind === 'dose' && use.of === 'chassis' ? body?.doses.get(use.dose) : undefined;
      const amount = dose && use.side !== null ? (dose[use.side] ?? dose.amount) : (dose?.amount ?? null);
      if (dose && amount) add(dose.specification, amount);
    }
  }
  return amounts;
}

/** For every content of every slot what its new pieces cost and wait at least, where the slot is renewed and where it changes. */
function pieceFloors(
  world: World,
  prepared: Prepared,
  fork: ForkProblem,
): { readonly renewed: Floor[][]; readonly changed: Floor[][] } {
  const { market } = world;
  const free = atHandOf(world, prepared);
  const nothing: Floor = { money: 0, days: 0 };
  // one number in two slots shares its packs: then only a share is certain
  const slotsOf = new Map<string, number>();
  for (const { contents } of fork.domains)
    for (const sku of new Set(contents.flatMap((content) => content?.sku ?? [])))
      slotsOf.set(sku, (slotsOf.get(sku) ?? 0) + 1);
  const floor = (sku: string, quantity: number): Floor => {
    if (quantity <= 0 || free.has(sku) || (slotsOf.get(sku) ?? 0) > 1) return nothing;
    return floorFor(market, sku, quantity);
  };
  const per = (
    count: (
      sku: string,
      quantity: number,
      before: { readonly sku: string; readonly quantity: number } | null,
    ) => number,
  ): Floor[][] =>
    fork.domains.map(({ contents }) =>
      contents.map((content) =>
        content ? floor(content.sku, count(content.sku, content.quantity, contents[0] ?? null)) : nothing,
      ),
    );
  return {
    renewed: per((_sku, quantity) => quantity),
    changed: per((sku, quantity, before) => quantity - (before?.sku === sku ? Math.min(before.quantity, quantity) : 0)),
  };
}
