import { describe, expect, it } from 'vitest';
import { type Problem, type ProblemCode, readCatalog } from '../../src/catalog/index.ts';
import { type Change, changed, marked, oneFile, SOUND, shown } from './sound.ts';

/** Each code with a small change to the sound catalogue that brings it about, and where it is said to be. The mark is where it stands. */
const CASES: readonly (readonly [ProblemCode, string, Change, Problem['params']])[] = [
  [
    'not-yaml',
    'a bracket that is never closed',
    ['axle: { standard: 15x110 }', 'axle: { standard: 15x110\n    ⟦travel-:'],
    { reason: '' },
  ],
  [
    'unknown-key',
    'a key that the schema does not have',
    ['wheel: 622', '⟦whel: 622\n    wheel: 622'],
    { key: 'whel', record: 'wend-622 in chassis', nearest: ['wheel'] },
  ],
  [
    'missing-key',
    'a key that the schema demands',
    ['- id: wend-622\n    family: wend\n    name: Wend 622\n', '- ⟦id: wend-622\n    family: wend\n'],
    { key: 'name', record: 'wend-622 in chassis' },
  ],
  ['missing-key', 'one of two keys that the schema demands', ['{ compressed: 400 mm, measured', '⟦{ measured'], {}],
  [
    'wrong-type',
    'a text where a number belongs',
    ['order: 15', 'order: ⟦fifteen'],
    { expected: 'integer', found: 'fifteen', write: '' },
  ],
  ['missing-unit', 'a length without its unit', ['least: 100 mm', 'least: ⟦100'], { found: '100', unit: 'mm' }],
  [
    'yes-or-no',
    'a word that was a truth value in older YAML',
    ['{ family: wend, travel', '{ family: wend, not: ⟦yes, travel'],
    { found: 'yes', write: 'true' },
  ],
  ['decimal-comma', 'a price', ['"40.00"', '⟦"40,00"'], { found: '40,00', write: '40.00' }],
  ['decimal-comma', 'a length', ['least: 100 mm', 'least: ⟦"100,5 mm"'], { found: '100,5 mm', write: '100.5 mm' }],
  ['decimal-comma', 'a length between braces', ['least: 100 mm', 'least: 100,⟦5 mm'], { found: '5 mm', write: '' }],
  [
    'unknown-key',
    'a demanded key misspelt',
    ['name: Wend 622', '⟦nmae: Wend 622'],
    { key: 'nmae', record: 'wend-622 in chassis' },
  ],
  [
    'not-one-of',
    'a word that is none of the list',
    ['travel-end: extended', 'travel-end: ⟦middle'],
    { found: 'middle', allowed: ['extended', 'compressed'] },
  ],
  ['bad-value', 'an id with a capital', ['id: wipe', 'id: ⟦Wipe'], { found: 'Wipe' }],
  [
    'bad-value',
    'serial numbers with other letters',
    ['keeps: []', 'generations: [{ id: g, serials: ⟦{ from: A1, to: B2 } }]\n    keeps: []'],
    { found: 'A1 to B2' },
  ],
  [
    'bad-quantity',
    'a unit of another dimension',
    ['least: 100 mm', 'least: ⟦100 mL'],
    { found: '100 mL', dimension: 'length', fault: 'wrong-dimension', units: 'mm, cm, m, in' },
  ],
  [
    'bad-quantity',
    'a unit that nobody knows',
    ['least: 100 mm', 'least: ⟦100 spans'],
    { found: '100 spans', dimension: 'length', fault: 'unknown-unit', units: 'mm, cm, m, in' },
  ],
  ['bad-price', 'more digits than the currency has', ['"40.00"', '⟦"40.005"'], { found: '40.005', currency: 'EUR' }],
  ['bad-currency', 'a code that is no currency', ['currency: EUR', 'currency: ⟦EUX'], { found: 'EUX' }],
  [
    'bad-gtin',
    'a wrong check digit',
    ['"6291041500213"', '⟦"6291041500214"'],
    { found: '6291041500214', expected: '6291041500213' },
  ],
  [
    'duplicate-id',
    'two records of one id',
    ['- { id: hex-5, name: hex key }', '- { id: hex-5, name: hex key }\n  - ⟦{ id: hex-5, name: other }'],
    { id: 'hex-5', other: 'one.yaml:70' },
  ],
  [
    'duplicate-id',
    'a number that is a part and a pack',
    ['sku: W-OIL-100, size', 'sku: W-C, size'],
    { id: 'W-C', other: 'one.yaml:51' },
  ],
  [
    'unknown-reference',
    'a maker that there is not',
    ['- { id: manual, title: Manual, maker: orlen', '- { id: manual, title: Manual, maker: ⟦orlan'],
    { id: 'orlan', kind: 'makers', nearest: ['orlen'] },
  ],
  [
    'unknown-reference',
    'a part that there is not',
    ['- { sku: W-W, quantity: 2 }', '- { sku: ⟦W-M, quantity: 2 }'],
    { id: 'W-M', kind: 'parts' },
  ],
  ['head-missing', 'no head in any file', ['catalog: { name: Small, currency: EUR }\n', '⟦'], {}],
  [
    'unknown-slot',
    'a slot that the family does not have',
    ['changes: [wipers]', 'changes: [⟦wiper]'],
    { slot: 'wiper', family: 'wend' },
  ],
  [
    'unknown-slot',
    'a slot in a build that the family does not have',
    ['slots: { spring: W-S }', 'slots: { spring: W-S, damper: ⟦W-C }'],
    { slot: 'damper', family: 'wend' },
  ],
  [
    'wrong-role',
    'a part in a slot of another role',
    ['fitted: { wipers: W-W }', 'fitted: { wipers: ⟦W-C }'],
    { sku: 'W-C', role: 'clip', expected: 'wipers' },
  ],
  [
    'wrong-count',
    'one piece in a slot that takes two',
    ['fitted: { wipers: W-W }', 'fitted: { wipers: ⟦{ sku: W-W, quantity: 1 } }'],
    { slot: 'wipers', found: 1, expected: 2 },
  ],
  [
    'wrong-count',
    'more spacers than the slot holds',
    ['slots: { spring: W-S }', 'slots: { spring: W-S, volume-spacers: ⟦{ sku: W-V, quantity: 3 } }'],
    { slot: 'volume-spacers', found: 3, expected: 2 },
  ],
  [
    'slot-left-empty',
    'a slot that must be filled and is not',
    ['- { travel: 120 mm, slots: { spring: W-S } }', '- ⟦{ travel: 120 mm, slots: {} }'],
    { slot: 'spring', build: 'chassis/wend-622#builds[0]' },
  ],
  [
    'two-usual-builds',
    'two builds of one travel, none usual',
    [
      '- { travel: 120 mm, slots: { spring: W-S } }',
      '⟦- { travel: 120 mm, slots: { spring: W-S } }\n      - { travel: 12 cm, slots: { spring: W-S } }',
    ],
    { travel: '120 mm', count: 0 },
  ],
  [
    'two-clauses',
    'two clauses that speak of one chassis',
    ['greatest: 2 } }\n', 'greatest: 2 } }\n      - ⟦{ family: wend, wheel: 622, travel: 130 mm }\n'],
    { sku: 'W-S', chassis: 'wend-622', other: 'fits[0]' },
  ],
  [
    'axle-to-crown-end',
    'a length at the end that does not stay',
    ['axle-to-crown: { compressed', 'axle-to-crown: ⟦{ extended'],
    { end: 'extended', given: 'extended' },
  ],
  [
    'spring-without-travel',
    'a spring that gives no travel',
    ['{ family: wend, travel: 120 mm, volume', '⟦{ family: wend, volume'],
    { sku: 'W-S' },
  ],
  [
    'operation-cycle',
    'an operation that comes before itself',
    ['    closed-by: close\n', '    closed-by: close\n    after: [wipe]\n'],
    { cycle: 'open, wipe' },
  ],
  [
    'need-cycle',
    'a part that needs itself by way of another',
    ['role: clip }', 'role: clip, needs: [{ sku: W-V }] }'],
    { cycle: 'W-C, W-V' },
  ],
  [
    'wrong-unit',
    'a number where a volume belongs',
    ['specification: oil, amount: 2 mL', 'specification: oil, amount: ⟦2'],
    { specification: 'oil', unit: 'mL', found: '2' },
  ],
  [
    'wrong-unit',
    'a volume where pieces are counted',
    ['specification: oil, amount: 2 mL', 'specification: glove, amount: ⟦2 mL'],
    { specification: 'glove', unit: 'piece', found: '2 mL' },
  ],
  [
    'wrong-unit',
    'a supply that meets what is counted otherwise',
    ['meets: [oil]', 'meets: [oil, ⟦glove]'],
    { specification: 'glove' },
  ],
  [
    'dose-missing-side',
    'a dose without the side that is poured',
    ['left: 5 mL, right: 8 mL', 'right: 8 mL'],
    { dose: 'bath', chassis: 'wend-622', side: 'left', stated: true },
  ],
  [
    'dose-missing-side',
    'a dose that the chassis does not have at all',
    ['doses: { bath: {', 'doses: { leg: {'],
    { dose: 'bath', chassis: 'wend-622', side: 'left', stated: false },
  ],
  [
    'wrong-type',
    'a wheel with a unit',
    ['wheel: 622', 'wheel: ⟦622 mm'],
    { expected: 'integer', found: '622 mm', write: '622' },
  ],
  ['bad-value', 'a price with its currency', ['"40.00"', '⟦"40.00 EUR"'], { rule: 'it must be like 96.00' }],
  [
    'not-without-reason',
    'a no without a reason',
    ['role: wipers, fits: [{ family: wend }]', 'role: wipers, fits: [⟦{ family: wend, not: true }]'],
    { sku: 'W-W' },
  ],
  [
    'spacers-standard-above-greatest',
    'more spacers by rule than there may be',
    ['volume-spacers: { standard: 1, greatest: 2 }', 'volume-spacers: ⟦{ standard: 3, greatest: 2 }'],
    { standard: 3, greatest: 2 },
  ],
  [
    'travel-range-empty',
    'a least travel above the greatest',
    ['travel: { least: 100 mm', 'travel: ⟦{ least: 150 mm'],
    { least: '150 mm', greatest: '140 mm' },
  ],
];

describe('catalogue problems', () => {
  it('sound: the catalogue that the others are made from has no fault', () => {
    expect(shown(readCatalog(oneFile(SOUND), 'folder').problems)).toEqual([]);
  });

  it.each(CASES)('%s: %s', (code, _name, change, params) => {
    const { text, at } = marked(changed(change));
    const { value, problems } = readCatalog(oneFile(text), 'folder');
    expect(value).toBeNull();
    expect(shown(problems)).toHaveLength(1);
    const [first] = problems;
    expect(first).toMatchObject({ severity: 'error', code });
    if (Object.values(params).some((value_) => value_ !== '')) expect(first?.params).toMatchObject(params);
    expect(first?.place?.file).toBe('one.yaml');
    if (change[1].includes('⟦')) expect(shown(problems)[0]).toBe(`${code} ${at.line}:${at.column}`);
    expect(first?.place?.excerpt).toBe(text.split('\n')[(first?.place?.line ?? 0) - 1]);
  });
});
