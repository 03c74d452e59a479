import type { Catalog, Problem } from '../catalog/index.ts';
import { buildProblems } from './builds.ts';
import { partProblems } from './parts.ts';
import { workProblems } from './work.ts';

/** What a catalogue claims and cannot hold, though every record by itself is in order. */
export const senseProblems = (catalog: Catalog): readonly Problem[] => [
  ...buildProblems(catalog),
  ...partProblems(catalog),
  ...workProblems(catalog),
];
