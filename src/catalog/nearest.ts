import { distance } from 'fastest-levenshtein';
import { byCodeUnit } from '../quantity/index.ts';

/** The three known names nearest to a wrong one, nearest first; none that shares too little to help. */
export function nearest(wrong: string, known: Iterable<string>): string[] {
  const lower = wrong.toLowerCase();
  const limit = Math.max(3, Math.ceil(wrong.length / 2));
  return [...new Set(known)]
    .map((name) => ({ name, far: name.toLowerCase().startsWith(lower) ? 1 : distance(lower, name.toLowerCase()) }))
    .filter(({ far }) => far <= limit)
    .sort((a, b) => a.far - b.far || byCodeUnit(a.name, b.name))
    .slice(0, 3)
    .map(({ name }) => name);
}
