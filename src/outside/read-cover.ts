import type { Programme, ProgrammeColumn } from '../supply/index.ts';
import { OutsideFault } from './fault.ts';
import { Numbers, type Word, wordsOf } from './numbers.ts';

/** More rows or columns than that are taken for a mistake. */
const MOST = 1_000_000;

/**
 * A set cover, as a file of the OR-Library (rows, columns, the cost of each column, then for each row the number of its columns and these) or of Steiner triples
 * (columns, rows, then three columns for each row; each column costs 1). Which of the two it is follows from the count of numbers. `rows`: only so many of the first rows.
 * Ref: J. E. Beasley, "OR-Library: distributing test problems by electronic mail", Journal of the Operational Research Society 41 (1990).
 */
export function readCover(text: string, rows: number | null): Programme {
  const words = wordsOf(text);
  const sets = isTriples(words) ? readTriples(words) : readLibrary(words);
  if (rows !== null && rows > sets.rows.length)
    throw new OutsideFault('--rows', `${rows} rows are asked for, and the file has ${sets.rows.length}`);
  const kept = rows === null ? sets.rows : sets.rows.slice(0, rows);
  const gives: [number, number][][] = sets.costs.map(() => []);
  kept.forEach((columns, row) => {
    for (const column of new Set(columns)) gives[column - 1]?.push([row, 1]);
  });
  return {
    needs: kept.map(() => 1),
    columns: sets.costs.map((cost, at): ProgrammeColumn => ({ gives: gives[at] ?? [], cost, limit: 1 })),
    caps: [],
  };
}

interface Sets {
  readonly costs: readonly number[];
  readonly rows: readonly (readonly number[])[];
}

/** As many numbers as triples have, and each triple three columns that there are. */
function isTriples(words: readonly Word[]): boolean {
  const [columns = 0, rows = 0] = words.slice(0, 2).map(({ text }) => Number(text));
  if (words.length !== 2 + 3 * rows) return false;
  return words.slice(2).every(({ text }) => Number(text) >= 1 && Number(text) <= columns);
}

function readTriples(words: readonly Word[]): Sets {
  const numbers = new Numbers(words);
  const columns = numbers.take('the number of columns', 0, MOST);
  const count = numbers.take('the number of rows', 0, MOST);
  const costs = Array.from({ length: columns }, () => 1);
  const rows = Array.from({ length: count }, (_row, at) =>
    [1, 2, 3].map(() => numbers.take(`a column of row ${at + 1}`, 1, columns)),
  );
  return { costs, rows };
}

function readLibrary(words: readonly Word[]): Sets {
  const numbers = new Numbers(words);
  const count = numbers.take('the number of rows', 0, MOST);
  const columns = numbers.take('the number of columns', 0, MOST);
  const costs: number[] = [];
  for (let at = 1; at <= columns; at++)
    costs.push(numbers.take(`the cost of column ${at}`, 0, Number.MAX_SAFE_INTEGER));
  const rows: number[][] = [];
  for (let row = 1; row <= count; row++) {
    const entries = numbers.take(`the number of columns of row ${row}`, 0, columns);
    rows.push(Array.from({ length: entries }, () => numbers.take(`a column of row ${row}`, 1, columns)));
  }
  if (numbers.left > 0) throw new OutsideFault(`line ${numbers.line}`, `the file goes on after its ${count} rows`);
  return { costs, rows };
}
