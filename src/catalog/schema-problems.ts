import type { ErrorObject } from 'ajv';
import { withPoint } from './decimal-comma.ts';
import { nearest } from './nearest.ts';
import type { Problem, ProblemCode } from './problems.ts';
import type { Path, SourceFile } from './source-file.ts';

/** What a document is that is no table of keys, in words; null where it is one. */
export const otherThanKeys = (value: unknown): string | null => {
  if (Array.isArray(value)) return 'a list';
  if (typeof value === 'object' && value !== null) return null;
  return value === null || value === undefined ? 'nothing' : `the one value ${shown(value)}`;
};

/** Turns the schema validator's faults into problems at their places: one mistake, one problem. */
export function schemaProblems(
  file: SourceFile,
  document: number,
  errors: readonly ErrorObject[],
  value: unknown,
): Problem[] {
  const choices = errors.filter((error) => error.keyword === 'oneOf');
  const told = errors
    .filter((error) => !choices.some((choice) => isWithin(error, choice)))
    .map((error) => ({ error, problem: problemOf(file, document, error, value) }));
  return told.filter(({ error }) => !told.some((other) => explains(other, error, value))).map(({ problem }) => problem);
}

interface Told {
  readonly error: ErrorObject;
  readonly problem: Problem;
}

/** A key that is missing only because it is misspelt, a number cut off by a comma: the other problem says it all. */
function explains({ error: other, problem }: Told, error: ErrorObject, value: unknown): boolean {
  if (problem.code === 'unknown-key')
    return (
      error.keyword === 'required' &&
      error.instancePath === other.instancePath &&
      [problem.params.nearest].flat()[0] === error.params.missingProperty
    );
  return (
    problem.code === 'decimal-comma' &&
    error.keyword === 'type' &&
    parentOf(error.instancePath) === other.instancePath &&
    typeof valueAt(value, pathOf(error.instancePath, value)) === 'number'
  );
}

const parentOf = (pointer: string): string => pointer.slice(0, pointer.lastIndexOf('/'));

/** The faults of the single alternatives say less than "one of these must be there". */
const isWithin = (error: ErrorObject, choice: ErrorObject): boolean =>
  error !== choice &&
  error.instancePath === choice.instancePath &&
  error.schemaPath.startsWith(`${choice.schemaPath}/`);

function problemOf(file: SourceFile, document: number, error: ErrorObject, value: unknown): Problem {
  const path = pathOf(error.instancePath, value);
  const at = (to: Path, code: ProblemCode, params: Problem['params']): Problem => ({
    severity: 'error',
    code,
    params,
    place: file.place(document, to),
  });
  const record = recordName(value, path);
  const found = shown(valueAt(value, path));
  switch (error.keyword) {
    case 'additionalProperties': {
      const key = String(error.params.additionalProperty);
      if (/^[0-9]/.test(key) && valueAt(value, [...path, key]) === null)
        return {
          severity: 'error',
          code: 'decimal-comma',
          params: { found: key, write: '' },
          place: file.keyPlace(document, path, key),
        };
      const known: string[] = Object.keys(
        (error.parentSchema as { properties?: object } | undefined)?.properties ?? {},
      );
      return {
        severity: 'error',
        code: 'unknown-key',
        params: { key, record, nearest: nearest(key, known) },
        place: file.keyPlace(document, path, key),
      };
    }
    case 'propertyNames':
      return at([...path, String(error.params.propertyName)], 'bad-value', {
        rule: 'a name in small letters and hyphens',
        found: String(error.params.propertyName),
      });
    case 'required':
      return at(path, 'missing-key', { key: String(error.params.missingProperty), record });
    case 'oneOf':
      return at(path, 'missing-key', { key: alternatives(error), record });
    case 'type':
      if (typeof valueAt(value, path) === 'number' && unitOf(error) !== null)
        return at(path, 'missing-unit', { found, unit: unitOf(error) ?? '' });
      if (error.params.type === 'boolean' && YES_OR_NO.has(found.toLowerCase()))
        return at(path, 'yes-or-no', { found, write: YES_OR_NO.get(found.toLowerCase()) ?? '' });
      return at(path, 'wrong-type', {
        expected: [error.params.type].flat().join(' or '),
        found,
        write: countIn(error, found),
      });
    case 'enum':
      return at(path, 'not-one-of', { found, allowed: (error.params.allowedValues as unknown[]).map(String) });
    case 'pattern': {
      const write = withPoint(found);
      if (write !== null && new RegExp(String(error.params.pattern)).test(write))
        return at(path, 'decimal-comma', { found, write });
      return at(path, 'bad-value', { rule: ruleOf(error), found });
    }
    default:
      return at(path, 'bad-value', { rule: ruleOf(error), found });
  }
}

