import { describe, expect, it } from 'vitest';
import { ask } from '../../src/plan/index.ts';
import { takenBy } from '../../src/report/text/torque.ts';
import { en } from '../../src/report/words/en.ts';
import { askDemo } from '../support/ask.ts';
import { demoFolder, loadCatalogFolder } from '../support/demo.ts';
import { planAt } from '../support/plan-views.ts';

describe('torque tools of a job, quennet-622 from 150 to 130 mm', () => {
  const question = { chassis: 'quennet-622', travelNow: 150, wants: { travel: 130 } };

  // ISO 6789, type II class A: 4 % where the greatest torque is above 10 N·m. 22 x 0.04 = 0.88; 6.5 x 0.04 = 0.26; 8 x 0.04 = 0.32.
  it('each fastener: the wrench that suits, and how far off it may be', async () => {
    const { steps } = planAt(await askDemo(question), 0);
    const found = steps.flatMap(({ fasteners }) => fasteners.map(({ torque, wrench }) => [torque, wrench]));
    expect(found).toContainEqual(['22 N·m', { tool: 'torque-high', deviation: 0.88 }]);
    expect(found).toContainEqual(['6.5 N·m', { tool: 'torque-low', deviation: 0.26 }]);
    expect(found).toContainEqual(['8 N·m', { tool: 'torque-low', deviation: 0.32 }]);
  });

  it('a shop that has not the large one: none is named for the cap, and the small one is for the feet', async () => {
    const { world } = await loadCatalogFolder(demoFolder);
    const tools = new Set([...world.catalog.tools.keys()].filter((id) => id !== 'torque-high'));
    const reply = ask({ ...world, shop: { ...world.shop, tools } }, question);
    if (reply.kind === 'faults') throw new Error(JSON.stringify(reply.faults));
    const fasteners = reply.answer.plans[0]?.steps.flatMap((step) => step.fasteners) ?? [];
    expect(fasteners.find(({ torque }) => torque === '22 N·m')?.wrench).toBeNull();
    expect(fasteners.find(({ torque }) => torque === '8 N·m')?.wrench?.tool).toBe('torque-low');
  });
});

describe('retaining rings and hex keys of a job', () => {
  // 29.4 mm of bore: DIN 5256 J2 is for 19 to 60 mm, tips of 1.8 mm (from memory); J1 ends at 25 mm, J3 begins at 40 mm.
  it('quennet: the pliers by the bore that the ring sits in, said with the tools to lay out', async () => {
    const answer = await askDemo({ chassis: 'quennet-622', travelNow: 150, wants: { travel: 130 } });
    const { steps, tools } = planAt(answer, 0);
    const rings = steps.flatMap(({ id, rings: all, tools: named }) =>
      all.map((ring) => ({ id, ...ring, named: named.includes('ring-pliers') })),
    );
    const ring = { bore: 29.4, tool: 'ring-pliers', pliers: [{ size: 'J2', tip: 1.8 }], named: true };
    expect(rings).toEqual([
      { id: 'quennet-spring-out', ...ring },
      { id: 'quennet-spring-in', ...ring },
    ]);
    expect(tools.map(({ id }) => id)).toContain('ring-pliers');
    expect(takenBy({ language: en }, planAt(answer, 0), 'ring-pliers')).toEqual([
      'DIN 5256 size J2 with tips of 1.8 mm, for the ring in a bore of 29.4 mm',
    ]);
    expect(takenBy({ language: en }, planAt(answer, 0), 'hex-5')).toEqual([]);
  });

  // ISO 4762: an M3 cap screw has a socket of 2.5 mm. A foot bolt is not called one: its key is the maker's word.
  it('quennet: the key of a cap screw by its thread, and none for a bolt of its own kind', async () => {
    const answer = await askDemo({ chassis: 'quennet-622', travelNow: 150, wants: { travel: 130 } });
    const bolts = planAt(answer, 0).steps.flatMap((step) =>
      step.fasteners.map(({ name, thread, key }) => [name, thread, key]),
    );
    expect(bolts).toContainEqual(['dial screw', 'M3', 2.5]);
    expect(bolts).toContainEqual(['foot bolt', 'M8', null]);
  });
});
