import type { Catalog, Place, Problem, ProblemCode, ProblemParams, SourceRef } from '../catalog/index.ts';

/** A problem at the record that a source names. The catalogue keeps file and line of each record, not its text. */
export function problemAt<Code extends ProblemCode>(
  catalog: Catalog,
  severity: Problem['severity'],
  source: Pick<SourceRef, 'record'>,
  code: Code,
  params: ProblemParams[Code],
): Problem {
  return { severity, code, params: params as Problem['params'], place: placeOf(catalog, source.record) };
}

/** A doubt: something that does not bar the use of a catalogue, and that its author should look at. */
export const doubt = <Code extends ProblemCode>(
  catalog: Catalog,
  source: Pick<SourceRef, 'record'>,
  code: Code,
  params: ProblemParams[Code],
): Problem => problemAt(catalog, 'warning', source, code, params);

function placeOf(catalog: Catalog, record: string): Place | null {
  const text = catalog.places.get(record) ?? catalog.places.get(record.split('#')[0] ?? '');
  const match = text === undefined ? null : /^(.*):([0-9]+)$/.exec(text);
  return match ? { file: match[1] ?? '', line: Number(match[2]), column: 1, excerpt: '' } : null;
}

/** A length as a message shows it. */
export const mm = (length: number | null): string => (length === null ? 'none' : `${length / 1000} mm`);

/** A compared value as a message shows it: a length in micrometres, or a word. */
export const shown = (value: string | number): string => (typeof value === 'number' ? mm(value) : value);