/** What the schema asks for, in words: by its own examples where it can only be said by a pattern. */
function ruleOf({ keyword, params, parentSchema, message }: ErrorObject): string {
  const { examples = [] } = (parentSchema ?? {}) as { readonly examples?: readonly unknown[] };
  const limit = Number(params.limit);
  switch (keyword) {
    case 'pattern':
      return examples.length > 0 ? `it must be like ${examples.join(' or ')}` : (message ?? keyword);
    case 'minimum':
      return `it must be ${limit} or more`;
    case 'maximum':
      return `it must be ${limit} or less`;
    case 'minLength':
      return 'it must not be empty';
    case 'maxLength':
      return `it must have at most ${limit} signs`;
    case 'minItems':
    case 'minProperties':
      return limit === 1 ? 'something must stand in it' : `at least ${limit} must stand in it`;
    case 'uniqueItems':
      return 'the same must not stand in it twice';
    default:
      return message ?? keyword;
  }
}

/** The number of a count or a wheel that was given a unit or quotes; empty where that is not the mistake. */
const countIn = (error: ErrorObject, found: string): string =>
  [error.params.type].flat().includes('integer') ? (/^([0-9]+)\s*[A-Za-z]*$/.exec(found)?.[1] ?? '') : '';

/** Words that were yes and no in YAML 1.1 and are texts in 1.2. */
const YES_OR_NO: ReadonlyMap<string, string> = new Map([
  ['yes', 'true'],
  ['on', 'true'],
  ['y', 'true'],
  ['no', 'false'],
  ['off', 'false'],
  ['n', 'false'],
]);

/** A place in a file for a person: its path, and the id of the record that it is in, since positions are hard to count. */
function recordName(value: unknown, path: Path): string {
  if (path.length === 0) return 'file';
  const record = valueAt(value, path.slice(0, 2));
  const { id, sku } = typeof record === 'object' && record !== null ? (record as { id?: unknown; sku?: unknown }) : {};
  const name = id ?? sku;
  const [kind, position, ...within] = path;
  if (typeof position !== 'number') return path.join('.');
  const where = within.length === 0 ? '' : `, ${within.join('.')}`;
  return typeof name === 'string' ? `${name} in ${kind}${where}` : `entry ${position + 1} of ${kind}${where}`;
}

/** The unit of a quantity's first example in the schema; null where no quantity is asked for. */
function unitOf(error: ErrorObject): string | null {
  const { examples = [] } = (error.parentSchema ?? {}) as { readonly examples?: readonly unknown[] };
  return /^[0-9][0-9.]* (\S+)$/.exec(String(examples[0]))?.[1] ?? null;
}

function alternatives(error: ErrorObject): string {
  const choices = (error.schema ?? []) as readonly { readonly required?: readonly string[] }[];
  return choices.map((choice) => (choice.required ?? []).join(' with ')).join(', or ');
}

/** A JSON pointer as a path: positions in lists become numbers. */
function pathOf(pointer: string, value: unknown): (string | number)[] {
  const path: (string | number)[] = [];
  let here = value;
  for (const part of pointer.split('/').slice(1)) {
    const key = part.replaceAll('~1', '/').replaceAll('~0', '~');
    const step = Array.isArray(here) ? Number(key) : key;
    path.push(step);
    here = valueAt(here, [step]);
  }
  return path;
}

function valueAt(value: unknown, path: Path): unknown {
  let here = value;
  for (const step of path) {
    if (typeof here !== 'object' || here === null) return undefined;
    here = (here as Record<string | number, unknown>)[step];
  }
  return here;
}

const shown = (value: unknown): string => {
  const text = typeof value === 'string' ? value : (JSON.stringify(value) ?? 'nothing');
  return text.length > 60 ? `${text.slice(0, 57)}...` : text;
};
