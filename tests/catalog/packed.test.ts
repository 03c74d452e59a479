import { deserialize, serialize } from 'node:v8';
import { describe, expect, it } from 'vitest';
import { type Packed, packed, unpacked } from '../../src/catalog/packed.ts';
import { demoFolder, loadCatalogFolder } from '../support/demo.ts';

/** As the cache does: packed, written as bytes, read back. */
const through = (value: unknown): unknown => unpacked(deserialize(serialize(packed(value))) as Packed);

describe('packed data', () => {
  it('a linked catalogue comes back as it was', async () => {
    const { catalog } = (await loadCatalogFolder(demoFolder)).world;
    expect(through(catalog)).toStrictEqual(catalog);
  });

  it('every kind of plain data comes back as it was, in its order', () => {
    const all = {
      nothing: null,
      left: undefined,
      said: [true, false, 'true', 'undefined', '', '1', 1, -1, 0, -0, 1.5, Number.POSITIVE_INFINITY, Number.NaN],
      maps: new Map<unknown, unknown>([
        ['b', 1],
        ['a', new Map([[7, []]])],
      ]),
      odd: { __proto__: 1, 'a b': {}, ü: [[], {}] },
      long: Array.from({ length: 300 }, (_, at) => ({ at, half: at / 2, name: `n${at % 7}` })),
    };
    expect(through(all)).toStrictEqual(all);
  });

  it('a text of a number, a number and a list of it are told apart', () => {
    expect(through(['1', 1, [1], ['1'], { a: 1 }, new Map([['a', 1]])])).toStrictEqual([
      '1',
      1,
      [1],
      ['1'],
      { a: 1 },
      new Map([['a', 1]]),
    ]);
  });

  it('what is said again and again is held once', () => {
    const same = (): unknown => ({ document: 'd', page: '7' });
    const { count, texts } = packed([same(), same(), new Map(), new Map(), ['7'], ['7']]);
    // two texts, a record, an empty map, a list of one, the whole
    expect([count, texts]).toEqual([6, ['d', '7']]);
  });

  it('anything else is an error', () => {
    for (const value of [new Set([1]), new Date(0), () => 1, Symbol('s'), 1n])
      expect(() => packed([value])).toThrow(TypeError);
  });
});
