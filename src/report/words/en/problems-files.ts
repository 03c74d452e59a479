import type { ProblemParams } from '../../../catalog/index.ts';
import type { WordsTable } from '../language.ts';
import { counted, nearestHint, orList } from './shared.ts';

type FileCode =
  | 'not-readable'
  | 'not-yaml'
  | 'not-a-catalog-file'
  | 'empty-catalog'
  | 'file-too-large'
  | 'unknown-key'
  | 'missing-key'
  | 'missing-unit'
  | 'wrong-type'
  | 'not-one-of'
  | 'yes-or-no'
  | 'decimal-comma'
  | 'bad-value'
  | 'bad-quantity'
  | 'bad-price'
  | 'price-zero'
  | 'bad-currency'
  | 'bad-gtin'
  | 'stock-not-csv'
  | 'stock-column'
  | 'stock-value'
  | 'stock-duplicate'
  | 'stock-unknown-sku'
  | 'other-currency';

/** Problems with a file as text, with its shape and with single values. */
export const fileProblems: WordsTable<Pick<ProblemParams, FileCode>> = {
  'not-readable': {
    say: ({ reason }) => `This cannot be read: ${reason}.`,
    meaning: 'A file or folder is not there, may not be read, or is no text.',
    way: () => 'Check the name and the rights, and save text files as UTF-8.',
    example: { reason: 'it is not UTF-8 text' },
  },
  'not-yaml': {
    say: ({ reason, language }) => `This is not ${language}: ${reason.replace(/\.$/, '')}.`,
    meaning: 'The file cannot be parsed, so nothing in it counts.',
    way: () => 'Look at the place shown and just before it: indentation, a missing quote, bracket or colon.',
    example: { reason: 'Missing closing "quote', language: 'YAML' },
  },
  'not-a-catalog-file': {
    say: ({ found }) => `A catalogue file has keys such as parts or chassis at its top; here is ${found}.`,
    meaning: 'The top-level keys of a file say what records are in it.',
    way: () => 'Put the records under their key, or take the file out of the folder.',
    example: { found: 'a list' },
  },
  'empty-catalog': {
    say: ({ folder }) =>
      `There is no catalogue in ${folder}: no file that ends in .yaml, .yml, .json or .ndjson has records in it.`,
    meaning: 'A catalogue is a folder of YAML, JSON or NDJSON files.',
    way: () => 'Name the folder with --catalog, or set LEGWORK_CATALOG.',
    example: { folder: 'my-catalog' },
  },
  'file-too-large': {
    say: ({ bytes, limit }) => `The file has ${bytes} bytes; at most ${limit} are read.`,
    meaning: 'A file that large is a mistake or an attack.',
    way: () => 'Split it into several files; a catalogue may have any number.',
    example: { bytes: 80_000_000, limit: 67_108_864 },
  },
  'unknown-key': {
    say: ({ key, record }) => `${subject(record)} has no key ${key}.`,
    meaning: 'A record holds only the keys of its schema, so that a typing mistake is not silently ignored.',
    way: ({ nearest }) => `${nearestHint(nearest).trim()} The schemas are in catalog-schema/.`.trim(),
    example: { key: 'dimension', record: 'AB-AIR-2 in parts', nearest: ['dimensions'] },
  },
  'missing-key': {
    say: ({ key, record }) => `${subject(record)} needs the key ${key}.`,
    meaning: 'A key that the schema asks for is not there.',
    way: ({ key }) => `Add ${key}. The schemas in catalog-schema/ explain each key with an example.`,
    example: { key: 'name', record: 'AB-AIR-2 in parts' },
  },
  'missing-unit': {
    say: ({ found, unit }) =>
      `Here must be a quantity with its unit, and there is ${found} alone. Write ${found} ${unit}, if that is meant.`,
    meaning: 'A length, a volume, a mass, a torque or a time stands without its unit.',
    way: () => 'Write the unit behind the number: 130 mm, 8 mL, 7 N·m, 5 min.',
    example: { found: '130', unit: 'mm' },
  },
  'wrong-type': {
    say: ({ expected, found }) => `Here must be ${article(expected)}, and there is ${found}.`,
    meaning: 'The value is of another kind than the schema asks for.',
    way: ({ expected, write }) =>
      write !== ''
        ? `Write ${write}, without a unit and without quotes.`
        : expected.includes('string')
          ? 'Look at the schema in catalog-schema/. Numbers that are texts stand in quotes.'
          : 'Look at the schema in catalog-schema/ and its example.',
    example: { expected: 'string', found: '12', write: '' },
  },
  'not-one-of': {
    say: ({ found, allowed }) => `${found} is not one of ${orList(allowed)}.`,
    meaning: 'Only certain words may stand here.',
    way: ({ allowed }) => `Write ${orList(allowed)}.`,
    example: { found: 'middle', allowed: ['left', 'right'] },
  },
  'yes-or-no': {
    say: ({ found }) => `Here must be true or false, and there is ${found}, which is a text in YAML 1.2.`,
    meaning: 'Yes and no, on and off were truth values in older YAML and are texts now.',
    way: ({ write }) => `Write ${write}.`,
    example: { found: 'yes', write: 'true' },
  },
  'decimal-comma': {
    say: ({ found, write }) =>
      write === ''
        ? `Between braces a comma begins the next key, so that ${found} is read as one.`
        : `${found} has a decimal comma.`,
    meaning: 'Numbers are written with a decimal point. Between braces and brackets a comma parts keys and values.',
    way: ({ write }) => (write === '' ? 'Write the number with a point.' : `Write ${write}.`),
    example: { found: '96,00', write: '96.00' },
  },
  'bad-value': {
    say: ({ rule, found }) => `${found} is not allowed here: ${rule}.`,
    meaning: 'The value breaks a rule of the schema.',
    way: () => 'Look at the schema in catalog-schema/ and its example.',
    example: { rule: 'must match a name in small letters and hyphens', found: 'Big Name' },
  },
  'bad-quantity': {
    say: ({ found, dimension, fault }) =>
      fault === 'wrong-dimension'
        ? `${found} is no ${dimension}.`
        : fault === 'unknown-unit'
          ? `The unit of ${found} is not known.`
          : fault === 'out-of-range'
            ? `${found} is out of range for a ${dimension}.`
            : `${found} is no quantity: a number and a unit.`,
    meaning: 'Quantities are written as people read them, always with a unit of the right kind.',
    way: ({ units }) => `Write a number, a blank and one of ${units}.`,
    example: { found: '150', dimension: 'length', fault: 'not-a-quantity', units: 'mm, cm, m, in' },
  },
  'bad-price': {
    say: ({ found, currency }) => `${found} is no price in ${currency}.`,
    meaning: 'A price is a decimal number with at most the digits of the currency.',
    way: () => 'Write it as text with a point, like "12.50".',
    example: { found: '12,50', currency: 'EUR' },
  },
  'price-zero': {
    say: () => 'The price is 0, so this is given away.',
    meaning: 'No price is no price: it is left out, and a total with it is "at least". A price of 0 counts as a price.',
    way: () => 'Leave the price out where it is not known.',
    example: {},
  },
  'bad-currency': {
    say: ({ found }) => `${found} is no currency.`,
    meaning: 'A currency is a code of ISO 4217.',
    way: () => 'Write a code of three capital letters, like EUR, USD or JPY.',
    example: { found: 'Euro' },
  },
  'bad-gtin': {
    say: ({ found, expected }) => `${found} is no GTIN: ${expected}.`,
    meaning: 'A GTIN has 8, 12, 13 or 14 digits, and the last one checks the others.',
    way: () => 'Copy it again from the label.',
    example: { found: '2100001001920', expected: 'the check digit is 6' },
  },
  'stock-not-csv': {
    say: ({ fault, expected, found }) =>
      fault === 'fields'
        ? `This line has ${counted(found, 'field')}, and the first line names ${counted(expected, 'column')}.`
        : 'A quotation mark in this line is not closed, or something stands beside it.',
    meaning: 'The stock file is no CSV (RFC 4180): every line has as many fields as the first, parted by commas.',
    way: ({ fault }) =>
      fault === 'fields'
        ? 'Leave a field empty between its commas; a field with a comma inside stands in quotation marks.'
        : 'Close it, or take it out. A quotation mark within a field is written twice.',
    example: { fault: 'fields', expected: 8, found: 7 },
  },
  'stock-column': {
    say: ({ found }) =>
      found.length === 0
        ? 'The stock file is empty: not even the line of column names is there.'
        : `A stock file begins with a line of column names with sku and on_hand in it; here are ${found.join(', ')}.`,
    meaning: 'The first line of a stock file names its columns, in small letters, with commas between.',
    way: ({ columns, found }) =>
      `${found.some((name) => /[;\t]/.test(name)) ? 'Put commas between the columns. ' : ''}The columns are ${columns.join(',')}; all but sku and on_hand may be left out.`,
    example: { columns: ['sku', 'on_hand'], found: ['number', 'count'] },
  },
  'stock-value': {
    say: ({ column, found, expected }) => `${column} is ${found === '' ? 'empty' : found}, and must be ${expected}.`,
    meaning: 'A value of the stock file is not one that its column can hold. The row does not count.',
    way: ({ column, expected }) => `In ${column} goes ${expected}.`,
    example: { column: 'on_hand', found: 'two', expected: 'a whole number' },
  },
  'stock-duplicate': {
    say: ({ sku, other }) => `${sku} has a row already, in line ${other}.`,
    meaning: 'A stock file has one row for each SKU.',
    way: () => 'Take one of the rows out.',
    example: { sku: 'AB-AIR-2', other: 4 },
  },
  'stock-unknown-sku': {
    say: ({ sku }) => `The catalogue has no ${sku}; the row does not count.`,
    meaning: 'The stock file names something that is not in the catalogue.',
    way: ({ nearest }) => nearestHint(nearest).trim() || 'Take the row out, or add the part to the catalogue.',
    example: { sku: 'AB-AIR-22', nearest: ['AB-AIR-2'] },
  },
  'other-currency': {
    say: ({ found, expected }) => `The currency here is ${found}, and the catalogue's is ${expected}.`,
    meaning: 'A catalogue has one currency, and its stock and shop files have the same.',
    way: ({ expected }) => `Give the prices in ${expected}.`,
    example: { found: 'USD', expected: 'EUR' },
  },
};

/** The schema's names for kinds of values, in words. */
const WORDS: ReadonlyMap<string, string> = new Map([
  ['string', 'a text'],
  ['boolean', 'true or false'],
  ['integer', 'a whole number'],
  ['array', 'a list'],
  ['object', 'a table of keys'],
  ['null', 'nothing (null)'],
]);
/** A record or file as the subject of a sentence. */
const subject = (record: string): string => (record === 'file' ? 'The file' : record);

const article = (word: string): string =>
  word
    .split(' or ')
    .map((one) => WORDS.get(one) ?? `a ${one}`)
    .join(' or ');
