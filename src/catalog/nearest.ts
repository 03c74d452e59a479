import { distance } from 'fastest-levenshtein';
import { byCodeUnit } from '../quantity/index.ts';

/** The three known names nearest to a wrong one, nearest first; none that shares too little to help. */
export function nearest(wrong: string, known: Iterable<string>): string[] {
  const lower = wrong.toLowerCase();
  const limit = Math.max(3, Math.ceil(wrong.length / 2));
  return [...new Set(known)]
    .map((name) => ({ name, far: farFrom(lower, name.toLowerCase()) }))
    .filter(({ far }) => far <= limit)
    .sort((a, b) => a.far - b.far || byCodeUnit(a.name, b.name))
    .slice(0, 3)
    .map(({ name }) => name);
}

/** How many signs differ. The same in other capitals is nothing, what it begins like and the same signs in another order are next. */
function farFrom(wrong: string, name: string): number {
  if (wrong === name) return 0;
  if (name.startsWith(wrong)) return 1;
  const far = distance(wrong, name);
  return far === 2 && sorted(wrong) === sorted(name) ? 0.5 : far;
}

const sorted = (text: string): string => [...text].sort().join('');
