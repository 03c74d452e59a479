import { describe, expect, it } from 'vitest';
import { bookOf } from '../../differential/book-of.ts';
import { disagreements } from '../../differential/share.ts';
import { askIn } from '../../support/ask.ts';
import { loadDemoWith } from '../../support/demo.ts';
import { changes, lines, money, onlyPlan } from '../../support/plan-views.ts';
import { conflicts, members, refused, verdict, waysOut } from './refusals.ts';

/** A bike of which nothing is told but hub and brake. */
const bike = (id: string, hub: string, rotor: string, adaptor: string, calliper: string): string => `
  - id: ${id}
    maker: dallowick
    name: ${id}
    wheel: 622
    slots: { hub: ${hub}, rotor: ${rotor}, adaptor: ${adaptor}, calliper: ${calliper} }
    source: { document: dallowick-frames, page: 20 }`;

const bikes = loadDemoWith({
  yaml: `bikes:${[
    bike('tabs-before', 'ST-HUB-15-110', 'ST-RT-180', 'ST-AD-T-20', 'ST-CAL'),
    bike('bare-post', 'ST-HUB-9-100', 'ST-RT-160', 'null', 'ST-CAL'),
    bike('bare-flat', 'ST-HUB-15-110', 'ST-RT-180', 'null', 'ST-CAL-F'),
    bike('bare-post-12', 'ST-HUB-12-100-S', 'ST-RT-160-S', 'null', 'ST-CAL'),
    bike('bare-flat-12', 'ST-HUB-12-100-S', 'ST-RT-160-S', 'null', 'ST-CAL-F'),
  ].join('')}`,
});

const quennet = { chassis: 'quennet-622', travelNow: 150 };
const sennick = { chassis: 'sennick-622', travelNow: 120 };
const tabs = { chassis: 'yestrik-622', travelNow: 80 };
const flat = { chassis: 'yestrik-622-12x100', travelNow: 65 };

describe('adaptor', () => {
  // The fork's mount is a post one for 160 mm, the bike's adaptor is for tabs. 160 + 20 = 180: 13.90, 9 min 10.35. Total 24.25.
  it('for another mount: the one for this mount, with the step to the same rotor', async () => {
    const plan = onlyPlan(askIn(await bikes, { ...sennick, onto: 'tabs-before' }));
    expect(changes(plan)).toEqual(['adaptor: ST-AD-T-20 -> ST-AD-20']);
    expect(lines(plan, 'remove')).toEqual(['1 ST-AD-T-20']);
    expect([money(plan), plan.minutes, plan.readyInDays]).toEqual([['13.90', '0.00', '10.35', '24.25'], 9, 0]);
  });

  // The fork takes 180 mm bare. 9 min 10.35 and nothing to buy.
  it('for another mount, on a fork that needs none: it comes out', async () => {
    const plan = onlyPlan(askIn(await bikes, { ...quennet, onto: 'tabs-before' }));
    expect(changes(plan)).toEqual(['adaptor: ST-AD-T-20 -> -']);
    expect([money(plan)[3], plan.minutes]).toEqual(['10.35', 9]);
  });

  // A calliper for posts does not sit on tabs, though the rotor is the native one. 11.90 and 9 min 10.35: 22.25.
  it('none so far, and the calliper does not sit on the mount: one that adds nothing to the rotor', async () => {
    const plan = onlyPlan(askIn(await bikes, { ...tabs, onto: 'bare-post' }));
    expect(changes(plan)).toEqual(['adaptor: - -> ST-AD-T-0']);
    expect([money(plan)[3], plan.minutes, plan.readyInDays]).toEqual(['22.25', 9, 0]);
  });
});

describe('calliper', () => {
  it('flat, on a flat mount: nothing to do', async () => {
    expect(askIn(await bikes, { ...flat, onto: 'bare-flat-12' }).status).toBe('nothing-to-do');
  });

  // No adaptor brings a calliper of one kind to a mount of the other, and another calliper is not fitted at this bench.
  it.each([
    ['for flat mounts, on a fork with a post mount', { ...quennet, onto: 'bare-flat' }, []],
    // Other lowers of this family have tabs: that mount is kept.
    ['for posts, on a fork with a flat mount', { ...flat, onto: 'bare-post-12' }, ['kept kept-trait']],
  ])('%s: impossible, and the calliper is named', async (_what, question, kept) => {
    const answer = askIn(await bikes, question);
    expect(verdict(answer)).toEqual(refused('impossible'));
    expect(conflicts(answer)).toEqual([
      [...kept, 'rule dimension', 'rule dimension', 'rule dimension', 'rule no-operation', 'want want-onto'],
    ]);
    expect(
      members(answer, 'dimension')
        .map(({ params }) => [params.agreement, params.part, params.neighbour])
        .sort(),
    ).toEqual([
      ['brake-mount', 'adaptor', 'chassis'],
      ['calliper-mount', 'calliper', 'adaptor'],
      ['calliper-on-fork', 'calliper', 'chassis'],
    ]);
    expect(members(answer, 'no-operation')[0]?.params).toMatchObject({ slot: 'calliper' });
    expect(waysOut(answer)).toEqual([]);
  });

  it('engine and oracle answer alike', async () => {
    const loaded = await bikes;
    const questions = [quennet, sennick, tabs, flat].flatMap((fork) =>
      ['tabs-before', 'bare-post', 'bare-flat', 'bare-post-12', 'bare-flat-12'].map((onto) => ({ ...fork, onto })),
    );
    expect(disagreements({ loaded, book: bookOf(loaded) }, questions)).toEqual([]);
  });
});
