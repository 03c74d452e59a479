import type { Chassis } from '../catalog/index.ts';
import type { ForkProblem } from '../fork/index.ts';
import type { Domains, Vector } from '../solve/index.ts';
import { type Job, jobOf } from './job.ts';
import { pieceFloors } from './piece-floors.ts';
import type { Prepared } from './prepare.ts';
import { type SuppliesFloor, suppliesFloor } from './supplies-floor.ts';
import { type Fate, TiedFloor, tiedGroups } from './tied.ts';
import type { World } from './world.ts';

/**
 * A lower bound on the vector of every plan below a node. Slots that have lost their content of now are changed in all of them; the operations
 * these need are in all of them, since the closure only grows; so are the pieces, each at a price that nothing undercuts (`floorFor`; what kits and packs tie together, at
 * the least that it costs together: `TiedFloor`), and the amounts that those operations use.
 */
export function planFloor(world: World, prepared: Prepared, fork: ForkProblem): (domains: Domains) => Vector {
  const memo = new Map<Job, Map<Chassis | null, WorkFloor>>();
  const { market } = world;
  const free = atHandOf(world, prepared);
  const pieces = pieceFloors(world, prepared, fork, free);
  const groups = tiedGroups(market, prepared.buying, fork);
  const tied = groups.map((group) => new TiedFloor(market, prepared.buying, fork, group, free, pieces.counts));
  const groupOf = fork.domains.map((_domain, slot) => groups.findIndex(({ slots }) => slots.includes(slot)));
  const names = [...fork.domains.map(({ slot }) => slot.name), ...fork.settings.map(({ setting }) => setting.name)];
  const fates: Fate[] = fork.domains.map(() => 'kept');
  const alone = groups.map(() => 0);
  return (domains) => {
    const changed = names.filter((_name, at) => !domains.has(at + 1, 0));
    const body = domains.isFixed(0) ? (fork.chassis[domains.first(0)] ?? null) : null;
    const job = jobOf(world, prepared, changed);
    const floors = memo.get(job) ?? new Map<Chassis | null, WorkFloor>();
    memo.set(job, floors);
    const work =
      floors.get(body) ?? workFloor(job, suppliesFloor(world, prepared, fork, job.operations, body, groups, free));
    floors.set(body, work);
    const supplies = work.supplies(domains);
    let [money, days] = [supplies.alone, 0];
    alone.fill(0);
    for (let at = 0; at < fates.length; at++) {
      const fate = work.renewed.has(names[at] ?? '') ? 'renewed' : domains.has(at + 1, 0) ? 'kept' : 'changed';
      fates[at] = fate;
      if (fate === 'kept') continue;
      const [floorsOf, extras] = [pieces[fate][at] ?? [], pieces.extras[at] ?? []];
      const group = groupOf[at] ?? -1;
      let [least, soonest, extra] = [Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY];
      for (let value = 0; value < floorsOf.length; value++) {
        const floor = floorsOf[value];
        if (!floor || !domains.has(at + 1, value)) continue;
        const beside = extras[value] ?? 0;
        least = Math.min(least, group < 0 ? floor.money + beside : floor.money);
        extra = Math.min(extra, beside);
        soonest = Math.min(soonest, floor.days);
      }
      days = Math.max(days, soonest);
      if (!Number.isFinite(least)) continue;
      if (group < 0) money += least;
      else {
        money += extra;
        alone[group] = (alone[group] ?? 0) + least;
      }
    }
    const node = { fates, domains, amounts: supplies.amounts };
    tied.forEach((group, at) => {
      money += group.cost(node) ?? (alone[at] ?? 0) + (supplies.tied[at] ?? 0);
    });
    return [work.labour + Math.ceil(money - 1e-6), work.minutes, days, 0, 0];
  };
}

interface WorkFloor {
  readonly labour: number;
  readonly minutes: number;
  readonly renewed: ReadonlySet<string>;
  readonly supplies: (domains: Domains) => SuppliesFloor;
}

const workFloor = ({ labour, minutes, renewed }: Job, supplies: WorkFloor['supplies']): WorkFloor => ({
  labour,
  minutes,
  renewed,
  supplies,
});

/** Parts and supplies of which some are at hand, by themselves or in a kit: of these nothing is certain to be bought. */
const atHandOf = ({ market }: World, { atHand: { fresh, used, supplies, kits } }: Prepared): ReadonlySet<string> =>
  new Set([
    ...[fresh, used, supplies].flatMap((held) => [...held.keys()]),
    ...[...kits.keys()].flatMap((sku) => market.offers.get(sku)?.gives.map((given) => given.sku) ?? []),
  ]);
