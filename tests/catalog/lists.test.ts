import { describe, expect, it } from 'vitest';
import { listsOf } from '../../src/catalog/index.ts';
import { demoFolder, loadCatalogFolder } from '../support/demo.ts';

const loaded = loadCatalogFolder(demoFolder);

describe('lists', () => {
  it('each list: holds what a walk through the whole catalogue finds, in its order', async () => {
    const { catalog } = (await loaded).world;
    const lists = listsOf(catalog);
    const roles = new Set([...catalog.parts.values()].map(({ role }) => role));
    for (const family of [...catalog.families.keys(), 'nobody']) {
      expect(lists.chassisOf(family)).toEqual([...catalog.chassis.values()].filter((one) => one.family === family));
      for (const [list, all] of [
        [lists.operationsOf(family), catalog.operations],
        [lists.servicesOf(family), catalog.services],
      ] as const)
        expect(list).toEqual([...all.values()].filter(({ families }) => families.includes(family)));
      for (const role of roles) {
        const about = [...catalog.parts.values()].filter(
          (part) => part.role === role && part.fits.some((clause) => clause.family === family),
        );
        expect(lists.partsAbout(role, family)).toEqual(about);
      }
    }
    for (const role of [...roles, 'nothing'])
      expect(lists.partsOf(role)).toEqual([...catalog.parts.values()].filter((part) => part.role === role));
  });
});
