import type { Wrong as Asked, Fault } from '../plan/index.ts';
import { en } from '../report/words/en.ts';
import { say, wayOut } from '../report/words/say.ts';
import type { Problem, Wrong } from './problems.ts';

const token = (key: PropertyKey): string => String(key).replaceAll('~', '~0').replaceAll('/', '~1');
/** A path as a JSON Pointer (RFC 6901). */
export const pointerOf = (path: readonly PropertyKey[]): string => path.map((key) => `/${token(key)}`).join('');

/** What a schema found wrong with a question. */
export function badQuestion(wrong: readonly Asked[]): Problem {
  const errors = wrong.map(({ path, reason }): Wrong => {
    const params = { path: path.join('.'), reason };
    return {
      pointer: pointerOf(path),
      code: 'bad-question',
      params,
      detail: say(en, 'faults', { code: 'bad-question', params }),
      way: 'The form of the question is in the description of this service at /v1/openapi.yaml.',
    };
  });
  return { code: 'bad-question', detail: errors.map(({ detail }) => detail).join(' '), errors };
}

/** What the catalogue found wrong with a question. */
export function questionAtFault(faults: readonly Fault[], question: unknown): Problem {
  const errors = faults.map(({ code, params }): Wrong => {
    const pointer = code === 'bad-question' ? undefined : whereIs(question, culprit(params));
    return {
      ...(pointer === undefined ? {} : { pointer }),
      code,
      params: Object.fromEntries(
        Object.entries(params).map(([name, value]) => [name, typeof value === 'object' ? [...value] : value]),
      ),
      detail: say(en, 'faults', { code, params }),
      way: wayOut(en, 'faults', { code, params }),
    };
  });
  return { code: 'question-at-fault', detail: errors.map(({ detail }) => detail).join(' '), errors };
}

/** The value that a fault is about, by the name its parameter has. */
const culprit = (params: Fault['params']): string | undefined => {
  for (const name of ['id', 'sku', 'number', 'setting', 'size', 'slot', 'bike', 'chassis']) {
    const value = params[name];
    if (typeof value === 'string') return value;
  }
  return undefined;
};

/** Where a text stands in a question, as a key or as a value. */
function whereIs(value: unknown, text: string | undefined, path: readonly PropertyKey[] = []): string | undefined {
  if (text === undefined) return undefined;
  if (value === text) return pointerOf(path);
  if (typeof value !== 'object' || value === null) return undefined;
  for (const [key, inner] of Object.entries(value)) {
    if (key === text) return pointerOf([...path, key]);
    const found = whereIs(inner, text, [...path, key]);
    if (found !== undefined) return found;
  }
  return undefined;
}
