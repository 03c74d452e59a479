import * as z from 'zod';
import { nearest } from '../catalog/index.ts';

/** What is wrong with a value of a question: where, and in words. An unknown key is a place of its own. */
export interface Wrong {
  readonly path: readonly PropertyKey[];
  readonly reason: string;
}
export type Asked<Value> =
  | { readonly ok: true; readonly value: Value }
  | { readonly ok: false; readonly wrong: readonly Wrong[] };

/** Checks a question against its schema. What is wrong is said in the words of this project, with the nearest keys that there are. */
export function readAsked<Value>(schema: z.ZodType<Value>, input: unknown): Asked<Value> {
  const parsed = schema.safeParse(input, { error: reasonOf });
  if (parsed.success) return { ok: true, value: parsed.data };
  const wrong = parsed.error.issues.flatMap((issue): Wrong[] =>
    issue.code === 'unrecognized_keys'
      ? issue.keys.map((key) => ({ path: [...issue.path, key], reason: noSuchKey(key, keysAt(schema, issue.path)) }))
      : [{ path: issue.path, reason: issue.message }],
  );
  return { ok: false, wrong };
}

/** What a value must be, in words; undefined leaves the schema's own. */
function reasonOf(issue: z.core.$ZodRawIssue): string | undefined {
  switch (issue.code) {
    case 'invalid_type':
      return issue.input === undefined
        ? 'it is missing'
        : `it must be ${KINDS[issue.expected] ?? issue.expected}, and is ${kindOf(issue.input)}`;
    case 'too_small':
      return `${MEASURED[issue.origin] ?? 'it'} must be ${issue.inclusive === false ? 'above' : 'at least'} ${issue.minimum}`;
    case 'too_big':
      return `${MEASURED[issue.origin] ?? 'it'} must be ${issue.inclusive === false ? 'below' : 'at most'} ${issue.maximum}`;
    case 'invalid_value':
      return `it must be ${issue.values.length === 1 ? '' : 'one of '}${issue.values.join(', ')}`;
    case 'invalid_format':
      return issue.format === 'date' ? 'it must be a day written as YYYY-MM-DD' : undefined;
    default:
      return undefined;
  }
}

const KINDS: Readonly<Record<string, string>> = {
  string: 'a text',
  number: 'a number',
  int: 'a whole number',
  boolean: 'true or false',
  array: 'a list',
  object: 'an object with keys',
  record: 'an object with keys',
};
/** What a bound is a bound of. */
const MEASURED: Readonly<Record<string, string>> = { string: 'its length', array: 'the number of entries' };

function kindOf(value: unknown): string {
  if (value === null) return 'null';
  if (Array.isArray(value)) return 'a list';
  switch (typeof value) {
    case 'string':
      return 'a text';
    case 'number':
      return Number.isInteger(value) ? `${value}` : `${value}, which is not whole`;
    case 'boolean':
      return `${value}`;
    default:
      return 'an object';
  }
}

function noSuchKey(key: string, known: readonly string[]): string {
  const near = nearest(key, known);
  const there = near.length > 0 ? near : known;
  return `there is no such key; ${near.length > 0 ? 'near it' : 'keys here'}: ${there.join(', ')}`;
}

/** The keys that a schema has at a path. */
function keysAt(schema: z.ZodType, path: readonly PropertyKey[]): readonly string[] {
  let nodes: Node[] = [z.toJSONSchema(schema, { io: 'input', unrepresentable: 'any' })];
  for (const step of path)
    nodes = nodes.flatMap(alternatives).flatMap((node) => {
      const inner =
        typeof step === 'number' ? node.items : (node.properties?.[String(step)] ?? node.additionalProperties);
      return typeof inner === 'object' && !Array.isArray(inner) ? [inner] : [];
    });
  return nodes.flatMap(alternatives).flatMap(({ properties }) => Object.keys(properties ?? {}));
}

type Node = z.core.JSONSchema.BaseSchema;
const alternatives = (node: Node): readonly Node[] => [
  node,
  ...(node.anyOf ?? []).flatMap((one) => (typeof one === 'object' ? [one] : [])),
];
