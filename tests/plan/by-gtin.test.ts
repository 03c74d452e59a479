import { describe, expect, it } from 'vitest';
import { ask } from '../../src/plan/index.ts';
import { askDemo } from '../support/ask.ts';
import { demoFolder, loadCatalogFolder } from '../support/demo.ts';

const { world } = await loadCatalogFolder(demoFolder);
const quennet = { chassis: 'quennet-622', travelNow: 150 };
const [CARTRIDGE, OIL] = ['2100001001926', '2870004001208'];

describe('a question by GTINs', () => {
  it('use: a part or a pack by the number that a scanner reads, with zeros in front or without, is its SKU', async () => {
    const bySku = await askDemo({ ...quennet, wants: { use: ['QN-AIR-192', 'VH-BATH-L-120'] } });
    expect(bySku.status).toBe('answered');
    for (const zeros of ['', '0'])
      expect(await askDemo({ ...quennet, wants: { use: [`${zeros}${CARTRIDGE}`, `${zeros}${OIL}`] } })).toEqual(bySku);
  });

  it('with, maybe and have: the same', async () => {
    const asked = (spring: string, oil: string) => ({
      ...quennet,
      travelNow: 130,
      with: { spring: { sku: spring, quantity: 1 }, damper: { sku: 'QN-DMP-155', quantity: 1 } },
      maybe: { spring: [{ sku: spring, quantity: 1 }] },
      have: [{ sku: oil, quantity: 1 }],
      wants: { travel: 150 },
    });
    expect(await askDemo(asked(CARTRIDGE, OIL))).toEqual(await askDemo(asked('QN-AIR-192', 'VH-BATH-L-120')));
  });

  it('mistyped: the last digit gives it away, and nothing is worked out', () => {
    const reply = ask(world, { ...quennet, wants: { use: ['2100001001929'] } });
    expect(reply).toMatchObject({
      kind: 'faults',
      faults: [{ code: 'gtin-mistyped', params: { number: '2100001001929', digit: '6' } }],
    });
  });
});
