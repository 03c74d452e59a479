import type { Content } from '../catalog/index.ts';
import { type ForkProblem, forkProblem } from '../fork/index.ts';
import { minor } from '../quantity/index.ts';
import { StepBudget, smallestConflict, type Table, tableOf } from '../solve/index.ts';
import { type Market, type Purchase, productsFor, purchases, withoutOffer } from '../supply/index.ts';
import type { Line } from './answer.ts';
import { asShown, partiesOf } from './dispute.ts';
import { money } from './lines.ts';
import type { Prepared } from './prepare.ts';
import { bestPlan, type Candidate, canBuild } from './search.ts';
import type { World } from './world.ts';

type Why = Line['why'];

/** Gives every buy, install and renew line its reason: what else there was, and the one fact against the nearest alternative. */
export function explainLines(world: World, prepared: Prepared, candidate: Candidate, lines: readonly Line[]): Line[] {
  const bySlot = new Map<string, Why>();
  const fork = forkProblem(world.catalog, prepared.now, prepared.wants, prepared.question);
  return lines.map((line): Line => {
    const slot = line.because[0] ?? '';
    if (line.action === 'buy' && line.sku !== null)
      return { ...line, why: whyBought(world, prepared, candidate, line.sku) };
    if (
      (line.action === 'install' || line.action === 'renew') &&
      fork.domains.some((domain) => domain.slot.name === slot)
    ) {
      const why = bySlot.get(slot) ?? whyInSlot(world, prepared, fork, candidate, slot);
      bySlot.set(slot, why);
      return { ...line, why };
    }
    if (line.action === 'use' && line.sku !== null)
      return { ...line, why: whyUsed(world, prepared, candidate, line.sku) };
    return line;
  });
}

/** Why this is bought: what the same needs cost without it. */
function whyBought(world: World, prepared: Prepared, candidate: Candidate, sku: string): Why {
  const { atHand, buying } = prepared;
  const params = { sku };
  if ([...buying.useKits, ...buying.usePacks].includes(sku)) return { code: 'asked-for', params, against: null };
  const without: Market = withoutOffer(world.market, sku);
  const ways = purchases(without, candidate.work.demand, atHand, buying);
  const cost = (purchase: Purchase): number => purchase.parts + purchase.supplies;
  const now = candidate.purchase;
  const sooner = ways
    .filter((way) => way.days <= now.days && way.unpriced <= now.unpriced)
    .sort((a, b) => cost(a) - cost(b))[0];
  const others = (way: Purchase): string[] =>
    way.bought.map(({ offer }) => offer.sku).filter((other) => !now.bought.some(({ offer }) => offer.sku === other));
  if (sooner) {
    const against = {
      code: 'without-it-dearer',
      params: { by: money(world, minor(cost(sooner) - cost(now))), buys: others(sooner) },
    };
    return { code: 'cheapest-cover', params, against };
  }
  const later = [...ways].sort((a, b) => a.days - b.days || cost(a) - cost(b))[0];
  if (!later) return { code: 'only-offer', params, against: null };
  const days = Number.isFinite(later.days) ? later.days : null;
  return {
    code: 'soonest-cover',
    params,
    against: { code: 'without-it-later', params: { days, buys: others(later) } },
  };
}

