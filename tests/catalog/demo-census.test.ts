import { describe, expect, it } from 'vitest';
import { listsOf } from '../../src/catalog/index.ts';
import { demoFolder, loadCatalogFolder } from '../support/demo.ts';

// How large the demo catalogue is to be, and what has to be in it: the project's own goal for it. Each number is a least.

const { catalog, stock } = (await loadCatalogFolder(demoFolder)).world;
const families = [...catalog.families.values()];
const chassis = [...catalog.chassis.values()];
const parts = [...catalog.parts.values()];
const bikes = [...catalog.bikes.values()];

const ids = (found: readonly { readonly id: string }[]): readonly string[] => found.map(({ id }) => id);
/** Springs with a clause for the family, and the words that they state as their kind. */
const kindsOf = (family: string): ReadonlySet<string> =>
  new Set(
    listsOf(catalog)
      .partsAbout('spring', family)
      .flatMap(({ traits }) => traits.get('kind') ?? []),
  );

describe('the demo catalogue: how much there is', () => {
  it.each<[string, number, number]>([
    ['makers', catalog.makers.size, 3],
    ['families', families.length, 10],
    ['chassis', chassis.length, 60],
    ['parts', parts.length, 250],
    ['kits', catalog.kits.size, 30],
    ['supplies', catalog.supplies.size, 20],
    ['tools', catalog.tools.size, 30],
    ['documents', catalog.documents.size, 12],
    ['bikes', bikes.length, 25],
  ])('%s: %i, at least %i', (_kind, found, least) => {
    expect(found).toBeGreaterThanOrEqual(least);
  });

  it('wheels: 559, 584 and 622, and one for children', () => {
    const wheels = new Set(chassis.map(({ wheel }) => wheel));
    for (const wheel of [559, 584, 622]) expect(wheels).toContain(wheel);
    expect([406, 507].some((wheel) => wheels.has(wheel))).toBe(true);
  });

  it('supplies: twenty come in several packs', () => {
    const several = [...catalog.supplies.values()].filter(({ packs }) => packs.length > 1);
    expect(several.length).toBeGreaterThanOrEqual(20);
  });

  it('makers: three of them build forks, one builds none and sells parts for the forks of others', () => {
    const builders = new Set(families.map(({ maker }) => maker));
    expect(builders.size).toBeGreaterThanOrEqual(3);
    const others = parts.filter(
      ({ maker, fits }) => !builders.has(maker) && fits.some(({ family }) => catalog.families.has(family)),
    );
    expect(others.length).toBeGreaterThan(0);
  });

  it('documents: each states its issue, and most records say the page', () => {
    expect([...catalog.documents.values()].filter(({ issue }) => issue.trim() === '')).toEqual([]);
    const cited = parts.filter(
      ({ fits, source }) => source.page !== null || fits.some((one) => one.source.page !== null),
    );
    expect(cited.length / parts.length).toBeGreaterThan(0.9);
  });
});

