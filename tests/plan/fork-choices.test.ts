import { describe, expect, it } from 'vitest';
import { ask, choices, choicesSchema, doesFit, questionSchema, reach } from '../../src/plan/index.ts';
import { demoFolder, loadCatalogFolder } from '../support/demo.ts';

const { world } = await loadCatalogFolder(demoFolder);
const { catalog } = world;

function offered(question: Parameters<typeof choices>[1]) {
  const answer = choices(world, question);
  if ('faults' in answer) throw new Error(JSON.stringify(answer.faults));
  return choicesSchema.parse(answer);
}

describe('choices', () => {
  // demo-catalog/quennet.yaml: quennet-622 left the works at 150 and at 160 mm, usually at 150; the family has bodies for 559, 584
  // and 622; its seven cartridges give 120 to 180 mm, of which this chassis takes up to 160.
  it('quennet-622: what stands in the catalogue', () => {
    const { travelNow, travelsNow, travelsBuilt, wheels, travels, services, slots } = offered({
      chassis: 'quennet-622',
    });
    expect({ travelNow, travelsNow, travelsBuilt, wheels, travels }).toEqual({
      travelNow: 150,
      travelsNow: [150, 160],
      travelsBuilt: [120, 130, 140],
      wheels: [559, 584, 622],
      travels: [120, 130, 140, 150, 160, 170, 180],
    });
    expect(services.map(({ id }) => id)).toContain('quennet-lower-leg-service');
    const spacers = slots.find(({ name }) => name === 'volume-spacers');
    expect(spacers).toMatchObject({ counted: true, mayBeEmpty: true, held: { sku: 'QN-VS', quantity: 1 } });
  });

  it('the travel now counts: other contents are held', () => {
    const held = (travelNow: number) =>
      offered({ chassis: 'quennet-622', travelNow }).slots.find(({ name }) => name === 'spring')?.held?.sku;
    expect(held(150)).not.toBe(held(160));
  });

  it('a travel that two builds have: what they share is held, and the slot in which they differ is not', () => {
    // at 130 mm the usual builds of 150 and of 160 mm differ in the damper alone
    const { slots } = offered({ chassis: 'quennet-622', travelNow: 130 });
    const held = (slot: string) => slots.find(({ name }) => name === slot)?.held?.sku;
    expect([held('spring'), held('damper')]).toEqual(['QN-AIR-192', undefined]);
  });

  it('a fork that nobody knows, or not at that travel: the fault of a plan', () => {
    expect(choices(world, { chassis: 'quenet-622' })).toMatchObject({
      faults: [{ code: 'unknown-chassis', params: { nearest: expect.arrayContaining(['quennet-622']) } }],
    });
    expect(choices(world, { chassis: 'quennet-622', travelNow: 95 })).toMatchObject({
      faults: [{ code: 'no-build-now' }],
    });
    expect(choices(world, {})).toMatchObject({ faults: [{ code: 'chassis-or-bike' }] });
  });

  for (const chassis of ['quennet-622', 'brastle-622', 'odrun-584', 'pinnet-507', 'yestrik-559']) {
    it(`${chassis}: travels are those of the reach map, verdicts those of fit`, () => {
      const offer = offered({ chassis });
      const map = reach(world, { chassis, travelNow: offer.travelNow ?? 0 });
      expect('travels' in map && map.travels).toEqual(offer.travels);
      for (const { role, parts } of offer.slots) {
        if (role === 'upper' || role === 'lowers') continue;
        for (const { sku, verdict } of parts)
          expect([sku, doesFit(catalog, { part: sku, chassis })]).toEqual([sku, expect.objectContaining({ verdict })]);
      }
    });

    it(`${chassis}: a travel now is offered where a plan takes it, and nowhere else`, () => {
      const { travels, travelsNow, travelsBuilt } = offered({ chassis });
      for (const travelNow of travels) {
        const reply = ask(world, questionSchema.parse({ chassis, travelNow, wants: { travel: travelNow } }));
        const codes = reply.kind === 'faults' ? reply.faults.map(({ code }) => code) : [];
        const taken = codes.every((code) => code === 'several-builds-now');
        expect([travelNow, [...travelsNow, ...travelsBuilt].includes(travelNow)]).toEqual([travelNow, taken]);
      }
    });

    it(`${chassis}: a bike that is not offered cannot be had, with the fork as it is or at any travel`, () => {
      const { bikes, travels, travelNow } = offered({ chassis });
      const offeredIds = bikes.map(({ id }) => id);
      const others = [...catalog.bikes.keys()].filter((id) => !offeredIds.includes(id));
      expect(others.length).toBeGreaterThan(0);
      for (const onto of others) {
        for (const travel of [travels[0], travels.at(-1)]) {
          const question = questionSchema.parse({ chassis, travelNow, onto, wants: { travel }, stepLimit: 200_000 });
          const reply = ask(world, question);
          expect([onto, travel, reply.kind === 'answer' && reply.answer.plans.length]).toEqual([onto, travel, 0]);
        }
      }
    });
  }
});
