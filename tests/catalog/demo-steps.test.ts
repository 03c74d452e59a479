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

  // Common practice, no source: release all pressure, turn preload off, before anything is opened. Crowns are clamps around a closed leg.
  it('whatever opens a leg comes after the step that takes the load off, or warns of it itself', () => {
    const before = (id: string): readonly string[] => {
      const required = catalog.operations.get(id)?.requires ?? [];
      return [id, ...required.flatMap(before)];
    };
    const warns = (id: string): boolean =>
      catalog.operations.get(id)?.cautions.some((caution) => caution.includes('eye protection')) ?? false;
    const closed = new Set(['crown-top', 'crown-lower', 'steerer', 'stanchion-height']);
    const opening = [...catalog.families.values()].flatMap((family) =>
      operations.filter(
        ({ families, changes }) =>
          families.includes(family.id) &&
          changes.some((slot) => !closed.has(slot) && family.slots.some(({ name }) => name === slot)),
      ),
    );
    expect(opening.length).toBeGreaterThan(60);
    expect(opening.filter(({ id }) => !before(id).some(warns)).map(({ id }) => id)).toEqual([]);
  });

  it('a coil is out before what it stands on is drawn out below it, and in again before the cap', () => {
    const coils = operations.filter(({ changes }) => changes.includes('coil'));
    expect(coils.length).toBe(4);
    for (const { id, families, order, closedBy } of coils) {
      const own = operations.filter((one) => one.families.some((family) => families.includes(family)));
      const plunger = own.find(({ changes }) => changes.includes('spring'));
      const capOff = own.find(({ changes }) => changes.includes('top-cap'));
      const [back, cap] = [closedBy, capOff?.closedBy].map((one) => catalog.operations.get(one ?? ''));
      expect([id, order < (plunger?.order ?? 0)]).toEqual([id, true]);
      expect([id, (back?.order ?? 0) < (cap?.order ?? 0)]).toEqual([id, true]);
    }
  });

  it('torques: the torque tool that suits best is the one that the step names', () => {
    const ranges = [...catalog.tools.values()].flatMap(({ id, torque }) =>
      torque === null ? [] : [{ id, ...torque }],
    );
    const tightened = operations.flatMap(({ id, tools, fasteners }) =>
      fasteners.map(({ name, torque }) => ({ step: `${id}, ${name}`, tools, torque })),
    );
    expect(tightened.length).toBeGreaterThan(60);
    for (const { step, tools, torque } of tightened) {
      const [best] = ranges
        .filter(({ least, greatest }) => least <= torque && torque <= greatest)
        .sort((one, other) => one.greatest - other.greatest);
      expect([step, best === undefined || tools.includes(best.id)]).toEqual([step, true]);
    }
  });

  it('every step says in words what is done, and cites a document with its page', () => {
    expect(operations.filter(({ text }) => text.trim() === '').map(({ id }) => id)).toEqual([]);
    const uncited = operations.filter(({ source }) => source.document === null || source.page === null);
    expect(uncited.map(({ id }) => id)).toEqual([]);
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