/** Why this product is used: what the same needs cost with the cheapest other one that serves them. */
function whyUsed(world: World, prepared: Prepared, candidate: Candidate, sku: string): Why {
  const code = 'meets-specification';
  const { purchase, work } = candidate;
  const served = [...purchase.products]
    .filter(([, product]) => product === sku)
    .map(([specification]) => specification);
  const others = [...new Set(served.flatMap((id) => productsFor(world.market, prepared.buying, id)))].filter(
    (other) => other !== sku,
  );
  const cost = (way: Purchase): number => way.parts + way.supplies;
  const ways = others
    .flatMap((other) =>
      purchases(world.market, work.demand, prepared.atHand, {
        ...prepared.buying,
        useSupplies: [...prepared.buying.useSupplies, other],
      }).map((way) => ({ other, way })),
    )
    .filter(({ way }) => served.some((id) => way.products.get(id) !== sku))
    .sort((a, b) => a.way.days - b.way.days || cost(a.way) - cost(b.way));
  const soonEnough = ways.filter(({ way }) => way.days <= purchase.days).sort((a, b) => cost(a.way) - cost(b.way))[0];
  if (soonEnough) {
    const by = money(world, minor(cost(soonEnough.way) - cost(purchase)));
    return { code, params: { sku }, against: { code: 'without-it-dearer', params: { by, buys: [soonEnough.other] } } };
  }
  const later = ways[0];
  if (!later) return { code, params: { sku }, against: null };
  const days = Number.isFinite(later.way.days) ? later.way.days : null;
  return { code, params: { sku }, against: { code: 'without-it-later', params: { days, buys: [later.other] } } };
}

/** Why this content is in its slot: what the best plan without it costs, or the rule that stands against every other. */
function whyInSlot(world: World, prepared: Prepared, fork: ForkProblem, candidate: Candidate, slot: string): Why {
  const variable = fork.domains.findIndex((domain) => domain.slot.name === slot) + 1;
  const contents = fork.domains[variable - 1]?.contents ?? [];
  const chosen = candidate.build.slots.get(slot)?.sku ?? null;
  const others = contents.filter((content) => content !== null && content.sku !== chosen);
  const params = { slot, sku: chosen, others: new Set(others.map((content) => content?.sku)).size };
  if (others.length === 0) return { code: 'only-listed', params, against: null };
  const without = restricted(fork, variable, (content) => content?.sku !== chosen && content !== null);
  const best = bestPlan(world, prepared, without, new StepBudget(prepared.question.stepLimit));
  if (typeof best === 'object') {
    const other = best.build.slots.get(slot)?.sku ?? '';
    const [total, minutes, days] = best.vector;
    const wait = Number.isFinite(days) ? days : null;
    const against = {
      code: 'alternative-plan',
      params: {
        sku: other,
        money: money(world, minor(total)),
        more: money(world, minor(total - candidate.vector[0])),
        minutes,
        days: wait,
      },
    };
    return { code: 'unbeaten', params, against };
  }
  return { code: 'only-one-that-goes', params, against: ruleAgainst(prepared, fork, variable, chosen) };
}

/** The rule that stands against the first alternative, with its values. */
function ruleAgainst(
  prepared: Prepared,
  fork: ForkProblem,
  variable: number,
  chosen: string | null,
): NonNullable<Why>['against'] {
  const budget = new StepBudget(1_000_000);
  const contents = fork.domains[variable - 1]?.contents ?? [];
  const first = contents.find((content) => content !== null && content.sku !== chosen);
  const forced = restricted(fork, variable, (content) => content?.sku === first?.sku);
  const parties = partiesOf(prepared, fork);
  const conflict = smallestConflict(parties.order, (held) => canBuild(forced, parties.holdsOf(held), budget));
  const members = (conflict?.members ?? []).flatMap((at) =>
    parties.members[at] ? [asShown(parties.members[at])] : [],
  );
  const rule = members.find(({ kind }) => kind === 'rule' || kind === 'listing') ?? members[0];
  return rule ? { code: rule.code, params: { ...rule.params, sku: first?.sku ?? null } } : null;
}

/** The same problem with one slot's contents narrowed. */
function restricted(fork: ForkProblem, variable: number, may: (content: Content) => boolean): ForkProblem {
  const contents = fork.domains[variable - 1]?.contents ?? [];
  const table: Table = tableOf(fork.sizes, [variable], null, ([value = 0]) => may(contents[value] ?? null));
  return { ...fork, problem: { ...fork.problem, tables: [...fork.problem.tables, table] } };
}
