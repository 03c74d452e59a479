import { describe, expect, it } from 'vitest';
import { NO_SHOP, readShop, readStock } from '../../src/catalog/index.ts';
import { HERE, marked, oneFile, SOUND, shown, sound } from './sound.ts';

const catalog = sound(oneFile(SOUND));
const stock = (...lines: readonly string[]): ReturnType<typeof readStock> =>
  readStock('stock.csv', `${lines.join('\n')}\n`, catalog);

describe('stock', () => {
  const header = 'sku,on_hand,reserved,state,lead_days,price,currency,bin';

  it('rows: every column is read', () => {
    const { value, problems } = stock(
      header,
      'W-S,3,1,active,5,41.50,EUR,A1',
      'W-K,0,0,discontinued,unknown,,,',
      'W-OIL-100,2,,,,,,',
    );
    expect(problems).toEqual([]);
    expect([...value.rows.values()]).toEqual([
      { sku: 'W-S', onHand: 3, reserved: 1, discontinued: false, lead: 5, price: 4150, bin: 'A1' },
      { sku: 'W-K', onHand: 0, reserved: 0, discontinued: true, lead: 'unknown', price: null, bin: null },
      { sku: 'W-OIL-100', onHand: 2, reserved: 0, discontinued: false, lead: null, price: null, bin: null },
    ]);
  });

  it('columns: in any order, some left out, some unknown, quoted, with spaces, a byte order mark, CRLF, remarks', () => {
    const text = '\uFEFF# nightly\r\nbin,on_hand,shelf,sku\r\n"A,1", 3 ,x,"W-S"\r\n\r\n';
    const { value, problems } = readStock('stock.csv', text, catalog);
    expect([problems, [...value.rows.values()].map(({ sku, onHand, bin }) => [sku, onHand, bin])]).toEqual([
      [],
      [['W-S', 3, 'A,1']],
    ]);
  });

  it.each([
    ['stock-column', 'a column that is needed is not there', ['sku,price', 'W-S,4'], 1],
    ['stock-column', 'another mark between the columns', ['sku;on_hand', 'W-S;3'], 1],
    ['stock-value', 'half a pack', ['sku,on_hand', 'W-S,2.5'], 2],
    ['stock-value', 'fewer than none', ['sku,on_hand', 'W-S,-1'], 2],
    ['stock-value', 'a state that there is not', ['sku,on_hand,state', 'W-S,1,gone'], 2],
    ['stock-value', 'a lead time in words', ['sku,on_hand,lead_days', 'W-S,1,soon'], 2],
    ['stock-value', 'a price with a comma', ['sku,on_hand,price', 'W-S,1,"4,50"'], 2],
    ['stock-value', 'another currency', ['sku,on_hand,currency', 'W-S,1,USD'], 2],
    ['stock-duplicate', 'one number twice', ['sku,on_hand', 'W-S,1', 'W-V,1', 'W-S,2'], 4],
    ['stock-unknown-sku', 'a number that is not in the catalogue', ['sku,on_hand', 'W-V,1', 'W-X,1'], 3],
    ['stock-not-csv', 'a row with too many fields', ['sku,on_hand', 'W-V,1', 'W-S,1,2,3'], 3],
    ['stock-not-csv', 'a quote that is never closed', ['sku,on_hand', '"W-S,1', 'W-V,2'], 2],
    ['price-zero', 'a price of nothing', ['sku,on_hand,price', 'W-S,1,0.00'], 2],
    ['stock-column', 'an empty file', [''], 1],
    ['stock-column', 'a remark and no columns', ['# to be done', ''], 1],
  ] as const)('%s: %s, at line %#', (code, _name, lines, line) => {
    const { problems } = stock(...lines);
    expect(shown(problems)).toEqual([`${code} ${line}:1`]);
    expect(problems[0]?.place).toMatchObject({ file: 'stock.csv', excerpt: lines[line - 1] });
  });

  it('many: each faulty row is left out, each fault is said, and the sound rows are read', () => {
    const { value, problems } = stock(header, 'W-S,x,y,z,w,v,USD,', 'W-V,1,,,,,,', 'W-C,1,,,,,,', 'W-K,q,,,,,,');
    expect(problems.map(({ code, place, params }) => `${code} ${place?.line} ${params.column}`)).toEqual([
      'stock-value 2 price',
      'stock-value 2 lead_days',
      'stock-value 2 state',
      'stock-value 2 currency',
      'stock-value 2 on_hand',
      'stock-value 2 reserved',
      'stock-value 5 on_hand',
    ]);
    expect([...value.rows.keys()]).toEqual(['W-V', 'W-C']);
  });

  it('unknown number: a warning only, and the row is left out', () => {
    const { value, problems } = stock('sku,on_hand', 'W-X,1');
    expect([problems[0]?.severity, value.rows.size]).toEqual(['warning', 0]);
    expect(problems[0]?.params.nearest).toContain('W-C');
  });

  it('hash: order of rows and columns, remarks and empty columns do not count; what is said does', () => {
    const hash = (...lines: readonly string[]): string => stock(...lines).value.hash;
    const first = hash('sku,on_hand,price', 'W-S,1,2.00', 'W-V,3,');
    expect(hash('price,sku,on_hand', '# x', ',W-V,3', '2.00,W-S,1')).toBe(first);
    expect(hash('sku,on_hand,price,bin', 'W-S,1,2,', 'W-V,3,,')).toBe(first);
    expect(hash('sku,on_hand,price', 'W-S,1,2.01', 'W-V,3,')).not.toBe(first);
    expect(hash('sku,on_hand')).not.toBe(first);
  });

  it('nothing: columns without rows are no fault', () => {
    const { value, problems } = stock('sku,on_hand');
    expect([value.rows.size, problems]).toEqual([0, []]);
  });

  it('rows of another length: how many fields there are and ought to be', () => {
    const [problem] = stock('sku,on_hand,bin', 'W-S,1').problems;
    expect(problem?.params).toEqual({ fault: 'fields', expected: 3, found: 2 });
  });
});

