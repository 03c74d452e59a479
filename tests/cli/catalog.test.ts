import { cpSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { demo, emptyFolder, folderWith, legwork, shorten } from './run.ts';

/** The demo catalogue with one text in one file changed. */
function changed(file: string, from: string, to: string): string {
  const folder = emptyFolder();
  cpSync(demo, folder, { recursive: true });
  const text = readFileSync(join(folder, file), 'utf8');
  if (!text.includes(from)) throw new Error(`${file} has no ${from}`);
  writeFileSync(join(folder, file), text.replace(from, to));
  return folder;
}

describe('catalog check', () => {
  it('the demo catalogue: is sound', () => {
    expect(legwork(['catalog', 'check', demo])).toMatchObject({ code: 0, err: '' });
  });

  it('broken YAML: is shown with line, column, excerpt and caret', () => {
    const { code, out } = legwork(['catalog', 'check', folderWith('a.yaml', 'makers:\n  - id: a\n   name: A\n')]);
    expect(code).toBe(1);
    expect(out).toMatch(/a\.yaml:3:[0-9]+: error not-yaml/);
    expect(out).toContain('^');
  });

  it('a wrong unit: is shown where it stands, with the units that are meant', () => {
    const folder = changed('quennet.yaml', 'offset: 44 mm', 'offset: 44 g');
    const { code, out } = legwork(['catalog', 'check', folder]);
    expect(code).toBe(1);
    expect(out).toMatch(/quennet\.yaml:[0-9]+:[0-9]+: error bad-quantity/);
    expect(out).toContain('44 g is no length');
    expect(out).toContain('mm, cm, m, in');
    expect(out).toContain('1 error and 0 warnings');
  });

  it('a wrong name: comes with the nearest', () => {
    const folder = changed('quennet.yaml', 'spring: QN-AIR-212', 'spring: QN-AIR-2122');
    expect(legwork(['catalog', 'check', folder]).out).toContain('Did you mean QN-AIR-212');
  });

  it('stock and shop: are checked too', () => {
    const stock = changed('stock.csv', 'QN-L-622,1,', 'QN-L-622,two,');
    expect(legwork(['catalog', 'check', stock])).toMatchObject({ code: 1 });
    const shop = changed('shop.yaml', 'currency: EUR', 'currency: USD');
    expect(legwork(['catalog', 'check', shop]).out).toContain('other-currency');
  });

  it('an empty folder and one that is not there: cannot be checked', () => {
    for (const folder of [emptyFolder(), '/nowhere/at/all']) {
      const { code, out, err } = legwork(['catalog', 'check', folder]);
      expect({ code, out }).toEqual({ code: 2, out: '' });
      expect(err).toContain(folder);
    }
  });
});

describe('a plan on a faulty catalogue', () => {
  it('is not worked out: exit 2, every problem on standard error', () => {
    const folder = changed('quennet.yaml', 'offset: 44 mm', 'offset: 44 g');
    const { code, out, err } = legwork([...shorten, '--catalog', folder]);
    expect({ code, out }).toEqual({ code: 2, out: '' });
    expect(err).toContain('bad-quantity');
  });

  it('a stock file that was named and is not there: is a fault', () => {
    const { code, err } = legwork([...shorten, '--stock', 'no-such.csv']);
    expect(code).toBe(2);
    expect(err).toContain('no-such.csv cannot be read: there is no such file');
  });

  it('LEGWORK_CATALOG: names the folder where no option does', () => {
    const { code, err } = legwork(shorten, { LEGWORK_CATALOG: '/nowhere/at/all' });
    expect(code).toBe(2);
    expect(err).toContain('/nowhere/at/all');
    expect(legwork([...shorten, '--catalog', demo], { LEGWORK_CATALOG: '/nowhere/at/all' }).code).toBe(0);
  });
});

describe('cache', () => {
  it('a damaged cache: is left aside, said on standard error, and written anew', () => {
    const cache = emptyFolder();
    const env = { LEGWORK_CACHE: cache };
    const first = legwork(shorten, env);
    const files = readdirSync(cache);
    expect(files.filter((name) => name.endsWith('.catalog'))).toHaveLength(1);
    for (const name of files) writeFileSync(join(cache, name), 'not a cache');
    const second = legwork(shorten, env);
    expect(second).toMatchObject({ code: 0, out: first.out });
    expect(second.err.split('\n').filter((line) => line !== '')).toEqual([
      'legwork: the cache was damaged; it was left aside and is written anew',
    ]);
    expect(legwork(shorten, env)).toMatchObject({ code: 0, out: first.out, err: '' });
  });

  it('--no-cache: writes nothing', () => {
    const cache = emptyFolder();
    expect(legwork([...shorten, '--no-cache'], { LEGWORK_CACHE: cache }).code).toBe(0);
    expect(readdirSync(cache)).toEqual([]);
  });

  it('a changed file: is seen at once', () => {
    const cache = emptyFolder();
    const folder = changed('quennet.yaml', 'offset: 44 mm', 'offset: 44 mm');
    const env = { LEGWORK_CACHE: cache };
    legwork([...shorten, '--catalog', folder], env);
    const shop = join(folder, 'shop.yaml');
    writeFileSync(shop, readFileSync(shop, 'utf8').replace('rate: "69.00"', 'rate: "70.00"'));
    expect(legwork([...shorten, '--catalog', folder], env).out).toContain('201.30 EUR');
  });
});

describe('catalog list', () => {
  it('chassis: are printed as JSON with quantities as text', () => {
    const { code, out } = legwork(['catalog', 'list', 'chassis']);
    expect(code).toBe(0);
    const list = JSON.parse(out) as { readonly kind: string; readonly records: readonly Record<string, unknown>[] };
    expect(list.kind).toBe('chassis');
    expect(list.records.find(({ id }) => id === 'quennet-622')).toMatchObject({
      travel: { min: '120 mm', max: '160 mm' },
    });
  });

  it('by GTIN: the part that bears it, the supply of which a pack does, nothing of another kind; a mistyped one is a fault', () => {
    const skus = (kind: string, gtin: string): readonly string[] =>
      (
        JSON.parse(legwork(['catalog', 'list', kind, '--gtin', gtin]).out) as { records: { sku: string }[] }
      ).records.map(({ sku }) => sku);
    expect(skus('parts', '2100001001926')).toEqual(['QN-AIR-192']);
    expect(skus('parts', '02100001001926')).toEqual(['QN-AIR-192']);
    expect(skus('supplies', '2870004001208')).toEqual(['VH-BATH-L']);
    expect(skus('parts', '2870004001208')).toEqual([]);
    expect(skus('chassis', '2100001001926')).toEqual([]);
    for (const [gtin, said] of [
      ['2100001001929', 'gtin-mistyped'],
      ['192', 'bad-option-value'],
    ] as const)
      expect(legwork(['catalog', 'list', 'parts', '--gtin', gtin])).toMatchObject({
        code: 2,
        out: '',
        err: expect.stringContaining(said),
      });
  });

  it('every kind: can be listed as JSON and as a table', () => {
    for (const kind of [
      'makers',
      'documents',
      'families',
      'parts',
      'kits',
      'supplies',
      'tools',
      'operations',
      'services',
    ]) {
      expect(JSON.parse(legwork(['catalog', 'list', kind, '--format', 'json']).out).records.length).toBeGreaterThan(0);
      expect(legwork(['catalog', 'list', kind, '--format', 'text']).out).toContain(kind);
    }
  });

  it('an unknown kind: names the nearest', () => {
    const { code, out, err } = legwork(['catalog', 'list', 'chasis']);
    expect({ code, out }).toEqual({ code: 2, out: '' });
    expect(err).toContain('Did you mean chassis');
  });
});