describe('the demo catalogue: every kind of fork', () => {
  const some = (what: (family: (typeof families)[number]) => boolean): readonly string[] => ids(families.filter(what));
  it.each<[string, readonly string[]]>([
    ['cartridge air', some(({ id, travelSetBy }) => travelSetBy === 'cartridge' && kindsOf(id).has('air'))],
    ['travel-spacer air', some(({ id, travelSetBy }) => travelSetBy === 'travel-spacers' && kindsOf(id).has('air'))],
    ['two-position', some(({ travelSetBy }) => travelSetBy === 'two-position')],
    ['coil that can become air', some(({ id }) => kindsOf(id).has('air') && kindsOf(id).has('coil'))],
    ['coil and nothing else', some(({ id }) => kindsOf(id).has('coil') && !kindsOf(id).has('air'))],
    ['one that cannot be changed', some(({ travelSetBy }) => travelSetBy === 'fixed')],
    ['two crowns', some(({ crown }) => crown === 'dual')],
    ['rated for motor-assisted bikes', some(({ rated }) => rated.motorAssisted === true)],
    [
      'generations whose ring grooves differ',
      some(({ generations }) => new Set(generations.map(({ dimensions }) => dimensions.get('ring-groove'))).size > 1),
    ],
    ['travel taken at the compressed end', some(({ travelEnd }) => travelEnd === 'compressed')],
  ])('%s: %s', (_kind, found) => {
    expect(found.length).toBeGreaterThan(0);
  });

  it('a bore without a way to air: a spring’s own maker says no to one upper and yes to another', () => {
    const clauses = catalog.parts.get('AR-AIR')?.fits ?? [];
    expect(clauses.map(({ not }) => not)).toEqual(expect.arrayContaining([true, false]));
  });

  it('generations: some chassis were made in the older months alone, some in the newer, with lowers in common', () => {
    const kerrolt = chassis.filter(({ family }) => family === 'kerrolt');
    const older = kerrolt.filter(({ generations }) => generations?.every((id) => id !== 'third'));
    const newer = kerrolt.filter(({ generations }) => generations?.every((id) => id === 'third'));
    expect([older.length > 0, newer.length > 0]).toEqual([true, true]);
    const shared = older.filter(({ lowers }) => newer.some((one) => one.lowers === lowers));
    expect(shared.length).toBeGreaterThan(0);
  });

  it('work: every family has operations with times, looks and cautions, and a service', () => {
    for (const family of families) {
      const operations = listsOf(catalog).operationsOf(family.id);
      expect([family.id, operations.every(({ minutes }) => minutes > 0)]).toEqual([family.id, true]);
      expect([family.id, operations.some(({ looks }) => looks.length > 0)]).toEqual([family.id, true]);
      expect([family.id, operations.some(({ cautions }) => cautions.length > 0)]).toEqual([family.id, true]);
      expect([family.id, listsOf(catalog).servicesOf(family.id).length > 0]).toEqual([family.id, true]);
    }
  });
});

describe('the demo catalogue: bikes, notices, stock', () => {
  it('bikes: twenty-five in sizes, with limits and the fork they left the works with; limits by wheel, size and crown', () => {
    const whole = bikes.filter(({ sizes, limits, forks }) => sizes.length > 1 && limits.length > 0 && forks.length > 0);
    expect(whole.length).toBeGreaterThanOrEqual(25);
    const limits = bikes.flatMap((bike) => bike.limits);
    for (const clause of ['wheel', 'sizes', 'crown'] as const)
      expect([clause, limits.some((limit) => limit[clause] !== null)]).toEqual([clause, true]);
  });

  it('bikes: each is drawn in every size, and has a rear tyre', () => {
    for (const { id, sizes, geometry, rearTyre } of bikes) {
      const drawn = new Set(geometry.flatMap((row): readonly (string | null)[] => row.sizes ?? [null]));
      for (const size of sizes.length === 0 ? [null] : sizes)
        expect([id, size, drawn.has(size)]).toEqual([id, size, true]);
      expect([id, rearTyre === null]).toEqual([id, false]);
    }
  });

  it('notices: one blocks, one flags', () => {
    expect(new Set([...catalog.notices.values()].map(({ blocks }) => blocks))).toEqual(new Set([true, false]));
  });

  it('shop file: an hour and a service at a flat price, tax, oil from the drum, tools at hand and some that are not', async () => {
    const { shop } = (await loadCatalogFolder(demoFolder)).world;
    const used = new Set([...catalog.operations.values()].flatMap(({ tools }) => tools));
    expect([shop.rate !== null, shop.flat.size > 0, shop.tax !== null, shop.bulk.size > 0]).toEqual([
      true,
      true,
      true,
      true,
    ]);
    const atHand = [...used].filter((id) => shop.tools?.has(id));
    expect([atHand.length > 20, atHand.length < used.size]).toEqual([true, true]);
  });

  it('stock: in EUR, reserved, out of stock, no price, a date that nobody knows, discontinued', () => {
    const rows = [...stock.rows.values()];
    expect([catalog.currency, rows.length > 300]).toEqual(['EUR', true]);
    const noPrice = (sku: string): boolean => (catalog.parts.get(sku) ?? catalog.kits.get(sku))?.price === null;
    for (const [what, found] of [
      ['reserved', rows.some(({ reserved }) => reserved > 0)],
      ['out of stock', rows.some(({ onHand }) => onHand === 0)],
      ['no price', rows.some(({ sku, price }) => price === null && noPrice(sku))],
      ['unknown date', rows.some(({ lead }) => lead === 'unknown')],
      ['discontinued', rows.some(({ discontinued }) => discontinued)],
    ] as const)
      expect([what, found]).toEqual([what, true]);
  });
});
