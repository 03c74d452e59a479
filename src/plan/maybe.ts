import type { Content } from '../catalog/index.ts';
import { axleToCrown, contentKey, travelOf } from '../fork/index.ts';
import type { Answer } from './answer.ts';
import type { Prepared } from './prepare.ts';

/** Most cases that a question with possible contents is worked out for. */
export const MOST_CASES = 64;

/** One thing that the fork in front of you may be. */
export interface Case {
  readonly contents: ReadonlyMap<string, Content>;
  readonly prepared: Prepared;
}

/** Every combination of what slots hold and may hold, the assumed one first. The travel of each is what its build gives. */
export function casesOf(prepared: Prepared, catalog: Parameters<typeof travelOf>[0]): Case[] {
  const { now, question } = prepared;
  let combinations: ReadonlyMap<string, Content>[] = [new Map()];
  for (const [slot, contents] of Object.entries(question.maybe)) {
    const assumed = now.build.slots.get(slot) ?? null;
    const all = new Map([assumed, ...contents].map((content) => [contentKey(content), content]));
    combinations = combinations.flatMap((before) =>
      [...all.values()].map((content) => new Map([...before, [slot, content]])),
    );
  }
  return combinations.map((contents) => {
    const build = { ...now.build, slots: new Map([...now.build.slots, ...contents]) };
    const travel = build.slots.has('spring') ? (travelOf(catalog, build, now.identity) ?? now.travel) : now.travel;
    return { contents, prepared: { ...prepared, now: { ...now, build, travel } } };
  });
}

/** What the cases have in common, what tells them apart, and what to have in hand so that none of them stops the job. */
export function compareCases(cases: readonly Case[], answers: readonly Answer[]): NonNullable<Answer['cases']> {
  const rows = cases.map(({ contents, prepared }, at) => {
    const answer = answers[at];
    const plan = answer?.plans[0] ?? null;
    const { chassis, settings } = prepared.now.build;
    const crown = axleToCrown(chassis, prepared.now.travel, settings);
    return {
      contents: Object.fromEntries(contents),
      travelNow: prepared.now.travel / 1000,
      axleToCrownNow: crown === null ? null : Math.round(crown / 100) / 10,
      status: answer?.status ?? 'stopped',
      plan: plan ? { money: plan.money.total, minutes: plan.minutes, days: plan.readyInDays, buy: bought(plan) } : null,
    };
  });
  return {
    rows,
    sameInAll: new Set(rows.map(({ status, plan }) => JSON.stringify([status, plan]))).size === 1,
    decides: decidingLooks(cases, rows),
    covers: coverOf(rows.map(({ plan }) => plan?.buy ?? [])),
  };
}

type Cases = NonNullable<Answer['cases']>;
const bought = (plan: Answer['plans'][number]): Cases['covers'] =>
  plan.lines.filter(({ action }) => action === 'buy').map(({ sku, packs }) => ({ sku: sku ?? '', packs: packs ?? 0 }));

/** Looks and measurements that tell the cases apart: a length that differs in all of them comes before opening the fork. */
function decidingLooks(cases: readonly Case[], rows: Cases['rows']): Cases['decides'] {
  const distinct = (values: readonly (number | null)[]): boolean =>
    !values.includes(null) && new Set(values).size === values.length;
  const looks: Cases['decides'][number][] = [];
  if (distinct(rows.map(({ axleToCrownNow }) => axleToCrownNow))) {
    looks.push({
      code: 'measure-axle-to-crown',
      slot: null,
      values: rows.map(({ axleToCrownNow }) => `${axleToCrownNow} mm`),
    });
  } else if (distinct(rows.map(({ travelNow }) => travelNow))) {
    looks.push({ code: 'measure-travel', slot: null, values: rows.map(({ travelNow }) => `${travelNow} mm`) });
  }
  for (const slot of new Set(cases.flatMap(({ contents }) => [...contents.keys()]))) {
    looks.push({
      code: 'look-into-slot',
      slot,
      values: [...new Set(cases.map(({ contents }) => contentKey(contents.get(slot) ?? null) || 'none'))],
    });
  }
  return looks;
}

/** For each number the most packs that any case buys. */
function coverOf(all: readonly Cases['covers'][]): Cases['covers'] {
  const most = new Map<string, number>();
  for (const { sku, packs } of all.flat()) most.set(sku, Math.max(most.get(sku) ?? 0, packs));
  return [...most].sort().map(([sku, packs]) => ({ sku, packs }));
}
