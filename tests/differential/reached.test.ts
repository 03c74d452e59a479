import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { askIn } from '../support/ask.ts';
import { type Loaded, loadCatalogFolder } from '../support/demo.ts';
import { bought, changes, lines, money, onlyPlan, steps } from '../support/plan-views.ts';
import { bookOf } from './book-of.ts';
import { disagreements } from './share.ts';

const paper = fileURLToPath(new URL('../worked/paper', import.meta.url));
const WRITTEN = 'changes: [lowers, wipers]';
const ALWAYS = 'renews: [{ slot: wipers, when: always }]';
const fork = { chassis: 'ombry-622', travelNow: 120 };

/** The paper catalogue of docs/model.md, section 9, in which no operation `changes` the wipers: one renews them, always or with a service. */
const onlyRenewed = (when: 'always' | 'with-service'): Promise<Loaded> =>
  loadCatalogFolder(paper, {
    instead: [
      [WRITTEN, 'changes: [lowers]'],
      [ALWAYS, ALWAYS.replace('always', when)],
    ],
  });

const questions = [
  { ...fork, wants: { renew: ['wipers'] } },
  { ...fork, wants: { renew: ['wipers', 'foot-seals'] } },
  { ...fork, wants: { travel: 100, renew: ['wipers'] } },
  { ...fork, wants: { wheel: 584, travel: 130, renew: ['wipers'] } },
  { ...fork, wants: { travel: 140, use: ['OM-W'] } },
  { ...fork, wants: { service: ['ombry-lower-leg'] } },
  { ...fork, wants: { service: ['ombry-lower-leg'], renew: ['wipers'] } },
];

// docs/model.md, section 5: an operation reaches a slot that it changes, or renews always.
describe('a slot that no operation changes and one renews', () => {
  // start 5, lowers off 10, wipers 10, lowers on 10, finish 5: 40 min, 40.00. Two wipers 12.00. Washers (lowers on) and 5 + 10 + 5 = 20 mL
  // of oil: the opening kit 9.00, against 2.00 + 8.00. Gloves 1.00. 12 + 9 + 1 + 40 = 62.00.
  it('always: to renew it, that operation is done with what it requires', async () => {
    const plan = onlyPlan(askIn(await onlyRenewed('always'), { ...fork, wants: { renew: ['wipers'] } }));
    expect(steps(plan)).toEqual(
      ['start', 'lowers-off', 'wipers', 'lowers-on', 'finish'].map((name) => `ombry-${name}`),
    );
    expect([changes(plan), lines(plan, 'remove')]).toEqual([[], ['2 OM-W']]);
    expect(bought(plan)).toEqual([
      '1 OM-GLOVE-2 x 1.00 = 1.00, 0 days',
      '1 OM-K-OPEN x 9.00 = 9.00, 0 days',
      '2 OM-W x 6.00 = 12.00, 0 days',
    ]);
    expect([money(plan), plan.minutes, plan.readyInDays]).toEqual([['21.00', '1.00', '40.00', '62.00'], 40, 0]);
  });

  it('with a service: only where that service is wanted', async () => {
    const loaded = await onlyRenewed('with-service');
    expect(askIn(loaded, { ...fork, wants: { renew: ['wipers'] } }).status).toBe('impossible');
    const wants = { renew: ['wipers'], service: ['ombry-lower-leg'] };
    expect(lines(onlyPlan(askIn(loaded, { ...fork, wants })), 'remove')).toEqual(['2 OM-W']);
  });

  it.each(['always', 'with-service'] as const)('%s: engine and oracle answer alike', async (when) => {
    const loaded = await onlyRenewed(when);
    expect(disagreements({ loaded, book: bookOf(loaded) }, questions)).toEqual([]);
  });
});
