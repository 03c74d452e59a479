import fc from 'fast-check';
import { resolved, type Schema } from './document.ts';

/** Values that a schema of the document allows; names of fields choose known ids of the catalogue now and then. */
export function valuesOf(schema: Schema, known: readonly string[], name = ''): fc.Arbitrary<unknown> {
  const own = resolved(schema);
  if (Array.isArray(own.anyOf)) return fc.oneof(...own.anyOf.map((one: Schema) => valuesOf(one, known, name)));
  if (Array.isArray(own.enum)) return fc.constantFrom(...own.enum);
  if ('const' in own) return fc.constant(own.const);
  switch (own.type) {
    case 'null':
      return fc.constant(null);
    case 'boolean':
      return fc.boolean();
    case 'integer':
      return fc.integer({
        min: bound(own.minimum, bound(own.exclusiveMinimum, -1) + 1),
        max: Math.min(bound(own.maximum, 1_000), 2_000),
      });
    case 'number':
      return numbersOf(bound(own.minimum, bound(own.exclusiveMinimum, 0)), bound(own.maximum, 1e9));
    case 'string':
      return textsOf(own, known, name);
    case 'array':
      return fc.array(valuesOf(shape(own.items), known, name), { minLength: bound(own.minItems, 0), maxLength: 3 });
    case 'object':
      return objectsOf(own, known);
    default:
      return fc.jsonValue({ maxDepth: 2 });
  }
}

/** Mostly small and round, as people write them. */
function numbersOf(least: number, most: number): fc.Arbitrary<number> {
  const greatest = Math.min(most, Math.max(300, least + 10));
  return fc
    .double({ min: least, max: greatest, noNaN: true })
    .map((value) => Math.min(greatest, Math.max(least, Math.round(value))));
}

const bound = (value: unknown, otherwise: number): number => (typeof value === 'number' ? value : otherwise);
const shape = (value: unknown): Schema => (typeof value === 'object' && value !== null ? { ...value } : {});

function textsOf(schema: Schema, known: readonly string[], name: string): fc.Arbitrary<unknown> {
  const pattern = typeof schema.pattern === 'string' ? new RegExp(schema.pattern) : null;
  const free = pattern ? fc.stringMatching(pattern, { maxLength: 20 }) : fc.string({ minLength: 1, maxLength: 20 });
  const fitting = known.filter((one) => pattern?.test(one) ?? true);
  const isName = ['chassis', 'part', 'sku', 'bike', 'onto', 'use', 'service', 'id', 'q'].includes(name);
  if (!isName || fitting.length === 0) return free;
  return fc.oneof({ weight: 4, arbitrary: fc.constantFrom(...fitting) }, { weight: 1, arbitrary: free });
}

function objectsOf(schema: Schema, known: readonly string[]): fc.Arbitrary<unknown> {
  const properties = Object.entries(shape(schema.properties)).map(
    ([name, one]) => [name, valuesOf(shape(one), known, name)] as const,
  );
  const required = Array.isArray(schema.required) ? schema.required.map(String) : [];
  if (properties.length > 0)
    return fc.record(Object.fromEntries(properties), {
      requiredKeys: properties.map(([name]) => name).filter((name) => required.includes(name)),
    });
  return fc.dictionary(
    valuesOf(shape(schema.propertyNames), known).map(String),
    valuesOf(shape(schema.additionalProperties), known),
    { maxKeys: 2 },
  );
}

/** A value with one thing wrong in it, or with something that nobody expects. */
export const spoiled = (value: unknown): fc.Arbitrary<unknown> =>
  fc.oneof(
    fc.jsonValue({ maxDepth: 3 }),
    fc.constantFrom(
      '',
      ' ',
      '\u0000',
      '../../etc/passwd',
      '<script>',
      "' or 1=1",
      '\ud800',
      '𝕫'.repeat(50),
      '-0',
      '1e999',
    ),
    fc.constantFrom(null, [], {}, -1, 1e308, 0.0005, [[[[]]]]),
    fc.string().map((key) => (typeof value === 'object' && value !== null ? { ...value, [key]: 1 } : key)),
  );
