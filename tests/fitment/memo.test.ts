import { describe, expect, it } from 'vitest';
import type { Catalog, Chassis, Part } from '../../src/catalog/index.ts';
import { type Identity, rememberedFit, UNKNOWN_IDENTITY } from '../../src/fitment/index.ts';
import { demoFolder, loadCatalogFolder } from '../support/demo.ts';

const loaded = loadCatalogFolder(demoFolder);

async function subject(): Promise<{ readonly catalog: Catalog; readonly part: Part; readonly chassis: Chassis }> {
  const { catalog } = (await loaded).world;
  const [part, chassis] = [catalog.parts.get('QN-AIR-192'), catalog.chassis.get('quennet-622')];
  if (!part || !chassis) throw new Error('the demo catalogue has lost them');
  return { catalog, part, chassis };
}

describe('remembered fit', () => {
  it('the same question: is worked out once, null results too', async () => {
    const { catalog, part, chassis } = await subject();
    let worked = 0;
    const of = rememberedFit(() => {
      worked++;
      return null;
    });
    expect([1, 2, 3].map(() => of(catalog, part, chassis, UNKNOWN_IDENTITY))).toEqual([null, null, null]);
    expect(worked).toBe(1);
  });

  it('another catalogue, chassis, serial number, month or generation: is worked out anew', async () => {
    const { catalog, part, chassis } = await subject();
    const of = rememberedFit((where, _part, body, identity: Identity) => ({ where, body, identity }));
    const identities: readonly Identity[] = [
      { ...UNKNOWN_IDENTITY, serial: 'A1' },
      { ...UNKNOWN_IDENTITY, month: '2024-01' },
      { ...UNKNOWN_IDENTITY, serial: 'A1', month: '2024-01' },
      { ...UNKNOWN_IDENTITY, generations: [] },
      { ...UNKNOWN_IDENTITY, generations: ['first'] },
    ];
    for (const identity of identities) expect(of(catalog, part, chassis, identity).identity).toEqual(identity);
    const [copy, body] = [{ ...catalog }, { ...chassis }];
    expect(of(copy, part, chassis, UNKNOWN_IDENTITY).where).toBe(copy);
    expect(of(catalog, part, body, UNKNOWN_IDENTITY).body).toBe(body);
  });

  it('more serial numbers than are kept: each answer is still its own', async () => {
    const { catalog, part, chassis } = await subject();
    const of = rememberedFit((_catalog, _part, _chassis, { serial }: Identity) => ({ serial }));
    for (let round = 0; round < 2; round++) {
      for (let number = 0; number < 300; number++) {
        const serial = `A${number}`;
        expect(of(catalog, part, chassis, { ...UNKNOWN_IDENTITY, serial })).toEqual({ serial });
      }
    }
  });
});
