import { describe, expect, it } from 'vitest';
import { ask } from '../../src/plan/index.ts';
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
