import type { Problem } from '../catalog/index.ts';
import { byCodeUnit } from '../quantity/index.ts';

/** Problems by file, line and column; those without a place first. */
export const sortedProblems = (problems: readonly Problem[]): readonly Problem[] =>
  [...problems].sort((a, b) => {
    if (a.place === null || b.place === null) return Number(a.place !== null) - Number(b.place !== null);
    return (
      byCodeUnit(a.place.file, b.place.file) ||
      a.place.line - b.place.line ||
      a.place.column - b.place.column ||
      byCodeUnit(a.code, b.code)
    );
  });
