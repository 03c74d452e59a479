import { describe, expect, it } from 'vitest';
import type { Answer, QuestionInput } from '../../src/plan/index.ts';
import { hold } from './hold.ts';
import { answerOf, type Case, demoCases, paperCases } from './subject.ts';

type Plan = Answer['plans'][number];

/** The question that turns what a plan built into what was there, with what came out of the fork at hand. */
function wayBack({ question }: Case, now: Answer['now'], plan: Plan): QuestionInput {
  const changed = plan.changes.filter(({ from }) => from !== null);
  const spacers = now.build['volume-spacers']?.quantity ?? 0;
  return {
    chassis: plan.chassis,
    travelNow: plan.effects.travel.to,
    with: plan.build,
    allowUnknown: question.allowUnknown ?? false,
    wants: {
      travel: now.travel,
      ...('volume-spacers' in now.build ? { spacers } : {}),
      use: changed.flatMap(({ slot, from }) => (slot.endsWith('spacers') || from === null ? [] : [from.sku])),
    },
    have: plan.lines.flatMap(({ action, sku, quantity }) =>
      action === 'remove' && sku !== null ? [{ sku, quantity, used: true }] : [],
    ),
  };
}

/** Slots that wear or are spoiled by opening are renewed on the way: they are not compared. */
const lasting = ({ subject }: Case, chassis: string, build: Plan['build']): Plan['build'] => {
  const family = subject.catalog.families.get(subject.catalog.chassis.get(chassis)?.family ?? '');
  const renewed = new Set(family?.slots.filter(({ singleUse, wears }) => singleUse || wears).map(({ name }) => name));
  return Object.fromEntries(Object.entries(build).filter(([slot]) => !renewed.has(slot)));
};

/** Only changes within the fork: what the bike needs is not part of the way back. */
function check(one: Case): void {
  const { now, plans } = answerOf(one);
  const moved = plans.filter(({ changes }) => changes.length > 0);
  for (const plan of moved) {
    const back = answerOf({ ...one, question: wayBack(one, now, plan) });
    const before = lasting(one, now.chassis, now.build);
    if (JSON.stringify(lasting(one, plan.chassis, plan.build)) === JSON.stringify(before)) {
      expect(['answered', 'nothing-to-do']).toContain(back.status);
      continue;
    }
    expect([back.status, JSON.stringify(one.question)]).toEqual(['answered', JSON.stringify(one.question)]);
    expect(back.plans.map(({ build }) => lasting(one, now.chassis, build))).toContainEqual(before);
    const restored = back.plans.find(
      ({ build }) => JSON.stringify(lasting(one, now.chassis, build)) === JSON.stringify(before),
    );
    const outOfTheFork = new Set(plan.lines.filter(({ action }) => action === 'remove').map(({ sku }) => sku));
    const wearing = Object.entries(now.build).flatMap(([slot, content]) =>
      slot in before || content === null ? [] : [content.sku],
    );
    const bought = restored?.lines.filter(({ action, sku }) => action === 'buy' && outOfTheFork.has(sku)) ?? [];
    expect(bought.filter(({ sku }) => !wearing.includes(sku ?? '')).map(({ sku }) => sku)).toEqual([]);
  }
}

describe('there and back', () => {
  it('law: with what came out at hand, the way back restores the build and buys none of it (paper catalogue)', () => {
    hold('there and back, paper', 60, paperCases, check);
  });
  it('law: with what came out at hand, the way back restores the build and buys none of it (demo catalogue)', () => {
    hold('there and back, demo', 12, demoCases, check);
  });
});
