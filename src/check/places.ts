import type { Catalog, Place, Problem, ProblemCode, ProblemParams, SourceRef } from '../catalog/index.ts';

/** A problem at the record that a source names. The catalogue keeps file and line of each record, not its text. */
export function problemAt<Code extends ProblemCode>(
  catalog: Catalog,
  severity: Problem['severity'],
  source: SourceRef,
  code: Code,
  params: ProblemParams[Code],
): Problem {
  return { severity, code, params: params as Problem['params'], place: placeOf(catalog, source.record) };
}

function placeOf(catalog: Catalog, record: string): Place | null {
  const text = catalog.places.get(record) ?? catalog.places.get(record.split('#')[0] ?? '');
  const match = text === undefined ? null : /^(.*):([0-9]+)$/.exec(text);
  return match ? { file: match[1] ?? '', line: Number(match[2]), column: 1, excerpt: '' } : null;
}
