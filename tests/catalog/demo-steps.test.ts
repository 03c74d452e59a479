import { describe, expect, it } from 'vitest';
import { demoFolder, loadCatalogFolder } from '../support/demo.ts';

const { catalog } = (await loadCatalogFolder(demoFolder)).world;
const operations = [...catalog.operations.values()];

describe('steps of the demo catalogue', () => {
  it('wheel and calliper go back: with torques of their own, the document and its page', () => {
    const handOver = operations.filter(({ text }) => /wheel and (?:brake )?calliper back/i.test(text));
    expect(new Set(handOver.flatMap(({ families }) => families))).toEqual(new Set(catalog.families.keys()));
    for (const { id, fasteners, source } of handOver) {
      expect([id, fasteners.map(({ name }) => name.split(' of ')[0])]).toEqual([id, ['wheel axle', 'calliper bolt']]);
      for (const { torque } of fasteners) expect(torque).toBeGreaterThan(0);
      expect([id, source.page === null]).toEqual([id, false]);
    }
  });

  it('calliper bolts: one torque wherever they are tightened', () => {
    const torques = operations.flatMap(({ fasteners }) =>
      fasteners.filter(({ name }) => name === 'calliper bolt').map(({ torque }) => torque),
    );
    expect(torques.length).toBeGreaterThan(4);
    expect(new Set(torques).size).toBe(1);
  });

  it('a step that speaks of the hook lists it among its tools', () => {
    const hooked = operations.filter(({ text }) => text.includes('the hook'));
    expect(hooked.length).toBeGreaterThan(3);
    for (const { id, tools } of hooked) expect([id, tools.includes('spacer-hook')]).toEqual([id, true]);
  });

  it('volume spacers on a cartridge: the old ones move over to a new cartridge, and the step says so', () => {
    const spacers = operations.filter(
      ({ changes, text }) => changes.includes('volume-spacers') && !text.includes('underside of the cap'),
    );
    expect(spacers.length).toBeGreaterThan(6);
    for (const { id, text } of spacers) expect([id, text.includes('they move over')]).toEqual([id, true]);
  });
});
