import type { ErrorObject } from 'ajv';
import { nearest } from './nearest.ts';
import type { Problem, ProblemCode } from './problems.ts';
import type { Path, SourceFile } from './source-file.ts';

/** Turns the schema validator's faults into problems at their places: one mistake, one problem. */
export function schemaProblems(
  file: SourceFile,
  document: number,
  errors: readonly ErrorObject[],
  value: unknown,
): Problem[] {
  const choices = errors.filter((error) => error.keyword === 'oneOf');
  return errors
    .filter((error) => !choices.some((choice) => isWithin(error, choice)))
    .map((error) => problemOf(file, document, error, value));
}

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
  const record = path.length === 0 ? 'file' : path.join('.');
  const found = shown(valueAt(value, path));
  switch (error.keyword) {
    case 'additionalProperties': {
      const key = String(error.params.additionalProperty);
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
      return at(path, 'wrong-type', { expected: [error.params.type].flat().join(' or '), found });
    case 'enum':
      return at(path, 'not-one-of', { found, allowed: (error.params.allowedValues as unknown[]).map(String) });
    default:
      return at(path, 'bad-value', { rule: error.message ?? error.keyword, found });
  }
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
