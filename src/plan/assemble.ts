import type { Shop } from '../catalog/index.ts';
import { type Micrometres, type Minor, minor, multiplyDivide } from '../quantity/index.ts';
import type { Label, Plan } from './answer.ts';
import { type PlanEffects, planEffects } from './effects.ts';
import { planFlags } from './flags.ts';
import { money, planLines } from './lines.ts';
import type { Looks } from './looks.ts';
import { byPreference } from './preference.ts';
import type { Prepared } from './prepare.ts';
import type { Candidate, PlanVector } from './search.ts';
import { planSteps, planTools } from './steps.ts';
import { explainLines } from './why.ts';
import type { World } from './world.ts';

/** Sorts the front by what is preferred, labels it, and writes each plan out. */
export function assemblePlans(
  world: World,
  prepared: Prepared,
  looks: Looks,
  candidates: readonly Candidate[],
): Plan[] {
  const sorted = [...candidates].sort((a, b) => byPreference(prepared.question.prefer, a.vector, b.vector));
  const labels = labelsOf(sorted.map(({ vector }) => vector));
  // Plans that differ only in what is bought make the same fork of it.
  const known = new Map<string, PlanEffects>();
  const effectsOf = ({ values, build }: Candidate): PlanEffects => {
    const key = values.join(' ');
    const found = known.get(key) ?? planEffects(world.catalog, prepared, build);
    known.set(key, found);
    return found;
  };
  return sorted.map((candidate, at) =>
    assemble(world, prepared, looks, candidate, labels[at] ?? [], effectsOf(candidate)),
  );
}

function labelsOf(vectors: readonly PlanVector[]): Label[][] {
  const labels: Label[][] = vectors.map(() => []);
  labels[0]?.push('recommended');
  const best = (label: Label, value: (vector: PlanVector) => number): void => {
    let at = -1;
    for (const [index, vector] of vectors.entries()) {
      if (Number.isNaN(value(vector))) continue;
      const leader = vectors[at];
      if (!leader || value(vector) < value(leader)) at = index;
    }
    labels[at]?.push(label);
  };
  best('cheapest', (vector) => (vector[3] > 0 ? Number.NaN : vector[0]));
  best('quickest', (vector) => vector[1]);
  best('soonest', (vector) => vector[2]);
  return labels;
}

function assemble(
  world: World,
  prepared: Prepared,
  looks: Looks,
  candidate: Candidate,
  label: readonly Label[],
  { effects, flags }: PlanEffects,
): Plan {
  const { build, work, purchase, vector, labour } = candidate;
  const [total, minutes, days, unpriced, unknowns] = vector;
  const steps = planSteps(world, prepared, looks, candidate);
  const lines = planLines(world, prepared, candidate);
  return {
    label,
    build: Object.fromEntries(build.slots),
    chassis: build.chassis.id,
    settings: settingsInMm(build.settings),
    changes: work.changed
      .filter((slot) => build.slots.has(slot))
      .map((slot) => ({
        slot,
        from: prepared.now.build.slots.get(slot) ?? null,
        to: build.slots.get(slot) ?? null,
      })),
    lines: prepared.question.why ? explainLines(world, prepared, candidate, lines) : lines,
    steps,
    tools: planTools(world, steps),
    money: {
      parts: money(world, purchase.parts),
      supplies: money(world, purchase.supplies),
      labour: money(world, labour),
      total: money(world, minor(total)),
      currency: world.catalog.currency,
      atLeast: unpriced > 0 || !world.hasShop,
      unpriced,
      tax: taxOf(world, world.shop, minor(total)),
    },
    minutes,
    readyInDays: Number.isFinite(days) ? days : null,
    unknowns,
    effects,
    flags: [...planFlags(world, prepared, candidate), ...flags],
  };
}

/** Tax in the total, or to be added to it, rounded half up. The rate is in per cent with up to three decimals. */
function taxOf(world: World, shop: Shop, total: Minor): Plan['money']['tax'] {
  if (!shop.tax) return null;
  const { rate, included } = shop.tax;
  const thousandths = Math.round(rate * 1000);
  const amount = multiplyDivide(total, thousandths, included ? 100_000 + thousandths : 100_000);
  return { rate, included, amount: money(world, minor(amount)) };
}

/** Settings by name in mm. */
export const settingsInMm = (settings: ReadonlyMap<string, Micrometres>): Record<string, number> =>
  Object.fromEntries([...settings].map(([name, value]) => [name, value / 1000]));
