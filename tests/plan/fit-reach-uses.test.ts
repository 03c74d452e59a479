import { describe, expect, it } from 'vitest';
import { doesFit, fitSchema, reach, reachSchema, uses, usesSchema } from '../../src/plan/index.ts';
import { fitDocument, reachDocument } from '../../src/report/fit-documents.ts';
import { en } from '../../src/report/words/en.ts';
import { demoFolder, loadCatalogFolder } from '../support/demo.ts';

const { world } = await loadCatalogFolder(demoFolder);
const { catalog } = world;

function verdict(part: string, chassis: string, more: { readonly serial?: string; readonly built?: string } = {}) {
  const answer = doesFit(catalog, { part, chassis, ...more });
  if ('faults' in answer) throw new Error(JSON.stringify(answer.faults));
  return fitSchema.parse(fitDocument(answer, en));
}

describe('fit', () => {
  it('fits: a clause says so, and says what it gives', () => {
    const answer = verdict('QN-AIR-192', 'quennet-622');
    expect(answer.verdict).toBe('fits');
    expect(answer.gives).toEqual({ travels: [130], volumeSpacers: [{ travel: null, standard: 3, greatest: 5 }] });
    expect(answer.reasons.map(({ code }) => code)).toEqual(['clause']);
  });

  it('fits-if: what the part needs in another slot is a condition', () => {
    const answer = verdict('QN-AIR-232', 'quennet-584-20x110');
    expect(answer.verdict).toBe('fits-if');
    expect(answer.conditions).toMatchObject([
      { code: 'condition-needs-slot', params: { slot: 'top-cap', anyOf: ['QN-CAP-DEEP'] } },
    ]);
  });

  it('fits-if: what must agree with a neighbour names the parts that may be in this fork and do', () => {
    const answer = verdict('AR-VS', 'arbrask-584');
    expect(answer.conditions.map(({ params, message }) => [params.measure, params.fitting, message])).toEqual([
      [
        'spacer-seat',
        [],
        'only where the spring in the fork has a spacer seat of screw-21; none that the catalogue lists for this fork states it.',
      ],
      [
        'bore',
        ['AR-PLG-170', 'AR-PLG-180'],
        'only where the spring in the fork has a bore of 31.6 mm; that is AR-PLG-170 or AR-PLG-180.',
      ],
    ]);
  });

  it('by GTIN: the part that bears it, with zeros in front or without; a mistyped one is said to be one', () => {
    const gtin = '2240002000105';
    const [sku] = [...catalog.parts.values()].flatMap((part) => (part.numbers.gtin === gtin ? [part.sku] : []));
    expect(sku).toBeDefined();
    for (const number of [gtin, `0${gtin}`]) {
      const answer = uses(catalog, number);
      expect('faults' in answer ? answer.faults : answer.part).toBe(sku);
      expect(verdict(number, 'brastle-622').part).toBe(sku);
    }
    // GS1: weights 3, 1, 3, ... from the right over 224000200010 give 15, so that the check digit is 5
    expect(uses(catalog, '2240002000106')).toMatchObject({
      faults: [{ code: 'gtin-mistyped', params: { number: '2240002000106', digit: '5' } }],
    });
    expect(uses(catalog, '6291041500213')).toMatchObject({ faults: [{ code: 'unknown-sku' }] });
  });

  it('no: the maker refuses, with the reason', () => {
    const answer = verdict('QN-AIR-212', 'quennet-559');
    expect(answer.verdict).toBe('no');
    expect(answer.reasons).toMatchObject([{ code: 'denied', source: { record: 'parts/QN-AIR-212#fits[2]' } }]);
  });

  it('no: a dimension contradicts, with both values', () => {
    const answer = verdict('VH-W-33', 'fennock-622');
    expect(answer.verdict).toBe('no');
    expect(answer.reasons).toMatchObject([
      { code: 'dimension-contradicts', params: { measure: 'seal-seat', own: '43 mm', other: '44.5 mm' } },
    ]);
  });

  it('unknown: the catalogue is silent and does not claim to be complete, though every number agrees', () => {
    const answer = verdict('VH-W-33-FL', 'quennet-622');
    expect(answer.verdict).toBe('unknown');
    expect(answer.reasons.map(({ code }) => code)).toEqual(['silent']);
  });

  it('fits-if: without a serial number the generation is a condition, with one it is settled', () => {
    const open = verdict('FN-AIR-140-N', 'fennock-622');
    expect(open.verdict).toBe('fits-if');
    expect(open.conditions.map(({ code }) => code)).toContain('condition-dimension');
    const late = verdict('FN-AIR-140-N', 'fennock-622', { serial: 'FN30000' });
    expect(late.conditions.map(({ code }) => code)).not.toContain('condition-dimension');
    const early = verdict('FN-AIR-140-N', 'fennock-622', { built: '2024-01' });
    expect(early.verdict).toBe('no');
    expect(early.reasons[0]?.params).toMatchObject({ measure: 'ring-groove' });
  });

  it('faults: a wrong part and a wrong chassis are both named, with the nearest', () => {
    const answer = doesFit(catalog, { part: 'QN-AIR-19', chassis: 'quennet-62' });
    expect('faults' in answer && answer.faults.map(({ code }) => code)).toEqual(['unknown-sku', 'unknown-chassis']);
  });
});

describe('uses', () => {
  it('where used: chassis, builds and kits', () => {
    const answer = usesSchema.parse(uses(catalog, 'QN-AIR-192'));
    expect(answer.fits.map(({ chassis, travels }) => [chassis, ...travels])).toContainEqual(['quennet-622', 130]);
    expect(answer.kits.map(({ sku }) => sku)).toContain('QN-KIT-192');
    expect(answer.builds.map(({ chassis }) => chassis)).toContain('quennet-559');
  });
});

describe('reach', () => {
  it('map: the cells of the fork by itself, with the cheapest way or the reason', () => {
    const answer = reach(world, { chassis: 'quennet-622', travelNow: 150 });
    if ('faults' in answer) throw new Error(JSON.stringify(answer.faults));
    const document = reachSchema.parse(reachDocument(answer, en));
    expect(document.travels).toEqual([120, 130, 140, 150, 160, 170, 180]);
    const own = document.rows.find(({ wheel }) => wheel === 622)?.cells ?? [];
    expect(own.map(({ travel, status, plan }) => [travel, status, plan?.money ?? null])).toEqual([
      [120, 'reachable', '201.50'],
      [130, 'reachable', '200.30'],
      [140, 'reachable', '196.70'],
      [150, 'now', null],
      [160, 'reachable', '375.45'],
      [170, 'impossible', null],
      [180, 'impossible', null],
    ]);
    expect(own.at(-1)?.why.map(({ code }) => code)).toEqual(['travel-range']);
  });
});