const SHOP = `name: Bench
currency: EUR
labour:
  rate: "60.00"
  flat: { care: "35.00" }
tax: { rate: 19, included: true }
tools: [hex-5]
bulk:
  - { supply: W-OIL, price: "42.00", per: 1 L }
`;

describe('shop', () => {
  const shop = (text: string): ReturnType<typeof readShop> => readShop('shop.yaml', text, catalog);

  it('shop: rate, flat prices, tax, tools and bulk are read', () => {
    const { value, problems } = shop(SHOP);
    expect(problems).toEqual([]);
    expect(value).toMatchObject({ name: 'Bench', rate: 6000, tax: { rate: 19, included: true } });
    expect([value.flat.get('care'), value.tools, value.bulk.get('W-OIL')]).toEqual([
      3500,
      new Set(['hex-5']),
      { price: 4200, per: 1_000_000 },
    ]);
  });

  it.each([
    ['other-currency', 'not the catalogue’s', 'currency: EUR', `currency: ${HERE}USD`],
    ['bad-price', 'a rate with too many digits', '"60.00"', `${HERE}"60.001"`],
    ['unknown-reference', 'a service that there is not', '{ care: "35.00" }', `{ cure: ${HERE}"35.00" }`],
    ['unknown-reference', 'a tool that there is not', '[hex-5]', `[${HERE}hex-4]`],
    ['unknown-reference', 'a supply that there is not', 'supply: W-OIL', `supply: ${HERE}W-OIL-100`],
    ['wrong-unit', 'bulk by weight of what is counted by volume', 'per: 1 L', `per: ${HERE}1 kg`],
    ['wrong-unit', 'bulk by a number of nothing', 'per: 1 L', `per: ${HERE}3`],
    ['unknown-key', 'a key that there is not', 'tools: [hex-5]', `${HERE}tool: [hex-5]`],
    ['wrong-type', 'a list where a table belongs', 'tax: { rate: 19, included: true }', `tax: ${HERE}[19]`],
    ['not-yaml', 'a bracket that is never closed', '[hex-5]', '[hex-5'],
  ])('%s: %s', (code, _name, from, to) => {
    const { text, at } = marked(SHOP.replace(from, to));
    const { problems } = shop(text);
    if (to.includes(HERE)) expect(shown(problems)).toEqual([`${code} ${at.line}:${at.column}`]);
    else expect(problems[0]).toMatchObject({ code, place: { file: 'shop.yaml' } });
  });

  it('faulty: a shop file that cannot be used leaves the shop unknown', () => {
    expect(shop('- 1\n').value).toBe(NO_SHOP);
  });

  it('hash: remarks and order of keys do not count; prices do', () => {
    const hash = (text: string): string => shop(text).value.hash;
    expect(hash(`# x\n${SHOP.replace('name: Bench\n', '')}name: Bench\n`)).toBe(hash(SHOP));
    expect(hash(SHOP.replace('60.00', '61.00'))).not.toBe(hash(SHOP));
  });
});
